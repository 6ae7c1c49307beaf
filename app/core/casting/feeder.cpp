#include "core/casting/feeder.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace pourbook::casting {

using std::numbers::pi;

double chvorinov_constant_s_m2(const Freezing& metal, const MouldMaterial& mould) {
    const double share = metal.density_kg_m3 * metal.heat_J_kg / (metal.temperature_K - mould.temperature_K);
    return pi / 4 * share * share / (mould.conductivity_W_m_K * mould.density_kg_m3 * mould.specific_heat_J_kg_K);
}

double Cylinder::volume_m3() const {
    return pi / 4 * diameter_m * diameter_m * height_m;
}

double Cylinder::modulus_m() const {
    return diameter_m * height_m / (4 * height_m + 2 * diameter_m);
}

Cylinder cylinder_of_modulus(double modulus_m, double height_ratio) {
    const double d = modulus_m * (4 * height_ratio + 2) / height_ratio;
    return {d, d * height_ratio};
}

Cylinder cylinder_of_modulus_on_neck(double modulus_m, double height_ratio, double neck_m2) {
    double d = cylinder_of_modulus(modulus_m, height_ratio).diameter_m;
    for (int i = 0; i < 50; ++i) { // V/M = A - neck; contracts, since the neck is a small part of A
        const double all_m2 = pi * d * d * (height_ratio + 0.5);
        d = std::cbrt(4 * modulus_m * std::max(all_m2 - neck_m2, all_m2 / 2) / (pi * height_ratio));
    }
    return {d, d * height_ratio};
}

Cylinder cylinder_of_volume(double volume_m3, double height_ratio) {
    const double d = std::cbrt(4 * volume_m3 / (pi * height_ratio));
    return {d, d * height_ratio};
}

double one_after_the_other(double first, double second) {
    return 1 - (1 - first) * (1 - second);
}

Result<Feeder> feeder_for(double casting_m3, double modulus_m, double share, const FeedRules& rules,
                          double neck_most_m) {
    Feeder f;
    f.neck_m = std::min(4 * rules.neck_ratio * modulus_m, neck_most_m);
    const double neck_m2 = pi / 4 * f.neck_m * f.neck_m;
    const double covered_m = casting_m3 / std::max(casting_m3 / modulus_m - neck_m2, casting_m3 / modulus_m / 2);
    f.by_modulus =
        cylinder_of_modulus_on_neck(covered_m * rules.modulus_ratio / rules.sleeve_factor, rules.height_ratio, neck_m2);
    f.shrinkage_volume_m3 = share * casting_m3;
    if (share >= rules.efficiency)
        return Problem{Problem::Kind::refused,
                       "the melt shrinks by " + significant(100 * share, 3) + " %, more than a plain feeder gives (" +
                           significant(100 * rules.efficiency, 3) + " % of itself): pour cooler or insulate the feeder",
                       0};
    const double balance = share > 0 ? share * casting_m3 / (rules.efficiency - share) : 0;
    const double least = share > 0 ? rules.volume_ratio * share * casting_m3 : 0;
    f.by_demand = cylinder_of_volume(std::max(balance, least), rules.height_ratio);
    f.modulus_governs = f.by_modulus.volume_m3() >= f.by_demand.volume_m3();
    return f;
}

double sprue_speed_m_s(double height_m) {
    return std::sqrt(2 * earth_gravity_m_s2 * height_m);
}

double fill_time_s(double volume_m3, double height_m, double foot_area_m2) {
    return volume_m3 / (foot_area_m2 * sprue_speed_m_s(height_m));
}

} // namespace pourbook::casting
