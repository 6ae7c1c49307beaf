#include "gui/panels/panels.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/stale.hpp"
#include "gui/widgets/text.hpp"

#include <algorithm>

namespace pourbook {

void draw_pour(Ui& ui) {
    const float usual = std::clamp(ImGui::GetContentRegionAvail().x * 0.28F, ui.px(300), ui.px(400));
    begin_panel(ui, "pour.choice", {split_width(ui, "pour", usual, 280, 480), 0});
    const bool open = !ui.narrow() || folding_head(ui, "What is cast, and with what");
    if (ui.narrow()) ui.probe.item("pour.choice", open ? "open" : "");
    if (open) draw_pour_choice(ui);
    end_panel(ui);
    split_edge(ui, "pour");
    begin_panel(ui, "pour.sheet");
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
    end_panel(ui);
}

} // namespace pourbook
