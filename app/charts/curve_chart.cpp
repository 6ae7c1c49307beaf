#include "charts/curve_chart.hpp"

#include "core/quantity/constants.hpp"

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
        out.hover = metal + "\n" + temperature_text(p.temperature_K) + "\n" + shown_full(property_, value, look_.units);
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

CurveLine line_of(const Catalogue& catalogue, const CurveOfMetal& curve, std::size_t slot, const Converter& convert) {
    CurveLine line{curve.metal->slug, curve.metal->name, slot, {}, {}, "", {}, {}};
    for (const CurveStretch& s : curve.stretches) {
        line.stretches.emplace_back();
        line.by_law.push_back(!s.cited);
        for (const CurvePoint& p : s.points) line.stretches.back().push_back(convert.spot(p, line.name));
    }
    for (const CurvePoint& p : curve.printed) line.printed.push_back(convert.spot(p, line.name));
    add_jumps(catalogue, line, curve, convert);
    return line;
}

} // namespace

CurveChart curve_chart(const Catalogue& catalogue, const CurveResult& result, const CurveLook& look) {
    CurveChart chart;
    const Property& property = *result.property;
    chart.title = property.label + " against temperature";
    chart.x_label = look.celsius ? "temperature, °C" : "temperature, K";
    chart.y_label = label_with_unit(property, look.units);
    chart.log = look.log;
    const auto by_law = [](const CurveOfMetal& c) {
        return std::any_of(c.stretches.begin(), c.stretches.end(), [](const CurveStretch& s) { return !s.cited; });
    };
    if (std::any_of(result.curves.begin(), result.curves.end(), by_law))
        chart.legend = "marks: printed figures · band: 90 % · thin: carried by a law · dashed: melting";
    chart.origin.conditions = result.condition + " condition";
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
    return chart;
}

} // namespace pourbook
