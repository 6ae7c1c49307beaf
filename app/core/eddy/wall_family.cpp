#include "core/eddy/wall_family.hpp"

#include <cmath>
#include <limits>
#include <numbers>

namespace pourbook::eddy {
namespace {

constexpr double step = 0.2; // of ln A

double square(double x) {
    return x * x;
}

/// Logarithms blended, share of b.
double blended(double a, double b, double share) {
    return std::exp((1 - share) * std::log(a) + share * std::log(b));
}

} // namespace

WallFamily::WallFamily(DropInputs inputs) : inputs_(std::move(inputs)) {
    inputs_.wall_area_held = true;
    inputs_.outside_radius_m.spread = 0;
    whole_ = inputs_;
    whole_.slits = {};
    whole_.off_axis_m = 0;
}

double WallFamily::outside_radius_m(double wall_area_m2) const {
    return std::sqrt(square(inputs_.bore_radius_m.value) + wall_area_m2 / std::numbers::pi);
}

WallFamily::Between WallFamily::place(double wall_area_m2) const {
    const double at = std::log(wall_area_m2 / (std::numbers::pi * square(inputs_.bore_radius_m.value))) / step;
    return {static_cast<int>(std::floor(at)), at - std::floor(at)};
}

Result<double> WallFamily::path_factor(double wall_area_m2) const {
    DropInputs here = inputs_;
    here.outside_radius_m.value = outside_radius_m(wall_area_m2);
    return eddy::path_factor(here);
}

DropInputs WallFamily::whole_at(int grid) const {
    DropInputs here = whole_;
    here.outside_radius_m.value = here.bore_radius_m.value * std::sqrt(1 + std::exp(step * grid));
    return here;
}

const DropModel& WallFamily::model(int grid) const {
    auto found = models_.find(grid);
    if (found == models_.end()) found = models_.try_emplace(grid, whole_at(grid)).first;
    return found->second;
}

double WallFamily::ln_drag_on_grid(int grid) const {
    auto found = ln_drags_.find(grid);
    if (found == ln_drags_.end()) {
        const DropInputs here = whole_at(grid);
        found = ln_drags_.emplace(grid, std::log(TubeDrag::low_speed_of(here.magnet(), here.bore()))).first;
    }
    return found->second;
}

/// Cubic through the four grid walls around it (Lagrange).
double WallFamily::ln_drag(double wall_area_m2) const {
    const auto [k, t] = place(wall_area_m2);
    return ln_drag_on_grid(k - 1) * -t * (t - 1) * (t - 2) / 6 + ln_drag_on_grid(k) * (t + 1) * (t - 1) * (t - 2) / 2 -
           ln_drag_on_grid(k + 1) * (t + 1) * t * (t - 2) / 2 + ln_drag_on_grid(k + 2) * (t + 1) * t * (t - 1) / 6;
}

FallSetup WallFamily::on_grid(int grid, double conductivity_S_m, double wall_area_m2, double path) const {
    Variation v = model(grid).nominal();
    v.drag = path * std::exp(ln_drag(wall_area_m2) - ln_drag_on_grid(grid));
    return model(grid).setup(conductivity_S_m, v);
}

FallSetup WallFamily::setup(double conductivity_S_m, double wall_area_m2) const {
    return on_grid(place(wall_area_m2).below, conductivity_S_m, wall_area_m2, *path_factor(wall_area_m2));
}

double WallFamily::fall_time_s(double conductivity_S_m, double wall_area_m2) const {
    const Result<double> path = path_factor(wall_area_m2);
    if (!path) return std::numeric_limits<double>::quiet_NaN();
    const auto [below, share] = place(wall_area_m2);
    const auto with_curve = [&](int grid) {
        return model(grid).fall(on_grid(grid, conductivity_S_m, wall_area_m2, *path)).time_s;
    };
    return blended(with_curve(below), with_curve(below + 1), share);
}

std::vector<double> WallFamily::fall_times_s(double near_m2, const std::vector<double>& conductivities_S_m,
                                             const std::vector<double>& wall_areas_m2, Draws& draws) const {
    const auto [below, share] = place(near_m2);
    const double ln_path = std::log(*path_factor(near_m2));
    std::vector<double> ln_drags;
    for (const double area : wall_areas_m2) ln_drags.push_back(ln_path + ln_drag(area));
    const auto with_curve = [&](int grid) {
        std::vector<Variation> variations = model(grid).variations(draws);
        for (std::size_t i = 0; i < variations.size(); ++i)
            variations[i].drag *= std::exp(ln_drags[i] - ln_drag_on_grid(grid));
        return eddy::fall_times_s(model(grid), conductivities_S_m, variations);
    };
    std::vector<double> times = with_curve(below);
    const std::vector<double> above = with_curve(below + 1);
    for (std::size_t i = 0; i < times.size(); ++i) times[i] = blended(times[i], above[i], share);
    return times;
}

} // namespace pourbook::eddy
