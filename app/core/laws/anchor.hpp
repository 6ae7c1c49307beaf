// The cited figure that a law carries from, and the answers made of it.
#pragma once

#include "core/alloys/estimate.hpp"
#include "core/evaluate/candidate.hpp"

#include <optional>
#include <string>

namespace pourbook {

struct Anchor {
    double temperature_K = no_number;
    Evaluated value;

    double relative() const { return value.standard_uncertainty_si / std::abs(value.value_si); }
};

/// The cited answer of the question's property and phase nearest to its temperature (by ratio), in the asked condition
/// where there is one.
std::optional<Anchor> nearest_anchor(const Question& question);

/// The anchor's answer taken to the question's temperature. `law_relative`: the law's own standard uncertainty there.
Evaluated carried_from(const Anchor& anchor, const Question& question, double value_si, double law_relative,
                       const std::string& law);

/// An answer worked out from others. `relative`: its standard uncertainty.
Evaluated worked_out(const Question& question, Basis basis, double value_si, double relative, const std::string& law,
                     std::vector<SourceValue> sources);

/// An estimate from composition as an answer.
Evaluated estimated_from(const Question& question, const Estimate& estimate, const std::string& law);

/// The composition of a metal. Errors: no_value.
Result<Composition> composition_of_metal(const Catalogue& catalogue, const Metal& metal);

/// The treatment that a condition stands for.
Treatment treatment_of(const Metal& metal, const Conditions& conditions);

/// A property of a metal at a temperature under no other conditions, laws included.
Result<Evaluated> value_at(const Catalogue& catalogue, const Metal& metal, const std::string& property,
                           double temperature_K);

/// The same as a number alone.
Result<double> number_at(const Catalogue& catalogue, const Metal& metal, const std::string& property,
                         double temperature_K);

Problem no_law(const std::string& why);

} // namespace pourbook
