// The way the metal takes: pouring time, choke, sprue, gates, vents.
//
// Choke by Bernoulli with a discharge coefficient: A = V / (t C sqrt(2 g H)); filling from below the effective head is
// H - h/2 for a casting h high (from H - P^2/(2 C) with the whole casting above the gate). A sprue narrows downward as
// A_top = A_foot sqrt(H / depth of the cup), or it sucks air. Speed at the gates: 0.5 m/s, above which a surface of
// metal folds oxide in. Pouring time: the common empirical rules (pounds, inches, seconds), for copper alloys
// t = sqrt(W) (0.95 + s/0.853), for light metals t = sqrt(W)/b, b 1.48, 1.25, 0.70 up to 6, up to 12, above 12 mm
// (course text, see sources of the plan); but at most a third of the time in which the thinnest wall freezes. Tin,
// zinc, lead, silver, gold go by the rule for copper.
//
// Metal in the gating: the sprue as it narrows, a conical cup twice as wide as the sprue's top and as deep as printed,
// a runner as wide as the choke along the gates and gates 10 mm long (proportions: common practice, no source).
#pragma once

#include "core/casting/practice.hpp"

#include <string>
#include <vector>

namespace pourbook::casting {

/// Effective head of a casting filled from its foot, m; the sprue must stand higher than the casting.
double bottom_head_m(double sprue_m, double casting_height_m);
double choke_area_m2(double volume_m3, double time_s, double head_m, double discharge);
/// Area that keeps the stream full further up: A_foot sqrt(h_foot / h) at the depth h below the level in the cup.
double sprue_area_m2(double foot_area_m2, double foot_depth_m, double depth_m);
double pouring_time_s(double mass_kg, double wall_m, bool light_metal);

struct GatingInputs {
    double cavity_m3 = 0; // casting and feeders, hot: what passes the choke
    double cavity_kg = 0;
    double thinnest_m = 0;
    double height_m = 0;               // of the casting as drawn
    double thinnest_s = no_number;     // in which the thinnest wall freezes; NaN: not known
    double gate_spacing_m = no_number; // for a wall no feeder serves
    double longest_m = 0;              // along which the gates stand
    bool light_metal = false;
    double sprue_m = no_number; // stated height
    double foot_m = no_number;  // stated diameter of its foot
    double surface_tension_N_m = no_number, density_kg_m3 = 0;
};

struct GatingPlan {
    double rule_s = no_number;      // by the empirical rule
    double most_s = no_number;      // a third of the freezing time
    double fill_s = no_number;      // planned, or with the stated sprue
    double head_m = 0;              // height of the sprue, stated or the least
    double least_head_m = 0;        // above the highest place of the casting
    double capillary_m = no_number; // head that surface tension takes in the thinnest wall
    double choke_m2 = no_number, foot_m = no_number, top_m = no_number; // diameters of a round sprue
    double foot_speed_m_s = no_number;
    double gate_speed_m_s = no_number;
    double gates_m2 = no_number, vents_m2 = no_number;
    double metal_m3 = no_number; // in cup, sprue, runner and gates
    std::size_t gates = 1;
    bool stated = false;
    std::vector<std::string> warnings;
    std::vector<SourceValue> sources;
};

GatingPlan gating_plan(const Catalogue& catalogue, const Metal& metal, const std::string& process,
                       const GatingInputs& inputs);

} // namespace pourbook::casting
