#include "charts/curve_chart.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double ice_point_K = 273.15;

class Converter {
public:
    Converter(const CurveResult& result, const CurveLook& look) : property_(*result.property), look_(look) {}

    CurveSpot spot(const CurvePoint& p, const std::string& metal) const {
        const double half = normal_90 * p.uncertainty_si;
        const double a = shown_value(p.value_si - half), b = shown_value(p.value_si + half);
        CurveSpot out{temperature(p.temperature_K), shown_value(p.value_si), std::min(a, b), std::max(a, b), ""};
        Evaluated value;
        value.value_si = p.value_si;
        value.standard_uncertainty_si = p.uncertainty_si;
        out.hover = metal + "\n" + celsius_text(p.temperature_K) + "\n" + shown_full(property_, value, look_.units);
        return out;
    }

    double temperature(double kelvin) const { return look_.celsius ? kelvin - ice_point_K : kelvin; }

private:
    double shown_value(double si) const { return shown_number(property_, si, look_.units); }

    const Property& property_;
    const CurveLook& look_;
};

/// Whether the figures reach the melting range from both sides: only then is the step between them melting and not a
/// gap.
bool meets_at_melting(const Catalogue& catalogue, const Metal& metal, double solid_K, double liquid_K) {
    constexpr double near_K = 2;
    const auto solidus = evaluate(catalogue, metal, "solidus", {}),
               liquidus = evaluate(catalogue, metal, "liquidus", {});
    return solidus && liquidus && std::abs(solid_K - solidus->value_si) < near_K &&
           std::abs(liquid_K - liquidus->value_si) < near_K;
}

void add_jumps(const Catalogue& catalogue, CurveLine& line, const CurveOfMetal& curve, const Converter& convert) {
    for (std::size_t i = 1; i < curve.stretches.size(); ++i) {
        const CurveStretch &before = curve.stretches[i - 1], &after = curve.stretches[i];
        if (before.phase != Phase::solid || after.phase != Phase::liquid) continue;
        if (!meets_at_melting(catalogue, *curve.metal, before.points.back().temperature_K,
                              after.points.front().temperature_K))
            continue;
        line.jumps.emplace_back(convert.spot(before.points.back(), line.name),
                                convert.spot(after.points.front(), line.name));
        line.jump_label = "melts";
    }
}

std::string words_of(const Catalogue& catalogue, const CurveStretch& s) {
    return short_source(catalogue, s.source) + (s.remembered ? ", remembered" : "");
}

void add_joins(const Catalogue& catalogue, CurveLine& line, const CurveOfMetal& curve, const Converter& convert) {
    for (std::size_t i = 1; i < curve.stretches.size(); ++i) {
        const CurveStretch &before = curve.stretches[i - 1], &after = curve.stretches[i];
        if (before.phase != after.phase || !before.cited || !after.cited) continue;
        const CurvePoint &a = before.points.back(), &b = after.points.front();
        line.joins.push_back({convert.spot(a, line.name), convert.spot(b, line.name),
                              line.name + "\nhere one source ends and another goes on: " + words_of(catalogue, before) +
                                  " up to " + celsius_text(a.temperature_K) + ", " + words_of(catalogue, after) +
                                  " from " + celsius_text(b.temperature_K) +
                                  "\nthe step between them is theirs, not the metal's"});
    }
}

CurveLine line_of(const Catalogue& catalogue, const CurveOfMetal& curve, std::size_t slot, const Converter& convert) {
    CurveLine line{curve.metal->slug, curve.metal->name, slot, {}, {}, "", {}, {}};
    for (const CurveStretch& s : curve.stretches) {
        line.stretches.emplace_back();
        line.by_law.push_back(!s.cited);
        line.remembered.push_back(s.remembered);
        for (const CurvePoint& p : s.points) line.stretches.back().push_back(convert.spot(p, line.name));
    }
    for (const CurvePoint& p : curve.printed) line.printed.push_back(convert.spot(p, line.name));
    add_jumps(catalogue, line, curve, convert);
    add_joins(catalogue, line, curve, convert);
    return line;
}

