// What a trial shows: of drops and a four-wire resistance the conductivity, %IACS and the predicted time beside the
// measured one; of a weighed piece its density, its porosity and, with its pattern, the contraction it achieved beside
// the predicted one.
//
// Density by weighing in air and in water (core/workshop/weighing), a mass known to half the last digit written; else
// mass / volume of the measured shape, each size known to 0.1 mm either way and the mass to 0.5 % (workshop measuring,
// common practice, no source). On a 3 mm wall that alone is some per cent of porosity, and is said. Porosity = 1 -
// density / density of the sound metal. Contraction = pattern / part - 1, per size. A drop is predicted for a casting
// of the metal as the state of its kind has it, without what the trials taught, or in the condition the trial names.
#pragma once

#include "core/workshop/data.hpp"
#include "questions/drop/drop.hpp"
#include "questions/drop/infer.hpp"

#include <optional>

namespace pourbook {

struct AchievedContraction {
    std::string size; // "bore", "length"
    double achieved = no_number;
    double uncertainty = 0; // standard, of the two measured sizes
    bool bore = false;
};

struct Weighed {
    double mass_kg = 0, volume_m3 = 0;
    double density_kg_m3 = 0, density_uncertainty = 0; // by water where it was weighed in it, else by size
    bool in_water = false;
    double by_size_kg_m3 = no_number, by_size_uncertainty = 0; // beside the water's
    std::optional<Evaluated> expected_density;                 // of the metal
    std::optional<double> porosity;
    double porosity_uncertainty = 0; // standard
    std::vector<AchievedContraction> contraction;
    std::optional<double> predicted_contraction; // free, of the metal
    std::optional<double> yield;                 // casting over charge
};

struct TrialResult {
    Trial trial;
    std::optional<InferResult> inferred;
    std::optional<DropResult> predicted; // for the metal it is said to be
    double measured_time_s = no_number;  // mean of the drops
    std::optional<Weighed> weighed;
    std::vector<std::string> remarks; // what could not be worked out, and why
};

/// What a drop or a resistance says of the conductivity, alone. Errors: those of infer().
Result<InferResult> inferred_from(const Catalogue& catalogue, const Trial& trial, std::size_t samples);

/// Density, pores, contraction and yield of a weighing or casting. Errors: unreadable, refused.
Result<Weighed> weighed_from(const Catalogue& catalogue, const Trial& trial, std::vector<std::string>& remarks);

/// Errors: those of infer(), or of the weighing; what only lacks a metal or a value is a remark.
Result<TrialResult> show_trial(const Catalogue& catalogue, const Trial& trial, std::size_t samples = 400);

/// Under which its metal is compared with others: as a casting, unless it names another condition.
Conditions conditions_of(const Trial& trial);

/// Magnet and tube of a trial, as `drop` takes them.
SetupWords setup_of(const Trial& trial);

/// The times of a trial, those counted in frames as well.
std::vector<double> times_of(const Trial& trial);

} // namespace pourbook
