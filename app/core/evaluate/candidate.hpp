// What one record has to say about a property at a temperature, and which of several sayings answers.
//
// A single printed point serves 10 K around its temperature, below 200 K a twentieth of it (typical changes with
// temperature, our estimate, are added to the uncertainty as they grow with the distance).
//
// Which answers (first difference decides): stated condition matches before another condition; covers the temperature
// before a point carried there by a temperature coefficient; the metal's own grade before a near grade; marked
// preferred, unless interpolated between unlike points more than 60 K apart, neither of them near and their neighbours
// leaving doubt; read before remembered; finer print (half the last digit) before coarser, in classes a factor of three
// apart from 1 % up; printed there, or between close points, before far from its points or without a temperature in the
// source; condition stated before unstated (alloys); kind of source (standard and evaluated review before handbook
// before single paper before data sheet ...); reliability of the source; more points; file order.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <optional>
#include <string>
#include <vector>

namespace pourbook {

enum class Cover {
    direct,  // the record covers the temperature itself
    near,    // a single point, used within its reach
    carried, // a resistivity point carried by a temperature coefficient
    mean     // a mean expansion standing in for the coefficient at 20 degC
};

enum class ConditionFit { same, unstated, other };

/// A saying in figures only; its sentences are made by printed_in and how_in.
struct Candidate {
    const Record* record = nullptr;
    double value_si = no_number;
    double recorded_si = no_number; // the same in the record's own kind (a conductivity where a resistivity is asked)
    double doubt_si = 0;            // standard: interpolation, rounding, carrying
    double half_digit_si = 0;       // of the print, in the value's kind
    double away_K = 0;              // distance from the point used
    double gap_K = 0;               // between the points interpolated, 0: printed there
    double to_point_K = 0;          // from the nearer of them
    Cover cover = Cover::direct;
    ConditionFit fit = ConditionFit::same;
    const Point* first = nullptr;  // the point used, or the lower of two; null: an equation
    const Point* second = nullptr; // the upper of two
    const Record* coefficient = nullptr;
    const char* relation = nullptr; // how the record's kind became the wanted one
};

struct Question {
    const Catalogue& catalogue;
    const Metal& metal;
    const Property& property;
    Phase phase = Phase::any;
    double temperature_K = room_temperature_K;
    const Conditions& conditions;
};

/// A printed point answers this far from its temperature as it stands: the size of differences between scales.
constexpr double scale_slack_K = 0.6;

/// The phase in which a property of solid metal is asked for.
Phase phase_of_solid(const Property& property);

/// The ids under which records answer a property.
std::vector<std::string> recorded_kinds(const Property& property);

/// Between which temperatures cited coefficients carry the metal's resistivity.
std::vector<double> coefficient_ends_K(const Metal& metal);

/// Every usable record's answer, best first.
std::vector<Candidate> candidates(const Question& question);

/// The saying of the only record that speaks of the property; empty where there is none or another speaks too.
std::optional<Candidate> lone_candidate(const Question& question);

/// The figure as printed, or the points used; and a sentence for the trail.
std::string printed_in(const Candidate& candidate);
std::string how_in(const Candidate& candidate);

/// Class of the print's fineness that choosing goes by: 0 up to 1 % of the value, then a step for each factor of
/// three.
int coarseness(const Candidate& candidate);

/// Place of a kind of source in the order: 0 for a standard.
int rank_of_kind(const Reference* reference);

/// The records that speak of the property in this phase at all, whatever their temperature (for "cited range").
std::vector<const Record*> speaking_records(const Question& question);

/// Temperatures at which they print something, 20 degC for a figure without one; ends of equations too.
std::vector<double> printed_temperatures(const Question& question);

} // namespace pourbook