/// Only what is to be seen.
std::string legend_of(const CurveChart& chart) {
    const auto any = [&](const auto& of) { return std::any_of(chart.lines.begin(), chart.lines.end(), of); };
    const auto holds = [](const std::vector<bool>& v) { return std::find(v.begin(), v.end(), true) != v.end(); };
    std::string words = "marks: printed figures · band: 90 %";
    if (any([&](const CurveLine& l) { return holds(l.remembered); })) words += " · dashed: remembered";
    if (any([&](const CurveLine& l) { return holds(l.by_law); })) words += " · thin: carried by a law";
    if (any([](const CurveLine& l) { return !l.joins.empty(); })) words += " · bar across: another source goes on";
    if (any([](const CurveLine& l) { return !l.jumps.empty(); })) words += " · thin upright: melting";
    return words;
}

/// On the line through its spots; nothing outside them.
std::optional<CurveSpot> between(const std::vector<CurveSpot>& spots, double x) {
    const auto after =
        std::lower_bound(spots.begin(), spots.end(), x, [](const CurveSpot& s, double v) { return s.x < v; });
    if (after == spots.end() || (after == spots.begin() && after->x > x)) return std::nullopt;
    if (after->x == x) return *after;
    const CurveSpot &a = *(after - 1), &b = *after;
    const double share = (x - a.x) / (b.x - a.x);
    const auto mix = [&](double from, double to) { return from + (to - from) * share; };
    return CurveSpot{x, mix(a.y, b.y), mix(a.low, b.low), mix(a.high, b.high), ""};
}

} // namespace

CurveChart curve_chart(const Catalogue& catalogue, const CurveResult& result, const CurveLook& look) {
    CurveChart chart;
    const Property& property = *result.property;
    chart.title = property.label + " against temperature";
    chart.x_label = look.celsius ? "temperature, °C" : "temperature, K";
    chart.y_label = label_with_unit(property, look.units);
    chart.log = look.log;
    chart.log_x = look.log_t && !look.celsius;
    chart.origin.conditions = "handbook metal, " + result.condition + " condition";
    chart.origin.data_version = catalogue.data_version;
    const Converter convert(result, look);
    for (std::size_t i = 0; i < result.curves.size(); ++i) {
        const CurveOfMetal& curve = result.curves[i];
        if (curve.stretches.empty()) {
            chart.notes.push_back("no curve: " + curve.missing);
            continue;
        }
        chart.lines.push_back(line_of(catalogue, curve, i, convert));
        for (const std::string& key : curve.sources)
            if (std::find(chart.origin.sources.begin(), chart.origin.sources.end(), key) == chart.origin.sources.end())
                chart.origin.sources.push_back(key);
    }
    chart.legend = legend_of(chart);
    return chart;
}

std::vector<CurveReading> readings_at(const CurveChart& chart, double x) {
    std::vector<CurveReading> out;
    for (const CurveLine& line : chart.lines) {
        CurveReading reading{line.id, line.name, line.slot, no_number, "no value"};
        for (const auto& stretch : line.stretches)
            if (const auto s = between(stretch, x)) {
                reading.value = s->y;
                reading.text = rounded_to(s->y, (s->high - s->low) / 2, 4) +
                               ", 90 %: " + rounded_to(s->low, (s->high - s->low) / 2, 4) + " to " +
                               rounded_to(s->high, (s->high - s->low) / 2, 4);
            }
        out.push_back(std::move(reading));
    }
    return out;
}

std::vector<CurveReading> readings_at(const Catalogue& catalogue, const CurveResult& result, const CurveLook& look,
                                      double temperature) {
    std::vector<CurveReading> out;
    Conditions conditions;
    conditions.temperature_K = look.celsius ? temperature + ice_point_K : temperature;
    conditions.condition = result.condition;
    conditions.story = false;
    for (std::size_t i = 0; i < result.curves.size(); ++i) {
        const Metal& metal = *result.curves[i].metal;
        CurveReading reading{metal.slug, metal.name, i, no_number, "no value"};
        if (const Result<Evaluated> e = evaluate(catalogue, metal, result.property->id, conditions)) {
            reading.value = shown_number(*result.property, e->value_si, look.units);
            reading.text = shown_full(*result.property, *e, look.units);
            if (e->basis != Basis::cited) reading.text += ", carried";
            if (e->basis == Basis::cited && e->how_known == HowKnown::memory) reading.text += ", remembered";
        }
        out.push_back(std::move(reading));
    }
    return out;
}

} // namespace pourbook
