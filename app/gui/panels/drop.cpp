#include "gui/panels/bench.hpp"
#include "gui/panels/drop_parts.hpp"
#include "gui/panels/panels.hpp"

#include "charts/drop_charts.hpp"
#include "core/quantity/format.hpp"
#include "gui/widgets/chart_view.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/stale.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "questions/drop/eddy_words.hpp"
#include "questions/drop/setup_parts.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

constexpr double setup_room = 330;
constexpr ImGuiWindowFlags still = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;

std::string units_key(Ui& ui) {
    return ui.view().workshop_units ? "w" : "s";
}

/// A trial that holds what is set up here.
void keep_fall(Ui& ui) {
    const Kind& kind = known_kind("trial");
    Entry trial = fresh_entry(ui, kind);
    text_of(kind, trial, "metal") = ui.session.drop.metal();
    ui.view().view = "trials";
    ui.view().shelf = "trial";
    open_entry(ui, kind, trial);
}

/// B begins as a copy of A: what differs is then what was changed.
void set_two(DropChoice& made, const SetupWords& first, const std::string& metal) {
    made.against = true;
    made.second = first;
    made.second_metal = metal;
}

void draw_drop_head(Ui& ui) {
    DropChoice& made = ui.view().drop;
    const int clicked = choice(ui, "drop.against", {"one set-up", "two set-ups"}, made.against ? 1 : 0);
    if (clicked == 0) made.against = false;
    if (clicked == 1 && !made.against) set_two(made, ui.view().drop_setup, ui.session.drop.metal());
    flow(button_width("race") + button_width("charts"));
    const int face = choice(ui, "drop.face", {"race", "charts"}, made.face == "charts" ? 1 : 0);
    if (face >= 0) made.face = face == 1 ? "charts" : "race";
    if (made.against || !ui.session.workshop.available()) return;
    if (ImGui::Button("measured it?")) keep_fall(ui);
    ui.probe.item("drop.keep", "");
    if (ImGui::IsItemHovered())
        hover_text(ui,
                   "A fall of your own\nopens a trial with this magnet, tube and metal: only the times are missing");
}

/// What B has that A has not, lit.
std::string differences(const Ui& ui) {
    const ViewState& view = ui.session.view;
    const SetupWords &a = view.drop_setup, &b = view.drop.second;
    std::string words;
    const auto add = [&](const std::string& what, const std::string& of_a, const std::string& of_b) {
        if (of_a != of_b) words += (words.empty() ? "" : "; ") + what + " " + of_b + " against " + of_a;
    };
    const auto name = [&](const std::string& slug) {
        const Metal* metal = ui.session.catalogue.metal(slug);
        return metal ? metal->name : slug;
    };
    const TubeParts tube_a = parts_of_tube(a.tube), tube_b = parts_of_tube(b.tube);
    add("metal", name(ui.session.drop.metal()), name(ui.session.drop.second_metal()));
    add("magnet", a.magnet, b.magnet);
    add("grade", a.grade, b.grade);
    add("bore", tube_a.bore, tube_b.bore);
    add("outside", tube_a.outside, tube_b.outside);
    add("length", tube_a.length, tube_b.length);
    return words.empty() ? "the second is still a copy of the first: change one thing" : "the second differs: " + words;
}

void draw_column(Ui& ui, const char* id, SetupWords& setup, std::string& metal) {
    begin_panel(ui, id, {ui.px(setup_room), 0});
    draw_setup_fields(ui, id, setup, metal);
    if (std::string(id) == "drop2") {
        const std::string words = differences(ui);
        wrapped_text(words, ui.colours().accent);
        ui.probe.say("drop2.differs", words);
    }
    if (std::string(id) == "drop") draw_magnet_cautions(ui);
    const ImVec2 rest = rest_of_panel(ui, 240);
    draw_setup_picture(ui, id, setup, {rest.x, std::max(ui.px(180), rest.y)});
    end_panel(ui);
}

const DropResult* chosen(Ui& ui, const std::vector<DropOfMetal>& drops) {
    const std::string slug = ui.session.drop.metal();
    for (const DropOfMetal& d : drops)
        if (d.metal->slug == slug && d.result) return &*d.result;
    return nullptr;
}

