// Freezing time by modulus and the feeder that outlasts and supplies a casting.
//
// Chvorinov (Giesserei 27, 177, 1940): t = K (V/A)^2 in a mould that is thick against the depth the heat reaches
// (sand, plaster block). K from one-dimensional conduction into a semi-infinite mould whose face stays at the metal's
// melting temperature: K = (pi/4) (rho L' / (T_m - T_0))^2 / (k rho_m c_m), L' = heat of fusion and superheat. Good to
// a factor of two. A thin preheated shell is no such mould: it is soon as hot as the metal and loses heat from its
// outside, t = rho L' M / (h (T_m - T_ambient)), h = 1/(wall/k + 1/h_surface).
// A feeder must freeze later than the casting and hold what the casting swallows. The usual modulus ratio of 1.2 is a
// time ratio of 1.44; where time is proportional to M itself (shell) the modulus ratio for the same time ratio is 1.44.
// Feed demand: efficiency x V_f = share (V_f + V_c), and V_f at least `volume_ratio` times the shrinkage of the
// casting.
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

struct ThinShell {
    double wall_m = 0, conductivity_W_m_K = 0, surface_W_m2_K = 0;
};

/// t = (returned) x M, s/m.
double shell_time_s_per_m(const Freezing& metal, const ThinShell& shell, double ambient_K);

/// Upright cylinder, all its surfaces cooling: V/A = D h / (4 h + 2), h = height / diameter.
struct Cylinder {
    double diameter_m = 0, height_m = 0;

    double volume_m3() const;
    double modulus_m() const;
};

Cylinder cylinder_of_modulus(double modulus_m, double height_ratio);
Cylinder cylinder_of_volume(double volume_m3, double height_ratio);

struct FeedRules {
    double time_ratio = 1.44; // feeder's freezing time over the casting's
    double time_power = 2;    // freezing time grows with this power of the modulus
    double volume_ratio = 3;  // feeder volume over shrinkage volume, at least
    double efficiency = 0.14; // share of its own volume that a feeder gives
    double height_ratio = 1;
};

struct Feeder {
    Cylinder by_modulus, by_demand;
    double shrinkage_volume_m3 = 0; // that the casting asks for
    bool modulus_governs = true;

    const Cylinder& chosen() const { return modulus_governs ? by_modulus : by_demand; }
};

/// Two contractions by volume, one after the other, as one: 1 - (1 - a)(1 - b).
double one_after_the_other(double first, double second);

/// share: contraction of the melt from pour to solid, as a fraction of the melt; modulus: of the heaviest section.
/// Errors: refused where the metal shrinks more than a plain cylinder of this efficiency can give.
Result<Feeder> feeder_for(double casting_m3, double modulus_m, double share, const FeedRules& rules);

/// Free fall down a sprue of this height: sqrt(2 g h), m/s; no friction.
double sprue_speed_m_s(double height_m);
/// Time to fill a volume through the sprue's foot.
double fill_time_s(double volume_m3, double height_m, double foot_area_m2);

} // namespace pourbook::casting
