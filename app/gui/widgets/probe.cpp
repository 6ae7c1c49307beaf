#include "gui/widgets/probe.hpp"

#include <imgui.h>

#include <algorithm>

namespace pourbook {

void Probe::item(const std::string& id, const std::string& text) {
    tab.pass(id);
    if (!on || !ImGui::IsItemVisible()) return;
    const ImVec2 clip_min = ImGui::GetWindowDrawList()->GetClipRectMin(),
                 clip_max = ImGui::GetWindowDrawList()->GetClipRectMax();
    const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
    const float x0 = std::max(low.x, clip_min.x), y0 = std::max(low.y, clip_min.y);
    const float x1 = std::min(high.x, clip_max.x), y1 = std::min(high.y, clip_max.y);
    if (x1 > x0 && y1 > y0) items_[id] = {x0, y0, x1 - x0, y1 - y0, text};
}

void Probe::box(const std::string& id, Item item) {
    if (on) items_[id] = std::move(item);
}

void Probe::say(const std::string& id, const std::string& text) {
    if (on) items_[id] = {0, 0, 0, 0, text};
}

} // namespace pourbook