void draw_bars(Ui& ui, const DropQuestions::FallsBeside& falls, ImVec2 size) {
    const std::string clicked = chart_view(
        ui, "drop.bars", std::to_string(ui.session.drop.falls_serial()) + units_key(ui), size,
        [&](const Canvas& canvas) {
            return layout(fall_chart(ui.session.catalogue, falls.drops, ui.session.units(), falls.measured), canvas);
        });
    if (!clicked.empty()) ui.view().drop.metal = clicked;
}

void draw_drag_curve(Ui& ui, const std::vector<DropOfMetal>& drops, ImVec2 size) {
    const std::string clicked =
        chart_view(ui, "drop.drag", std::to_string(ui.session.drop.falls_serial()) + units_key(ui), size,
                   [&](const Canvas& canvas) {
                       return layout(drag_chart(ui.session.catalogue, drops, ui.session.units()), canvas);
                   });
    if (!clicked.empty()) ui.view().drop.metal = clicked;
}

void draw_numbers(Ui& ui, const std::vector<DropOfMetal>& drops, ImVec2 size) {
    begin_panel(ui, "numbers", size);
    if (const DropResult* result = chosen(ui, drops))
        draw_drop_numbers(ui, *result);
    else
        for (const DropOfMetal& d : drops)
            if (d.metal->slug == ui.session.drop.metal() && !d.result) warning_text(ui, d.result.problem().text);
    end_panel(ui);
}

/// The race, and the numbers of the chosen metal beside it.
void draw_race_and_numbers(Ui& ui, const DropQuestions::FallsBeside& falls) {
    const ImVec2 room = ImGui::GetContentRegionAvail();
    const float gap = ui.px(14), numbers = std::min(ui.px(430), room.x * 0.46F);
    draw_race(ui, falls.drops, {room.x - numbers - gap, room.y});
    ImGui::SameLine(0, gap);
    draw_numbers(ui, falls.drops, {numbers, room.y});
}

/// Where there is little height: one of the three charts at a time, the numbers beside it.
void draw_one_chart(Ui& ui, const DropQuestions::FallsBeside& falls, ImVec2 room) {
    const float gap = ui.px(14), numbers = std::min(ui.px(430), room.x * 0.46F);
    ImGui::BeginChild("one chart", {room.x - numbers - gap, room.y}, false, still);
    int& shown = *ImGui::GetStateStorage()->GetIntRef(ImGui::GetID("shown"), 0);
    const int clicked = choice(ui, "drop.chart", {"times", "drag", "sweep"}, shown);
    if (clicked >= 0) shown = clicked;
    const ImVec2 left = ImGui::GetContentRegionAvail();
    if (shown == 0) draw_bars(ui, falls, left);
    if (shown == 1) draw_drag_curve(ui, falls.drops, left);
    if (shown == 2) draw_sweep(ui, left);
    ImGui::EndChild();
    ImGui::SameLine(0, gap);
    draw_numbers(ui, falls.drops, {numbers, room.y});
}

/// Bars and numbers above, drag curve and sweep below.
void draw_answer(Ui& ui, const DropQuestions::FallsBeside& falls) {
    constexpr double least_height = 580;
    const ImVec2 room = ImGui::GetContentRegionAvail();
    if (room.y < ui.px(least_height)) return draw_one_chart(ui, falls, room);
    const float gap = ui.px(14), width = (room.x - gap) / 2, above = room.y * 0.465F, below = room.y - above - ui.px(6);
    draw_bars(ui, falls, {width, above});
    ImGui::SameLine(0, gap);
    draw_numbers(ui, falls.drops, {width, above});
    draw_drag_curve(ui, falls.drops, {width, below});
    ImGui::SameLine(0, gap);
    draw_sweep(ui, {width, below});
}

/// One below another: the race or the charts, then the numbers.
void draw_in_a_column(Ui& ui, const DropQuestions::FallsBeside& falls) {
    constexpr double chart_height = 360;
    const ImVec2 chart = rest_of_panel(ui, chart_height);
    if (ui.view().drop.face == "race") {
        draw_race(ui, falls.drops, chart);
    } else {
        draw_bars(ui, falls, chart);
        draw_drag_curve(ui, falls.drops, chart);
        draw_sweep(ui, chart);
    }
    draw_numbers(ui, falls.drops, chart);
}

