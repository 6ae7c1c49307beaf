#include "charts/mix_chart.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

/// A figure with its 90 % ends, in the unit shown.
class Scale {
public:
    Scale(const Catalogue& c, bool resistivity)
        : property_(*c.property(resistivity ? "resistivity" : "conductivity")), resistivity_(resistivity),
          units_(resistivity ? UnitSystem::shown : UnitSystem::workshop) {}

    CurveSpot spot(double wt, double value, double low, double high, const std::string& what) const {
        const double a = shown(low), b = shown(high);
        CurveSpot s{wt, shown(value), std::min(a, b), std::max(a, b), ""};
        s.hover = what + "\n" + significant(s.y, 3) + " " + shown_unit(property_, units_) +
                  " (90 %: " + significant(s.low, 3) + " to " + significant(s.high, 3) + ")";
        return s;
    }

    std::string label() const { return label_with_unit(property_, units_); }

private:
    double shown(double conductivity) const {
        return shown_number(property_, resistivity_ ? 1 / conductivity : conductivity, units_);
    }

    const Property& property_;
    bool resistivity_;
    UnitSystem units_;
};

CurveLine line_of(const MixCurve& curve, std::size_t slot, const Scale& scale) {
    const std::string treatment = name_of(curve.treatment);
    CurveLine line{treatment, treatment, slot, {}, {}, "", {}};
    bool open = false;
    for (const MixCurvePoint& p : curve.points) {
        if (std::isnan(p.conductivity_si)) {
            open = false;
            continue;
        }
        if (!open) line.stretches.emplace_back();
        open = true;
        line.stretches.back().push_back(
            scale.spot(p.wt_b, p.conductivity_si, p.low90_si, p.high90_si,
                       "estimate, " + treatment + ", " + trimmed(p.wt_b, 4) + " wt% " + curve.b));
    }
    return line;
}

/// The part of the axis where there is something to see.
std::pair<double, double> range_of(const CurveChart& chart) {
    constexpr double near_end = 8;
    double low = 100, high = 0;
    const auto take = [&](double x) {
        low = std::min(low, x);
        high = std::max(high, x);
    };
    for (const CurveLine& line : chart.lines)
        for (const auto& stretch : line.stretches)
            for (const CurveSpot& s : stretch) take(s.x);
    for (const CurveMark& m : chart.marks) take(m.x);
    if (chart.upright) take(chart.upright->x);
    if (low >= high) return {0, 100};
    return {low < near_end ? 0 : low, high > 100 - near_end ? 100 : high};
}

CurveMark mark_of(const MeasuredAlloy& m, const MixCurve& curve, const Scale& scale) {
    const double half = normal_90 * m.standard_uncertainty_si;
    const CurveSpot s = scale.spot(m.wt_b, m.conductivity_si, m.conductivity_si - half, m.conductivity_si + half,
                                   m.metal->name + ", " + m.condition + ", " + trimmed(m.wt_b, 4) + " wt% " + curve.b);
    return {s.x, s.y, s.low, s.high, m.metal->slug, m.metal->name, s.hover + "\nfrom the reference: open its sheet"};
}

} // namespace

CurveChart mix_chart(const Catalogue& catalogue, const std::vector<MixCurve>& curves, const MixChartLook& look) {
    CurveChart chart;
    const Scale scale(catalogue, look.resistivity);
    chart.y_label = scale.label();
    chart.legend = "line: estimate · band: 90 % · ● alloys of the reference with a cited value";
    chart.upright = look.composition;
    chart.origin.data_version = catalogue.data_version;
    if (curves.empty()) return chart;
    const MixCurve& first = curves.front();
    chart.title = std::string(look.resistivity ? "Resistivity" : "Conductivity") + " of " + first.a + "-" + first.b;
    chart.x_label = "wt% " + first.b;
    std::string treatments;
    for (std::size_t i = 0; i < curves.size(); ++i) {
        CurveLine line = line_of(curves[i], i, scale);
        treatments += (i ? ", " : "") + line.name;
        if (line.stretches.empty())
            chart.notes.push_back("no rule for " + line.name + " " + first.a + "-" + first.b);
        else
            chart.lines.push_back(std::move(line));
        for (const std::string& key : curves[i].sources)
            if (std::find(chart.origin.sources.begin(), chart.origin.sources.end(), key) == chart.origin.sources.end())
                chart.origin.sources.push_back(key);
    }
    for (const MeasuredAlloy& m : first.measured) chart.marks.push_back(mark_of(m, first, scale));
    chart.x_range = range_of(chart);
    chart.origin.conditions = "at 20 °C, estimates from composition, condition: " + treatments;
    return chart;
}

} // namespace pourbook
