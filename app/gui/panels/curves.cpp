#include "charts/curve_chart.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "gui/actions/actions.hpp"
#include "gui/panels/panels.hpp"
#include "gui/widgets/chart_view.hpp"
#include "gui/widgets/splitter.hpp"
#include "gui/widgets/text.hpp"
#include "gui/widgets/text_field.hpp"
#include "questions/metals/temperature_words.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double ice_point_K = 273.15;

/// What was seen is another thing in other units or of another property.
void show_all(Ui& ui) {
    ui.plots["curve.chart"] = {};
    ui.drafts.erase("curve.from");
    ui.drafts.erase("curve.to");
}

void draw_properties(Ui& ui) {
    const Property* chosen = ui.session.catalogue.property(ui.view().curves.property);
    if (begin_combo("property", chosen ? chosen->label : "choose a property",
                    std::min(ui.px(330), ImGui::GetContentRegionAvail().x))) {
        for (const Property& p : ui.session.catalogue.properties) {
            if (!p.varies_with_temperature) continue;
            if (ImGui::Selectable(p.label.c_str(), &p == chosen)) {
                ui.view().curves.property = p.id;
                ui.plots["curve.chart"].range.y.reset();
            }
            ui.probe.item("property." + p.id, p.label);
        }
        end_combo();
    }
    ui.probe.item("property", ui.view().curves.property);
}

void draw_choice(Ui& ui) {
    CurveChoice& made = ui.view().curves;
    draw_properties(ui);
    flow(button_width("linear"));
    if (const int c = choice(ui, "scale", {"linear", "logarithmic"}, made.log ? 1 : 0); c >= 0) made.log = c == 1;
    flow(button_width("K") + button_width("°C"));
    if (const int c = choice(ui, "degrees", {"K", "°C"}, made.celsius ? 1 : 0); c >= 0) {
        made.celsius = c == 1;
        show_all(ui);
    }
    bool& log_t = made.log_t;
    if (made.celsius) return;
    flow(button_width("even") + button_width("by ratio"));
    if (const int c = choice(ui, "log_t", {"even", "by ratio"}, log_t ? 1 : 0); c >= 0) log_t = c == 1;
    if (ImGui::IsItemHovered()) hover_text(ui, "The temperature axis\neven, or logarithmic: room for the cold");
}

double shown_temperature(const CurveChoice& made, double kelvin) {
    return made.celsius ? kelvin - ice_point_K : kelvin;
}

double kelvin_of(const CurveChoice& made, double shown) {
    return made.celsius ? shown + ice_point_K : shown;
}

/// From a little below the lowest melting to where the lines end.
std::pair<double, double> melting_range_K(const CurveResult& result) {
    double low = no_number, high = no_number;
    for (const CurveOfMetal& c : result.curves)
        for (const CurveStretch& s : c.stretches) {
            high = std::fmax(high, s.points.back().temperature_K);
            if (s.phase == Phase::solid) low = std::fmin(low, s.points.back().temperature_K);
        }
    return {0.85 * low, high};
}

/// One end of the range, typed; as it stands in the picture.
void draw_end(Ui& ui, const char* id, bool upper, const Axis& seen, PlotRange& range) {
    const CurveChoice& made = ui.view().curves;
    std::string typed = trimmed(upper ? seen.high : seen.low, 4);
    const auto fault = [](const std::string& words) {
        const Result<double> read = temperature_from(words);
        return read ? std::string() : read.problem().text;
    };
    const auto with_unit = [&](const std::string& words) {
        const bool bare = !words.empty() && words.find_first_not_of("0123456789.,-+ ") == std::string::npos;
        return bare ? words + (made.celsius ? " degC" : " K") : words;
    };
    if (!text_field(ui, id, typed, "", ui.px(70), [&](const std::string& words) { return fault(with_unit(words)); }))
        return;
    const double end = shown_temperature(made, *temperature_from(with_unit(typed)));
    const double low = upper ? seen.low : end, high = upper ? end : seen.high;
    if (low < high) range.x = {low, high};
    range.y.reset();
}

void draw_ranges(Ui& ui, const CurveResult& result) {
    const auto cached = ui.scenes.find("curve.chart");
    if (cached == ui.scenes.end() || !cached->second.scene.plot) return;
    PlotRange& range = ui.plots["curve.chart"].range;
    const CurveChoice& made = ui.view().curves;
    flow(ui.px(190), ui.px(16));
    const Axis seen = cached->second.scene.plot->x;
    draw_end(ui, "curve.from", false, seen, range);
    ImGui::SameLine(0, ui.px(4));
    dim_text(ui, "to");
    ImGui::SameLine(0, ui.px(4));
    draw_end(ui, "curve.to", true, seen, range);
    struct Named {
        const char* name;
        std::pair<double, double> kelvin;
        const char* meaning;
    };
    const Named named[] = {{"cold", {4, 300}, "from liquid helium to the room"},
                           {"shop", {250, 600}, "where a finished part lives"},
                           {"melt", melting_range_K(result), "around the melting and above"}};
    for (const Named& n : named) {
        flow(button_width(n.name), ui.px(4));
        if (ImGui::Button(n.name))
            range = {{{shown_temperature(made, n.kelvin.first), shown_temperature(made, n.kelvin.second)}}, {}};
        ui.probe.item(std::string("range.") + n.name, n.name);
        if (ImGui::IsItemHovered()) hover_text(ui, std::string(n.name) + "\n" + n.meaning);
    }
    flow(button_width("all"), ui.px(4));
    if (ImGui::Button("all")) range = {};
    ui.probe.item("range.all", "all");
    for (const char* id : {"curve.from", "curve.to"}) fault_line(ui, id);
}

void draw_chart(Ui& ui, const CurveResult& result) {
    Session& s = ui.session;
    const CurveChoice& made = ui.view().curves;
    const CurveLook look{made.log, made.celsius, made.log_t, s.units()};
    const std::string key = std::to_string(s.curves_serial()) + (look.log ? "g" : "n") + (look.celsius ? "c" : "k") +
                            (look.log_t ? "t" : "") + (ui.view().workshop_units ? "w" : "s");
    for (const CurveOfMetal& c : result.curves)
        ui.probe.say("curve." + c.metal->slug,
                     c.stretches.empty() ? c.missing : std::to_string(c.stretches.size()) + " stretches");
    const PlotReader reader{[&](double x) { return readings_at(s.catalogue, result, look, x); },
                            [&](double x) { return "at " + celsius_text(kelvin_of(made, x)) + ", handbook metal"; },
                            shown_temperature(made, s.conditions().temperature_K)};
    const std::string clicked = read_chart_view(
        ui, "curve.chart", key, rest_of_panel(ui, 480),
        [&](const Canvas& canvas) { return layout(curve_chart(s.catalogue, result, look), canvas); },
        result.curves.size(), reader);
    if (!clicked.empty()) show_metal(s, clicked);
}

} // namespace

void draw_curves(Ui& ui) {
    draw_choice(ui);
    if (ui.view().pins.empty()) {
        dim_text(ui, "Pin one or more metals: each gets a line from the coldest to the hottest cited temperature.");
        return;
    }
    const Result<CurveResult>* result = ui.session.curves();
    if (!result)
        dim_text(ui, "Working it out …");
    else if (!*result)
        warning_text(ui, result->problem().text);
    else {
        draw_ranges(ui, **result);
        draw_chart(ui, **result);
    }
}

} // namespace pourbook
