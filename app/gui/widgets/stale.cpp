#include "gui/widgets/stale.hpp"

#include "gui/widgets/text.hpp"

namespace pourbook {

Stale::Stale(Ui& ui, bool stale) : stale_(stale) {
    if (!stale_) return;
    constexpr float pale = 0.5F;
    const std::string words = "for the last readable input";
    dim_text(ui, words);
    ui.probe.item("stale", words);
    ImGui::PushStyleVar(ImGuiStyleVar_Alpha, pale);
}

Stale::~Stale() {
    if (stale_) ImGui::PopStyleVar();
}

bool has_unreadable_field(const Ui& ui) {
    return ui.faulty_frame >= ImGui::GetFrameCount() - 1;
}

} // namespace pourbook