void draw_one(Ui& ui, const DropQuestions::FallsBeside& falls) {
    if (ui.narrow()) return draw_in_a_column(ui, falls);
    ui.view().drop.face == "race" ? draw_race_and_numbers(ui, falls) : draw_answer(ui, falls);
}

void draw_two(Ui& ui, const DropQuestions::FallsBeside& falls) {
    const Result<AgainstResult>* result = ui.session.drop.against(ui.session.part_conditions());
    const ImVec2 room = ImGui::GetContentRegionAvail();
    const bool race = ui.view().drop.face == "race";
    begin_panel(ui, "sentence", {0, room.y * 0.5F});
    if (!result)
        dim_text(ui, "Working it out …");
    else if (!*result)
        warning_text(ui, result->problem().text);
    else
        draw_against(ui, **result);
    end_panel(ui);
    const ImVec2 rest = rest_of_panel(ui, 360);
    if (race && result && *result)
        draw_race_of_two(ui, **result, rest);
    else
        draw_bars(ui, falls, rest);
}

void draw_results(Ui& ui) {
    if (ui.view().pins.empty()) {
        dim_text(ui, "Pin one or more metals: the magnet's fall through a tube of each appears here.");
        return;
    }
    const DropQuestions::Falls* falls = ui.session.drop.falls(ui.session.part_conditions());
    ui.probe.say("drop.working", ui.session.drop.falls_are_current() ? "" : "working");
    if (!falls)
        dim_text(ui, "Working it out …");
    else if (!*falls) {
        warning_text(ui, falls->problem().text);
        if (const DropQuestions::Falls* last = ui.session.drop.last_falls()) {
            const Stale stale(ui, true);
            draw_one(ui, **last);
        }
    } else {
        const Stale stale(ui, has_unreadable_field(ui));
        ui.view().drop.against ? draw_two(ui, **falls) : draw_one(ui, **falls);
    }
}

/// Where the set-up stands on the axis of a sweep, in SI; NaN over money, where it has no place.
double now_si(const SweepResult& r) {
    const eddy::DropInputs& i = r.setup.inputs;
    switch (r.over) {
    case SweepOver::wall:
        return i.outside_radius_m.value - i.bore_radius_m.value;
    case SweepOver::bore:
        return 2 * i.bore_radius_m.value;
    case SweepOver::length:
        return i.tube_length_m.value;
    case SweepOver::temperature:
        return r.conditions.temperature_K;
    default:
        return no_number;
    }
}

/// On the axis as it is shown, and back.
double swept_shown(SweepOver over, double si, UnitSystem units) {
    if (over == SweepOver::temperature) return units == UnitSystem::workshop ? si * 1.8 - 459.67 : si;
    return si / length_unit(units).si;
}
double swept_si(SweepOver over, double shown, UnitSystem units) {
    if (over == SweepOver::temperature) return units == UnitSystem::workshop ? (shown + 459.67) / 1.8 : shown;
    return shown * length_unit(units).si;
}

std::string in_steps(double metres, double step_m) {
    return trimmed(std::round(metres / step_m) * step_m * 1000, 6) + "mm";
}

/// What is swept, set to where "now" was pulled.
void set_now(Ui& ui, SweepOver over, double si) {
    constexpr double fine_m = 0.1e-3, coarse_m = 5e-3, least_gap_m = 0.2e-3;
    SetupWords& words = ui.view().drop_setup;
    const Result<DropSetup> setup = drop_setup(ui.session.catalogue, words);
    if (!setup) return;
    const eddy::DropInputs& now = setup->inputs;
    const double wall_m = now.outside_radius_m.value - now.bore_radius_m.value;
    TubeParts tube = parts_of_tube(words.tube);
    if (over == SweepOver::temperature)
        ui.view().conditions.set("at", trimmed(std::round(si), 6) + "K");
    else if (over == SweepOver::length)
        tube.length = in_steps(std::max(si, coarse_m), coarse_m);
    else if (over == SweepOver::wall)
        tube.outside = in_steps(2 * (now.bore_radius_m.value + std::max(si, fine_m)), fine_m);
    else if (over == SweepOver::bore) {
        const double bore_m = std::max(si, 2 * now.outer_radius_m.value + least_gap_m);
        tube.bore = in_steps(bore_m, fine_m);
        tube.outside = in_steps(bore_m + 2 * wall_m, fine_m);
    }
    if (over != SweepOver::temperature) words.tube = tube_words(tube);
}

} // namespace

