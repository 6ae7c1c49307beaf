// How long a section takes to freeze in its mould: heat conduction in one dimension, enthalpy method.
//
// The section is a layer of metal between its middle (or a core that fills its bore) and a mould wall that loses heat
// from its outside. Conservation of heat on cells, d(H)/dt = -div(q), with H the enthalpy by volume; temperature
// follows from H, so the heat of fusion is kept exactly (enthalpy method; Voller and Cross, Int. J. Heat Mass Transfer
// 24, 1981, 545). Backward Euler steps, Newton's method on H, one tridiagonal system an iteration; steps grow with
// time, so a case takes a few milliseconds.
//   Shape: the area through which heat flows grows as radius^spread: 0 slab, 1 cylinder, 2 sphere. A compact body of
//   half thickness R and modulus M = V/A is taken with spread R/M - 1 (exact for slab, long cylinder, sphere). A mould
//   about it has the area (1 + edges w/R)^spread of the metal's surface at the depth w: edges 1 for sphere and long
//   cylinder. A sharp edge draws less heat than a round one of the same shell: per unit of its length 0.597 k dT beyond
//   what its faces draw (heat content of a 270 degree corner, 4 int_0^inf sinh((pi - a)x) / (sinh(pi x) cosh(a x)) dx,
//   a = 3 pi/2; van den Berg and Srisatkunarajah, Probab. Theory Relat. Fields 86, 1990, from memory, worked out here),
//   hence edges 0.597 for cube and square bar. Against three dimensions a cube is within a tenth.
// Assumed: mould filled at once at the pouring temperature; heat of fusion spread evenly from liquidus to solidus;
// metal and mould touch perfectly unless a contact transfer is given; properties constant in each phase; no flow;
// frozen when the last place is below its solidus. Outside: grey radiation and a constant convective transfer into
// still air. Range: any positive property; mould colder than the solidus. Accuracy against Neumann's solution better
// than 1 %.
#pragma once

#include "core/result.hpp"

#include <limits>
#include <vector>

namespace pourbook::casting {

struct MetalHeat {
    double density_kg_m3 = 0; // one figure: the mass stays while it freezes
    double solid_J_kg_K = 0, melt_J_kg_K = 0, fusion_J_kg = 0;
    double solid_W_m_K = 0, melt_W_m_K = 0;
    double solidus_K = 0, liquidus_K = 0;
};

struct MouldHeat {
    double conductivity_W_m_K = 0, density_kg_m3 = 0, specific_heat_J_kg_K = 0;
};

struct Outside {
    double air_K = 293.15;
    double emissivity = 0;
    double convection_W_m2_K = 0;
};

struct FrozenSection {
    double half_m = 0; // half the thickness of the metal
    double spread = 0; // 0 slab, 1 cylinder, 2 sphere; anything between
    double edges = 1;  // growth of the mould's outside against that of a round body
    double core_m = 0; // radius of the bore, which a core fills; 0: none. Then spread and edges are 1.
    double core_wall_m = std::numeric_limits<double>::infinity(); // of a hollow core (a shell); else it is full
};

struct FreezingCase {
    FrozenSection section;
    MetalHeat metal;
    MouldHeat mould;
    Outside outside;
    double pour_K = 0, mould_K = 0;
    double wall_m = 0;
    double contact_W_m2_K = std::numeric_limits<double>::infinity();
    double cool_to_K = 0; // go on until the metal is everywhere below this; 0: stop when it is solid
};

/// How finely it is reckoned.
struct FreezingGrid {
    int metal_cells = 24, mould_cells = 40;
    double step_share = 0.02; // of the time passed
};

struct FrozenAt {
    double radius_m = 0; // middle of the cell, from the centre
    double seconds = 0;  // when it fell below the solidus
};

struct FreezingCourse {
    double freezing_s = 0;       // until the last place is solid
    double superheat_gone_s = 0; // until the last place is below the liquidus
    double last_radius_m = 0;    // where it froze last
    double cooled_s = 0;         // until the metal was below cool_to_K; nought where none was asked
    std::vector<FrozenAt> cells; // of the metal, from the inside
    double heat_error = 0;       // heat missing from the balance over the heat that left the metal
};

/// Errors: refused (the mould or the air is too hot for the metal to freeze, a property is not positive).
Result<FreezingCourse> freezing_course(const FreezingCase& what, const FreezingGrid& grid = {});

/// An empty hot mould carried from the kiln: its mean temperature after each of the times (rising, s), by the same
/// model; the hollow inside sees only itself and loses nothing.
Result<std::vector<double>> empty_mould_K(const MouldHeat& mould, double wall_m, double kiln_K, const Outside& outside,
                                          const std::vector<double>& times_s);

} // namespace pourbook::casting
