#include "charts/setup_drawing.hpp"
#include "gui/actions/actions.hpp"
#include "gui/panels/drop_parts.hpp"
#include "gui/widgets/chart_view.hpp"
#include "gui/widgets/metal_field.hpp"
#include "gui/widgets/quantity_field.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "questions/drop/magnet_grade.hpp"
#include "questions/drop/setup_parts.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

constexpr double label_room = 66, field_room = 90, pair_room = label_room + field_room + 10;
using Fault = std::function<std::string(const std::string&)>;

/// A label and its field; the second of a row stands to the right of the first. The fault comes below. Without a unit
/// it is no quantity.
bool draw_field(Ui& ui, const std::string& id, const char* label, std::string& word, const char* hint, bool second,
                const std::string& help, const Fault& fault, const char* unit = "mm") {
    if (second) ImGui::SameLine(ui.px(pair_room));
    const float left = ImGui::GetCursorPosX();
    ImGui::AlignTextToFramePadding();
    dim_text(ui, label);
    ImGui::SameLine(left + ui.px(label_room));
    const Fault named = [&](const std::string& typed) {
        const std::string why = typed.empty() ? "" : fault(typed);
        return why.empty() ? why : std::string(label) + ": " + why;
    };
    const bool changed = *unit ? quantity_field(ui, id, word, {unit, hint, ui.px(field_room)}, named)
                               : text_field(ui, id, word, hint, ui.px(field_room), named);
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive()) hover_text(ui, help);
    return changed;
}

void draw_faults(Ui& ui, std::initializer_list<std::string> ids) {
    for (const std::string& id : ids) fault_line(ui, id);
}

void draw_shape(Ui& ui, const std::string& id, SetupWords& setup, MagnetParts& parts) {
    static const std::vector<std::string> shapes = {"sphere", "cylinder", "ring"};
    const auto at = std::find(shapes.begin(), shapes.end(), parts.shape);
    const int clicked = choice(ui, id + ".shape", shapes, static_cast<int>(at - shapes.begin()));
    if (clicked < 0) return;
    parts.shape = shapes[static_cast<std::size_t>(clicked)];
    if (parts.length.empty()) parts.length = parts.diameter;
    if (parts.shape == "ring" && parts.hole.empty()) parts.hole = "5mm";
    setup.magnet = magnet_words(parts);
}

void draw_size(Ui& ui, const std::string& id, SetupWords& setup) {
    MagnetParts parts = parts_of_magnet(setup.magnet);
    draw_shape(ui, id, setup, parts);
    const bool sphere = parts.shape == "sphere", ring = parts.shape == "ring";
    bool changed = draw_field(ui, id + ".diameter", "diameter", parts.diameter, "15mm", false,
                              "Diameter of the magnet\na tolerance as 15+-0.1mm", length_fault);
    if (!sphere)
        changed |= draw_field(ui, id + ".magnet_length", "length", parts.length, "15mm", true,
                              "Length of the magnet\nalong its axis, from pole to pole", length_fault);
    draw_faults(ui, {id + ".diameter", id + ".magnet_length"});
    if (ring)
        changed |=
            draw_field(ui, id + ".hole", "hole", parts.hole, "5mm", false, "Diameter of the ring's hole", length_fault);
    if (ring) draw_faults(ui, {id + ".hole"});
    if (changed) setup.magnet = magnet_words(parts);
}

void draw_grades(Ui& ui, const std::string& id, SetupWords& setup) {
    if (begin_combo(id + ".grade", setup.grade, ui.px(field_room))) {
        for (const std::string& grade : magnet_grades(ui.session.catalogue)) {
            if (ImGui::Selectable(grade.c_str(), grade == setup.grade)) setup.grade = grade;
            ui.probe.item(id + ".grade." + grade, grade);
        }
        end_combo();
    }
    ui.probe.item(id + ".grade", setup.grade);
    if (ImGui::IsItemHovered())
        hover_text(ui, "Grade of the magnet\nthe letter and number are an energy product, not a remanence: the whole "
                       "range over the cited tables is used. A measured field is several times better.");
}

/// Grade, remanence or a field on the axis: one of the three, the others empty.
void draw_strength(Ui& ui, const std::string& id, SetupWords& setup) {
    const int now = !setup.br.empty() ? 1 : !setup.surface_field.empty() ? 2 : 0;
    const int clicked = choice(ui, id + ".strength", {"grade", "remanence", "field"}, now);
    if (clicked >= 0 && clicked != now) {
        setup.grade = clicked == 0 ? "N42" : "";
        setup.br = clicked == 1 ? "1.30+-0.02T" : "";
        setup.surface_field = clicked == 2 ? "0.4T@1mm" : "";
        return;
    }
    ImGui::SameLine();
    if (now == 0) return draw_grades(ui, id, setup);
    std::string& word = now == 1 ? setup.br : setup.surface_field;
    const std::string field = id + (now == 1 ? ".br" : ".field");
    text_field(ui, field, word, now == 1 ? "1.3T" : "0.4T@1mm", ui.px(field_room + 10), [&](const std::string& typed) {
        SetupWords tried = setup;
        (now == 1 ? tried.br : tried.surface_field) = typed;
        const Result<DropSetup> made = magnet_setup(ui.session.catalogue, tried);
        return made ? std::string() : made.problem().text;
    });
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive())
        hover_text(ui, now == 1 ? "Remanence at 20 °C\nsuch as 1.3T or 1.30+-0.02T"
                                : "Field on the axis\nat a distance from the pole face, such as 0.21T@5mm");
    draw_faults(ui, {field});
}

