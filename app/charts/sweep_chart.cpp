#include "charts/drop_charts.hpp"

#include "core/quantity/format.hpp"
#include "questions/drop/eddy_words.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

class SweptAxis {
public:
    SweptAxis(SweepOver over, const Catalogue& catalogue, UnitSystem units)
        : over_(over), workshop_(units == UnitSystem::workshop), length_(length_unit(units)),
          money_(shown_currency(catalogue, units)) {}

    double shown(double si) const {
        if (over_ == SweepOver::temperature) return workshop_ ? si * 1.8 - 459.67 : si;
        if (over_ == SweepOver::budget) return money_.shown(si);
        return si / length_.si;
    }
    std::string label() const {
        const std::string length = ", " + length_.name;
        switch (over_) {
        case SweepOver::wall:
            return "wall thickness" + length;
        case SweepOver::bore:
            return "bore" + length;
        case SweepOver::length:
            return "length" + length;
        case SweepOver::temperature:
            return workshop_ ? "temperature of the tube, °F" : "temperature of the tube, K";
        default:
            return "money for the tube's metal, " + money_.name;
        }
    }
    std::string words(double si) const {
        const UnitSystem units = workshop_ ? UnitSystem::workshop : UnitSystem::shown;
        if (over_ == SweepOver::temperature) // as the axis
            return workshop_ ? temperature_text(si, units) : trimmed(si, 6) + " K";
        if (over_ == SweepOver::budget) return money(si);
        return length_text(std::round(si * 1e6) / 1e6, units);
    }

    std::string money(double usd) const { return significant(money_.shown(usd), 3) + " " + money_.name; }
    std::string seconds_per_money(double seconds, double usd) const {
        return significant(seconds / money_.shown(usd), 3) + " s/" + money_.name;
    }

private:
    SweepOver over_;
    bool workshop_;
    NamedUnit length_;
    ShownCurrency money_;
};

std::string hover_of(const SweepLine& line, const SweepPoint& p, const SweptAxis& axis, UnitSystem units) {
    std::string text = (line.metal ? line.metal->name : line.name) + " at " + axis.words(p.x_si) + "\nfalls " +
                       significant(p.time_s, 3) + " s, 90 % interval " + significant(p.low90_s, 3) + " to " +
                       significant(p.high90_s, 3) + " s\nwall " + length_text(std::round(p.wall_m * 1e6) / 1e6, units);
    if (std::isfinite(p.tube_mass_kg))
        text +=
            "\ntube " + mass_text(p.tube_mass_kg, units) + ", " + significant(p.time_s / p.tube_mass_kg, 3) + " s/kg";
    if (std::isfinite(p.cost_usd))
        text += "\nmetal " + axis.money(p.cost_usd) + ", " + axis.seconds_per_money(p.time_s, p.cost_usd);
    return text;
}

CurveLine line_of(const SweepLine& swept, std::size_t slot, const SweptAxis& axis, UnitSystem units) {
    CurveLine line{swept.metal ? swept.metal->slug : swept.name,
                   swept.metal ? swept.metal->name : swept.name,
                   slot,
                   {},
                   {},
                   "",
                   {}};
    bool open = false;
    for (const SweepPoint& p : swept.points) {
        if (!p.problem.empty()) {
            open = false; // a gap
            continue;
        }
        if (!open) line.stretches.emplace_back();
        open = true;
        line.stretches.back().push_back(
            {axis.shown(p.x_si), p.time_s, p.low90_s, p.high90_s, hover_of(swept, p, axis, units)});
    }
    return line;
}

std::string rough(const SweptAxis& axis, double metres, UnitSystem units) {
    return significant(axis.shown(metres), 2) + (units == UnitSystem::workshop ? " in" : " mm");
}

std::string first_problem(const SweepLine& line) {
    for (const SweepPoint& p : line.points)
        if (!p.problem.empty()) return p.problem;
    return {};
}

/// Where the set-up stands that the sweep began with.
void add_place_of_setup(CurveChart& chart, const SweepResult& r, const SweptAxis& axis) {
    const eddy::DropInputs& i = r.setup.inputs;
    double here = no_number;
    if (r.over == SweepOver::wall) here = i.outside_radius_m.value - i.bore_radius_m.value;
    if (r.over == SweepOver::bore) here = 2 * i.bore_radius_m.value;
    if (r.over == SweepOver::length) here = i.tube_length_m.value;
    if (r.over == SweepOver::temperature) here = r.conditions.temperature_K;
    const std::vector<SweepPoint>& points = r.lines.front().points;
    if (here >= points.front().x_si && here <= points.back().x_si) chart.upright = {axis.shown(here), "now"};
}

} // namespace

CurveChart sweep_chart(const Catalogue& catalogue, const SweepResult& result, UnitSystem units) {
    const SweptAxis axis(result.over, catalogue, units);
    CurveChart chart;
    chart.title = std::string("Fall time against ") + name_of(result.over);
    chart.x_label = axis.label();
    chart.y_label = "fall time, s";
    chart.legend = "band: 90 %";
    if (result.over == SweepOver::wall)
        chart.legend += " · an endless wall's half at " + rough(axis, result.wall_for_half_m, units) +
                        ", nine tenths at " + rough(axis, result.wall_for_90_percent_m, units);
    chart.log_x = result.over == SweepOver::wall || result.over == SweepOver::budget;
    for (std::size_t i = 0; i < result.lines.size(); ++i) {
        CurveLine line = line_of(result.lines[i], i, axis, units);
        const std::string problem = first_problem(result.lines[i]);
        if (!problem.empty()) chart.notes.push_back((line.stretches.empty() ? "no curve: " : "gaps: ") + problem);
        if (!line.stretches.empty()) chart.lines.push_back(std::move(line));
    }
    if (!chart.lines.empty()) add_place_of_setup(chart, result, axis);
    for (const CitedFigure& f : result.setup.sources) chart.origin.sources.push_back(f.citation.source);
    for (const std::string& key : result.metal_sources) chart.origin.sources.push_back(key);
    auto& keys = chart.origin.sources;
    std::sort(keys.begin(), keys.end());
    keys.erase(std::unique(keys.begin(), keys.end()), keys.end());
    chart.origin.data_version = catalogue.data_version;
    chart.origin.conditions = result.over == SweepOver::temperature
                                  ? state_text(result.conditions)
                                  : "at " + temperature_text(result.conditions.temperature_K, UnitSystem::shown) +
                                        ", " + state_text(result.conditions);
    if (result.over == SweepOver::budget) chart.origin.conditions += rate_text({catalogue.property("price")});
    return chart;
}

} // namespace pourbook
