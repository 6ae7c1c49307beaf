#include "charts/field_chart.hpp"

#include "charts/drop_charts.hpp"
#include "core/quantity/format.hpp"
#include "questions/drop/cold_cautions.hpp"
#include "questions/drop/eddy_words.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double fastest_u = 50; // mu0 sigma v a, of tube_field

/// Evenly spaced, `count` of them, the ends a little inside.
std::vector<double> row(double from, double to, int count) {
    std::vector<double> out;
    for (int i = 0; i < count; ++i) out.push_back(from + (to - from) * (i + 0.5) / count);
    return out;
}

/// Radii that meet both faces of the wall.
std::vector<double> radii(const eddy::Bore& bore, double end) {
    std::vector<double> out = row(0, bore.inner_radius_m, 36);
    const std::vector<double> wall = row(bore.inner_radius_m, bore.outer_radius_m, 12),
                              beyond = row(bore.outer_radius_m, end, 18);
    out.insert(out.end(), wall.begin(), wall.end());
    out.insert(out.end(), beyond.begin(), beyond.end());
    return out;
}

std::string density_text(double A_m2) {
    return A_m2 < 1e5 ? significant(A_m2 / 1e3, 2) + " kA/m²" : significant(A_m2 / 1e6, 2) + " A/mm²";
}

} // namespace

Result<FieldChart> field_chart(const Catalogue& catalogue, const DropOfMetal& d, std::optional<double> speed,
                               UnitSystem units) {
    if (!d.result) return d.result.problem();
    const DropResult& r = *d.result;
    const eddy::DropInputs& in = r.setup.inputs;
    if (r.path_factor != 1) return refused("the picture is of a whole tube with the magnet on its axis");
    if (!speed) speed = r.fall.terminal_speed_m_s;
    if (!speed)
        return refused("this magnet has no terminal speed in this tube: --speed states one, such as --speed 1m/s");
    const double sigma = r.tube.conductivity_S_m(),
                 u = eddy::vacuum_permeability * sigma * *speed * in.bore_radius_m.value;
    if (!(*speed > 0) || u > fastest_u)
        return refused("--speed: above zero and up to " + speed_text(fastest_u / u * *speed, units) + " for this tube");
    FieldChart out;
    out.magnet = in.magnet();
    out.bore = in.bore();
    const double tall = out.magnet.whole_length_m() / 2 + 2.2 * out.bore.inner_radius_m,
                 wide = std::max(out.bore.outer_radius_m * 1.15, 1.8 * out.bore.inner_radius_m);
    const double remanence = r.moment_A_m2 * eddy::vacuum_permeability / out.magnet.volume_m3();
    out.grid =
        eddy::tube_field(out.magnet, out.bore, sigma, *speed, remanence, radii(out.bore, wide), row(-tall, tall, 110));
    for (const double j : out.grid.current_A_m2) out.peak_A_m2 = std::max(out.peak_A_m2, std::abs(j));
    out.title = "Flux and currents round a falling magnet";
    out.subtitle =
        magnet_text(r.setup, units) + "; " + tube_text(in, units) + "; " + metal_text(r.tube, r.conditions, units);
    out.notes = {"moving down at " + speed_text(*speed, units) + " · drag " +
                     force_text(r.model->setup(sigma).drag_N(*speed), units) + " · currents up to " +
                     density_text(out.peak_A_m2),
                 "between two lines always the same flux; the current comes out of the picture on one side and goes "
                 "into it on the other"};
    if (r.conditions.temperature_K < cold_bath_below_K)
        for (const MagnetFigure* c : cold_cautions(catalogue)) out.cautions.push_back(c->text);
    for (const MagnetFigure* c : magnet_cautions(catalogue)) out.cautions.push_back("Strong magnets: " + c->text);
    out.origin = origin_of(catalogue, {d});
    return out;
}

} // namespace pourbook