void draw_sweep(Ui& ui, ImVec2 size) {
    static const std::vector<std::string> all = {"wall", "bore", "length", "temperature", "budget"};
    static constexpr std::array overs = {SweepOver::wall, SweepOver::bore, SweepOver::length, SweepOver::temperature,
                                         SweepOver::budget};
    DropChoice& made = ui.view().drop;
    ImGui::BeginChild("sweep", size, false, still);
    const auto at = std::find(all.begin(), all.end(), made.over);
    const int clicked = choice(ui, "drop.over", all, static_cast<int>(at - all.begin()));
    if (clicked >= 0 && all[static_cast<std::size_t>(clicked)] != made.over) {
        made.over = all[static_cast<std::size_t>(clicked)];
        made.range = usual_range(ui.session.catalogue, overs[static_cast<std::size_t>(clicked)]);
    }
    ImGui::SameLine();
    text_field(ui, "drop.range", made.range, "1mm:5mm", std::min(ui.px(130), ImGui::GetContentRegionAvail().x),
               [&](const std::string& typed) {
                   const Result<SweepRequest> ranged = with_range(ui.session.catalogue, {}, made.over, typed);
                   return ranged ? std::string() : ranged.problem().text;
               });
    if (ImGui::IsItemHovered() && !ImGui::IsItemActive())
        hover_text(ui,
                   "From and to\nsuch as 1mm:5mm, 77K:300K, " + usual_range(ui.session.catalogue, SweepOver::budget));
    if (!field_fault(ui, "drop.range").empty()) warning_text(ui, field_fault(ui, "drop.range"));
    const Result<SweepResult>* result = ui.session.drop.sweep(ui.session.part_conditions());
    if (!result)
        dim_text(ui, "Working it out …");
    else if (!*result)
        warning_text(ui, result->problem().text);
    else {
        PlotHands& hands = ui.plots["drop.sweep"];
        const double now = swept_shown((**result).over, now_si(**result), ui.session.units());
        hands.handle = std::isfinite(now) ? std::optional(now) : std::nullopt;
        chart_view(ui, "drop.sweep", std::to_string(ui.session.drop.sweep_serial()) + units_key(ui),
                   ImGui::GetContentRegionAvail(), [&](const Canvas& canvas) {
                       return layout(sweep_chart(ui.session.catalogue, **result, ui.session.units()), canvas);
                   });
        if (const auto to = hands.pulled)
            set_now(ui, (**result).over, swept_si((**result).over, *to, ui.session.units()));
    }
    ImGui::EndChild();
}

namespace {

void draw_setups(Ui& ui) {
    draw_column(ui, "drop", ui.view().drop_setup, ui.view().drop.metal);
    if (!ui.view().drop.against) return;
    beside(ui, 14);
    draw_column(ui, "drop2", ui.view().drop.second, ui.view().drop.second_metal);
}

/// The answer first, the set-up folded away below it.
void draw_narrow_drop(Ui& ui) {
    draw_results(ui);
    draw_drop_head(ui);
    const bool open = folding_head(ui, "Magnet and tube");
    ui.probe.item("drop.setup", open ? "open" : "");
    if (open) draw_setups(ui);
}

} // namespace

void draw_drop(Ui& ui) {
    if (ui.narrow()) return draw_narrow_drop(ui);
    const bool two = ui.view().drop.against;
    std::string& leaving = ui.session.passing.leaving; // a picture for a video is of the answer, not of the set-up
    const bool framed = leaving == "frame";
    if (framed) leaving.clear();
    ImGui::BeginChild("setups", {ui.px(two ? 2 * setup_room + 14 : setup_room), 0}, false, still);
    draw_drop_head(ui);
    draw_setups(ui);
    ImGui::EndChild();
    if (framed) leaving = "frame";
    ImGui::SameLine(0, ui.px(14));
    ImGui::BeginChild("results", {0, 0}, false, still);
    draw_results(ui);
    ImGui::EndChild();
}

} // namespace pourbook
