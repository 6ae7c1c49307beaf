// What a measured fall, resistance or weight says of a tube: its conductivity, which metals have it, which impurity in
// copper would explain it, and how porous it is.
#pragma once

#include "core/alloys/impurity.hpp"
#include "core/eddy/infer.hpp"
#include "questions/drop/magnet_words.hpp"

#include <cstdint>

namespace pourbook {

struct InferRequest {
    SetupWords setup; // the magnet's words may be empty where only a resistance is given
    std::vector<double> times_s;
    double time_reading_s = 0; // standard uncertainty of one timing; 0: assumed where there is a single one
    std::string resistance;    // "0.36mohm"
    std::string span;          // distance of the voltage taps
    std::string tube_mass;
    std::string reference_tube; // the same magnet through a tube of known conductivity (reference_tube.hpp)
    std::vector<double> reference_times_s;
    std::string reference_resistivity;     // "58MS/m", "58+-0.3MS/m"
    std::vector<std::string> likely;       // metals that it most likely is, by any of their names
    std::vector<std::string> on_the_shelf; // slugs of the person's own
    Conditions conditions; // temperature of the tube when it was measured; condition of the metals compared with
    std::size_t samples = 2000;
    std::uint64_t seed = 1;
};

struct ConsistentMetal {
    const Metal* metal = nullptr;
    double p = 0; // probability that the tube is this metal, see InferResult
    double conductivity_S_m = 0;
    double relative_uncertainty = 0;
    std::optional<double> porosity; // with the tube's mass: 1 - density / density of the metal
};

struct InferResult {
    DropSetup setup;
    Conditions conditions;
    eddy::Conductivity conductivity;
    std::optional<eddy::Conductivity> from_times, from_resistance;
    double agreement = no_number; // chance of the difference between the two
    double iacs_percent = 0, iacs_low90 = 0, iacs_high90 = 0;
    std::optional<double> density_kg_m3;
    /// Probabilities by Bayes' rule: how well the samples of conductivity (and density, with up to 30 % of pores) agree
    /// with each metal's, and by what is likely beforehand: a metal on the person's shelf twenty times, one that is
    /// named a hundred times as likely as another, one that is not cast at home a tenth (common practice, no source);
    /// one part in ten is for something else whose conductivity (and density) may be any. They sum to one with
    /// `something_else`; of 1 % and more, most likely first.
    std::vector<ConsistentMetal> consistent;
    double something_else = 1;
    std::optional<double> across_S_m;               // conductivity if it was a ball with its poles across the tube
    std::vector<ConsistentMetal> consistent_across; // and the metals then
    std::vector<ConsistentMetal> nearest;           // where none is consistent: the nearest below and above
    std::string impurity_base = "Cu";       // element in which impurities are looked for: of the likeliest metal
    std::vector<ImpurityEffect> impurities; // in it, each alone explaining it, the usual ones first
    std::string impurity_note;              // why there are none
    std::vector<std::string> advice;        // what to check
};

/// Errors: unreadable; refused (see core/eddy/infer.hpp); those of drop_setup.
Result<InferResult> infer(const Catalogue& catalogue, const InferRequest& request);

} // namespace pourbook
