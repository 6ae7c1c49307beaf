// The parts of Drop's tube beside the tube itself: liner, sleeve, a tube below, a taper.
#include "gui/panels/drop_parts.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "questions/drop/drop_question.hpp"

#include <array>

namespace pourbook {
namespace {

struct WallField {
    const char *name, *label; // of drop_question(); of the row, empty: to the right of the one before
    std::string WallWords::*word;
};
constexpr std::array wall_rows = {
    WallField{"liner", "liner", &WallWords::liner},           WallField{"liner-metal", "", &WallWords::liner_metal},
    WallField{"sleeve", "sleeve", &WallWords::sleeve},        WallField{"sleeve-metal", "", &WallWords::sleeve_metal},
    WallField{"below", "below", &WallWords::below},           WallField{"below-metal", "", &WallWords::below_metal},
    WallField{"lower-end", "taper to", &WallWords::lower_end}};
constexpr double row_label = 66, sizes_room = 120, of_metal_room = 104;

} // namespace

void draw_wall_fields(Ui& ui) {
    WallWords& words = ui.view().drop.wall;
    ImGui::SetNextItemOpen(words != WallWords{}, ImGuiCond_Once);
    if (!ImGui::CollapsingHeader("Wall of several parts###wall")) return;
    for (const WallField& f : wall_rows) {
        const QuestionField& field = drop_question().fields[drop_question().at(f.name)];
        if (*f.label)
            field_label(ui, f.label, field.meaning, row_label);
        else
            ImGui::SameLine();
        const std::string id = std::string("drop.") + f.name;
        const std::string hint = *f.label ? field.absent.empty() ? field.example : field.absent : "of the tube's metal";
        text_field(ui, id, words.*f.word, hint.c_str(), ui.px(*f.label ? sizes_room : of_metal_room),
                   [&](const std::string& typed) {
                       WallWords tried = words;
                       tried.*f.word = typed;
                       if (!*f.label && (words.*(&f - 1)->word).empty()) return std::string(); // its sizes come later
                       const Result<DropSetup>& made =
                           ui.session.drop.setup(ui.view().drop_setup, tried, ui.session.part_conditions());
                       return made ? std::string() : made.problem().text;
                   });
        if (ImGui::IsItemHovered() && !ImGui::IsItemActive())
            hover_text(ui, field.meaning + "\nsuch as " + (field.example.empty() ? "brass" : field.example));
        fault_line(ui, id);
    }
}

} // namespace pourbook
