#include "gui/panels/panels.hpp"
#include "gui/widgets/shape_fields.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"

#include <cfloat>

namespace pourbook {
namespace {

std::string fault_with(const Ui& ui, std::string SetupWords::*word, const std::string& typed) {
    SetupWords words = ui.session.view.drop_setup;
    words.*word = typed;
    const Result<DropSetup> setup = drop_setup(ui.session.catalogue, words);
    return setup ? std::string() : setup.problem().text;
}

void draw_name(Ui& ui, const char* name) {
    ImGui::AlignTextToFramePadding();
    dim_text(ui, name);
    ImGui::SameLine();
}

/// A word of the set-up: committed only where the whole set-up can be read with it.
void draw_word(Ui& ui, const char* name, std::string SetupWords::*word, const char* hint, double width) {
    draw_name(ui, name);
    text_field(ui, std::string("fall.") + name, ui.view().drop_setup.*word, hint, ui.px(width),
               [&](const std::string& typed) { return fault_with(ui, word, typed); });
}

/// The magnet or the tube, its sizes below it when it is pressed.
void draw_shape(Ui& ui, const char* name, std::string SetupWords::*word, double width) {
    constexpr double sizes_width = 260;
    draw_name(ui, name);
    std::string& words = ui.view().drop_setup.*word;
    const std::string id = std::string("fall.") + name;
    ImGui::SetNextWindowSizeConstraints({0, 0}, {FLT_MAX, FLT_MAX});
    if (begin_combo(id, words, ui.px(width))) {
        shape_fields(ui, id + ".sizes", name, words, ui.px(sizes_width),
                     [&](const std::string& typed) { return fault_with(ui, word, typed); });
        end_combo();
    }
    ui.probe.item(id, words);
}

void draw_amount(Ui& ui, const char* name, std::string& amount, std::string FallWords::*word, const char* hint,
                 Holding holding) {
    dim_text(ui, name);
    ImGui::SameLine();
    text_field(ui, std::string("fall.") + name, amount, hint, ui.px(90), [&](const std::string& typed) {
        FallWords words{ui.view().drop_setup, "", ""};
        words.*word = typed;
        const auto fall = FallTime::from_words(ui.session.catalogue, words, holding);
        return fall ? std::string() : fall.problem().text;
    });
}

void draw_faults(Ui& ui) {
    for (const char* id : {"fall.grade", "fall.mass", "fall.budget"}) {
        const std::string& fault = field_fault(ui, id);
        if (fault.empty()) continue;
        warning_text(ui, fault);
        ui.probe.item(std::string(id) + ".fault", fault);
    }
    const Result<DropSetup>& whole = ui.session.drop.setup(ui.view().drop_setup, {}, ui.session.part_conditions());
    if (!whole) fault_line(ui, "fall", whole.problem().text);
}

} // namespace

/// The magnet and the tube, shared with Drop, and how much metal there is where the wall is free.
void draw_rank_fall(Ui& ui) {
    const std::string& holding = ui.view().rank.holding;
    draw_shape(ui, "magnet", &SetupWords::magnet, 190);
    if (!ui.view().drop_setup.grade.empty()) {
        flow(ui.px(70) + button_width("grade"));
        draw_word(ui, "grade", &SetupWords::grade, "N42", 70);
    }
    flow(ui.px(170) + button_width("tube"));
    draw_shape(ui, "tube", &SetupWords::tube, 170);
    flow(ui.px(90) + button_width("budget"));
    if (holding == name_of(Holding::mass))
        draw_amount(ui, "mass", ui.view().rank.mass, &FallWords::mass, "300 g", Holding::mass);
    else if (holding == name_of(Holding::budget))
        draw_amount(ui, "budget", ui.view().rank.budget, &FallWords::budget,
                    usual_budget(ui.session.catalogue, " ").c_str(), Holding::budget);
    else
        dim_text(ui, "the tube as stated");
    if (holding != name_of(Holding::size)) {
        const char* rest = "of metal in each tube: bore and length as stated, the wall free";
        flow(ImGui::CalcTextSize(rest).x);
        wrapped_text(rest, ui.colours().dim);
    }
    draw_faults(ui);
}

} // namespace pourbook
