// Freezing time by modulus and the feeder that outlasts and supplies a casting.
//
// Chvorinov (Giesserei 27, 177, 1940): t = K (V/A)^2 in a mould that is thick against the depth the heat reaches
// (sand, plaster block). K from one-dimensional conduction into a semi-infinite mould whose face stays at the metal's
// melting temperature: K = (pi/4) (rho L' / (T_m - T_0))^2 / (k rho_m c_m), L' = heat of fusion and superheat. A check
// on the computed freezing time (freezing.hpp), which also knows a warm or thin mould.
// A feeder must freeze later than the casting and hold what the casting swallows: modulus 1.2 times that of the
// casting, 1.1 in its neck; faces that touch each other do not cool and are left out of both. Feed demand: efficiency x
// V_f = share (V_f + V_c), and V_f at least `volume_ratio` times the shrinkage of the casting.
#pragma once

#include "core/result.hpp"

namespace pourbook::casting {

constexpr double earth_gravity_m_s2 = 9.80665; // exact by convention (CGPM 1901)

struct MouldMaterial {
    double conductivity_W_m_K = 0, density_kg_m3 = 0, specific_heat_J_kg_K = 0;
    double temperature_K = 293.15; // at the pour
};

struct Freezing {
    double density_kg_m3 = 0; // of the metal as it freezes
    double heat_J_kg = 0;     // heat of fusion and superheat
    double temperature_K = 0; // at which it freezes
};

/// K of t = K M^2, s/m^2. The mould must be colder than the metal.
double chvorinov_constant_s_m2(const Freezing& metal, const MouldMaterial& mould);

/// Upright cylinder, all its surfaces cooling: V/A = D h / (4 h + 2), h = height / diameter.
struct Cylinder {
    double diameter_m = 0, height_m = 0;

    double volume_m3() const;
    double modulus_m() const;
};

Cylinder cylinder_of_modulus(double modulus_m, double height_ratio);
/// The same where a neck of this area covers part of the surface.
Cylinder cylinder_of_modulus_on_neck(double modulus_m, double height_ratio, double neck_m2);
Cylinder cylinder_of_volume(double volume_m3, double height_ratio);

struct FeedRules {
    double modulus_ratio = 1.2;
    double neck_ratio = 0;    // modulus of the neck over that of the casting; 0: the neck is not counted
    double sleeve_factor = 1; // a sleeve makes the feeder's modulus count for this much more
    double volume_ratio = 3;  // feeder volume over shrinkage volume, at least
    double efficiency = 0.14; // share of its own volume that a feeder gives
    double height_ratio = 1;
};

struct Feeder {
    Cylinder by_modulus, by_demand;
    double neck_m = 0;              // diameter of the neck; 0: not counted
    double shrinkage_volume_m3 = 0; // that the casting asks for
    bool modulus_governs = true;

    const Cylinder& chosen() const { return modulus_governs ? by_modulus : by_demand; }
};

/// Two contractions by volume, one after the other, as one: 1 - (1 - a)(1 - b).
double one_after_the_other(double first, double second);

/// share: contraction of the melt from pour to solid, as a fraction of the melt; modulus: of the heaviest section; the
/// neck is a short bar on it (modulus a quarter of its diameter), at most `neck_most_m` wide.
/// Errors: refused where the metal shrinks more than a plain cylinder of this efficiency can give.
Result<Feeder> feeder_for(double casting_m3, double modulus_m, double share, const FeedRules& rules,
                          double neck_most_m = 1e3);

/// Free fall down a sprue of this height: sqrt(2 g h), m/s; no friction.
double sprue_speed_m_s(double height_m);
/// Time to fill a volume through the sprue's foot.
double fill_time_s(double volume_m3, double height_m, double foot_area_m2);

} // namespace pourbook::casting
