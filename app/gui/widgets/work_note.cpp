#include "gui/widgets/work_note.hpp"

#include "gui/widgets/text.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr double moment_s = 0.25;
constexpr double bar_width = 220;

} // namespace

void work_note(Ui& ui, const std::string& id, BackgroundWork& work) {
    if (work.cancelled()) {
        ImGui::AlignTextToFramePadding();
        dim_text(ui, "Stopped before it was finished.");
        ui.probe.item(id + ".stopped", "Stopped before it was finished.");
        ImGui::SameLine();
        if (ImGui::Button(("Work it out##" + id).c_str())) work.ask_anew();
        ui.probe.item(id + ".again", "Work it out");
        return;
    }
    if (!work.working() || work.running_s() < moment_s) return;
    const std::string percent = std::to_string(std::lround(work.done() * 100)) + " %";
    ImGui::PushStyleColor(ImGuiCol_PlotHistogram, u32(ui.colours().pressed));
    ImGui::ProgressBar(static_cast<float>(work.done()), {ui.px(bar_width), ImGui::GetFrameHeight()}, percent.c_str());
    ImGui::PopStyleColor();
    ui.probe.item(id + ".done", percent);
    ImGui::SameLine();
    if (ImGui::Button(("Cancel##" + id).c_str())) work.cancel();
    ui.probe.item(id + ".cancel", "Cancel");
}

} // namespace pourbook
