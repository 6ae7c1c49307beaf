#include "charts/drop_charts.hpp"

#include "core/quantity/format.hpp"
#include "questions/drop/eddy_words.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr int points = 90;
constexpr std::size_t samples = 200;

CurveSpot spot_of(const DragPoint& p, const std::string& hover) {
    return {p.speed_m_s, p.drag_N, p.low90_N, p.high90_N, hover};
}

/// Terminal speed and peak, the marks on a curve.
std::vector<CurveSpot> marks_of(const DropOfMetal& d, UnitSystem units) {
    const DropResult& r = *d.result;
    std::vector<CurveSpot> out;
    const double weight = r.magnet_mass_kg * eddy::standard_gravity_m_s2;
    if (const auto v = r.fall.terminal_speed_m_s)
        out.push_back({*v, weight, weight, weight, d.metal->name + "\nterminal speed " + speed_text(*v, units)});
    if (std::isfinite(r.peak_drag_N))
        out.push_back({r.peak_drag_speed_m_s, r.peak_drag_N, r.peak_drag_N, r.peak_drag_N,
                       d.metal->name + "\npeak drag " + force_text(r.peak_drag_N, UnitSystem::shown) + " at " +
                           speed_text(r.peak_drag_speed_m_s, units)});
    return out;
}

CurveLine line_of(const DropOfMetal& d, std::size_t slot, double from, double to, UnitSystem units) {
    CurveLine line{d.metal->slug, d.metal->name, slot, {{}}, {}, "", marks_of(d, units)};
    for (const DragPoint& p : drag_points(*d.result, from, to, points, samples, 1))
        line.stretches.front().push_back(spot_of(p, d.metal->name + "\n" + force_text(p.drag_N, UnitSystem::shown) +
                                                        " at " + speed_text(p.speed_m_s, units) + "\n90 % interval " +
                                                        force_text(p.low90_N, UnitSystem::shown) + " to " +
                                                        force_text(p.high90_N, UnitSystem::shown)));
    return line;
}

/// Speeds worth showing: from below the slowest fall to beyond the last peak.
std::pair<double, double> speeds_of(const std::vector<DropOfMetal>& drops) {
    double from = INFINITY, to = 0;
    for (const DropOfMetal& d : drops) {
        if (!d.result) continue;
        const bool low_speed_only = !std::isfinite(d.result->peak_drag_N);
        const double settled = d.result->fall.terminal_speed_m_s.value_or(1);
        from = std::min(from, settled / 5);
        to = std::max(to, low_speed_only ? 3 * settled : 5 * d.result->peak_drag_speed_m_s);
    }
    return {from, to};
}

} // namespace

CurveChart drag_chart(const Catalogue& catalogue, const std::vector<DropOfMetal>& drops, UnitSystem units) {
    CurveChart chart;
    chart.title = "Drag against speed";
    chart.x_label = "speed, m/s";
    chart.y_label = "drag in a long tube, N";
    chart.legend = "marks: terminal speed and peak · band: 90 %";
    chart.log = chart.log_x = true;
    const auto [from, to] = speeds_of(drops);
    for (std::size_t i = 0; i < drops.size(); ++i) {
        const DropOfMetal& d = drops[i];
        if (!d.result) {
            chart.notes.push_back("no curve: " + d.result.problem().text);
            continue;
        }
        chart.lines.push_back(line_of(d, i, from, to, units));
        const double weight = d.result->magnet_mass_kg * eddy::standard_gravity_m_s2;
        if (chart.levels.empty())
            chart.levels.push_back({weight, "weight of the magnet, " + force_text(weight, UnitSystem::shown)});
    }
    chart.origin = origin_of(catalogue, drops);
    return chart;
}

} // namespace pourbook
