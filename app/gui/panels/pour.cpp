#include "gui/panels/panels.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/stale.hpp"
#include "gui/widgets/text.hpp"

#include <algorithm>

namespace pourbook {

void draw_pour(Ui& ui) {
    const float usual = std::clamp(ImGui::GetContentRegionAvail().x * 0.28F, ui.px(300), ui.px(400));
    const float left = split_width(ui, "pour", usual, 280, 480);
    ImGui::BeginChild("pour.choice", {left, 0});
    draw_pour_choice(ui);
    ImGui::EndChild();
    split_edge(ui, "pour");
    ImGui::BeginChild("pour.sheet", {0, 0});
    const Result<PourSheet>* sheet = ui.session.pour_sheet();
    if (!sheet)
        dim_text(ui, "Working it out …");
    else if (!*sheet) {
        warning_text(ui, sheet->problem().text);
        ui.probe.item("pour.refused", sheet->problem().text);
        if (const Result<PourSheet>* last = ui.session.last_pour_sheet()) {
            const Stale stale(ui, true);
            draw_pour_sheet(ui, **last);
        }
    } else {
        const Stale stale(ui, has_unreadable_field(ui));
        draw_pour_sheet(ui, **sheet);
    }
    ImGui::EndChild();
}

} // namespace pourbook