void draw_magnet(Ui& ui, const std::string& id, SetupWords& setup) {
    draw_size(ui, id, setup);
    draw_strength(ui, id, setup);
    draw_field(ui, id + ".mass", "mass", setup.magnet_mass, "auto", false,
               "Mass of the magnet\nempty: from its volume and the cited density", mass_fault, "g");
    draw_field(ui, id + ".magnet_at", "temp.", setup.magnet_at, "20", true,
               "Temperature of the magnet\nempty: 20 °C; the tube's is chosen at the top", kelvin_fault, "degC");
    draw_faults(ui, {id + ".mass", id + ".magnet_at"});
}

void draw_metals(Ui& ui, const std::string& id, const std::string& chosen, std::string& metal) {
    ImGui::AlignTextToFramePadding();
    dim_text(ui, "metal");
    ImGui::SameLine(ui.px(label_room));
    const std::string picked = metal_field(ui, id + ".metal", chosen, ui.px(pair_room + field_room));
    if (!picked.empty()) {
        metal = picked;
        if (!is_pinned(ui.view(), picked)) toggle_pin(ui.view(), picked);
    }
    if (ImGui::IsItemHovered())
        hover_text(ui, "Metal whose numbers are shown\nit is pinned too; its temperature and "
                       "condition are chosen at the top");
}

void draw_tube(Ui& ui, const std::string& id, SetupWords& setup) {
    TubeParts parts = parts_of_tube(setup.tube);
    bool changed =
        draw_field(ui, id + ".bore", "bore", parts.bore, "18mm", false, "Inner diameter of the tube", length_fault);
    changed |= draw_field(ui, id + ".outside", "outside", parts.outside, "24mm", true, "Outer diameter of the tube",
                          length_fault);
    draw_faults(ui, {id + ".bore", id + ".outside"});
    changed |=
        draw_field(ui, id + ".length", "length", parts.length, "400mm", false, "Length of the tube", length_fault);
    const Fault whole_number = [](const std::string& t) {
        return t.empty() || (t.size() < 3 && t.find_first_not_of("0123456789") == std::string::npos)
                   ? std::string()
                   : std::string("a whole number is expected");
    };
    draw_field(ui, id + ".slits", "slits", setup.slits, "none", true,
               "Slits along the whole tube\nnarrow ones, in a thin wall: one leaves about three quarters of the drag",
               whole_number, "");
    draw_faults(ui, {id + ".length", id + ".slits"});
    if (changed) setup.tube = tube_words(parts);
}

} // namespace

void draw_setup_fields(Ui& ui, const std::string& id, SetupWords& setup, std::string& metal) {
    draw_magnet(ui, id, setup);
    ImGui::Spacing();
    draw_metals(ui, id, id == "drop" ? ui.session.drop.metal() : ui.session.drop.second_metal(), metal);
    draw_tube(ui, id, setup);
    if (id == "drop") draw_wall_fields(ui);
    const Result<DropSetup>& whole = ui.session.drop.setup(setup, {}, ui.session.part_conditions());
    if (whole) return;
    warning_text(ui, whole.problem().text);
    ui.probe.item(id + ".problem", whole.problem().text);
}

void draw_magnet_cautions(Ui& ui) {
    const auto cautions = magnet_cautions(ui.session.catalogue);
    if (cautions.empty()) return;
    ImGui::PushStyleColor(ImGuiCol_Text, u32(ui.colours().warning));
    const bool open = folding_head(ui, "Strong magnets can hurt you###cautions");
    ImGui::PopStyleColor();
    ui.probe.item("drop.cautions", std::to_string(cautions.size()));
    if (ImGui::IsItemHovered()) {
        std::string all = "Strong magnets can hurt you";
        for (const MagnetFigure* c : cautions) all += "\n" + c->text + " [" + c->citation.source + "]";
        hover_text(ui, all);
    }
    if (!open) return;
    const TextLook look(ui.fonts.small, ui.colours().warning);
    for (const MagnetFigure* c : cautions) {
        const std::size_t end = c->text.find_first_of(".:");
        wrapped_text("· " + c->text.substr(0, end), ui.colours().warning);
        if (!ImGui::IsItemHovered()) continue;
        hover_text(ui, c->text + "\n" + c->citation.source + ", " + c->citation.locator);
        if (ImGui::IsMouseClicked(0)) show_source(ui.session, c->citation.source);
    }
}

void draw_setup_picture(Ui& ui, const std::string& id, const SetupWords& setup, ImVec2 size) {
    const WallWords wall = id == "drop" ? ui.view().drop.wall : WallWords{};
    const Result<DropSetup>& made = ui.session.drop.setup(setup, wall, ui.session.part_conditions());
    if (!made) return;
    const std::string parts = wall.liner + ";" + wall.sleeve + ";" + wall.below + ";" + wall.lower_end;
    chart_view(ui, id + ".picture", setup.magnet + setup.tube + parts + (ui.view().workshop_units ? "w" : "s"), size,
               [&](const Canvas& canvas) { return setup_drawing(*made, ui.session.units(), canvas); });
}

} // namespace pourbook
