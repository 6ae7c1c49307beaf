// What is asked of Pour: metal, part, process, and what else a founder states.
#include "gui/panels/panels.hpp"
#include "gui/widgets/form.hpp"
#include "gui/widgets/text.hpp"

namespace pourbook {

void draw_pour_choice(Ui& ui) {
    constexpr double label_width = 124;
    draw_form(ui, ui.view().pour, "Casting", label_width);
    ImGui::Spacing();
    {
        const TextLook look(ui.fonts.strong, ui.colours().ink);
        text("Your workshop");
    }
    draw_form(ui, ui.view().pour, "Your workshop", label_width);
}

} // namespace pourbook
