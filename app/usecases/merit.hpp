// The merit of one metal: a formula over its properties, with the values that entered and its value in every sample.
#pragma once

#include "core/evaluate/evaluate.hpp"
#include "core/ranking/formula.hpp"
#include "core/uncertainty/draws.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct RankInput {
    std::string property;
    Evaluated value;
};

/// Values of the named properties, or what is missing and why.
struct Inputs {
    std::vector<RankInput> values;
    std::vector<std::string> missing; // property ids
    std::string reason;

    std::vector<double> nominal() const;
    bool from_memory() const;
};

Inputs look_up(const Catalogue& catalogue, const Metal& metal, const std::vector<std::string>& properties,
               const Conditions& conditions);

/// The formula in each sample. Every cause of uncertainty is drawn once and shared by all that name it; a value moves
/// by the exponential of its relative deviation, so it never changes sign and its median stays.
std::vector<double> sampled(const Formula& formula, const std::vector<RankInput>& inputs, Draws& draws);

/// Relative change of the formula for a relative change of each input, by central differences.
std::vector<double> sensitivities(const Formula& formula, const std::vector<RankInput>& inputs);

/// "formula 'x', column 3: what is wrong": a problem placed in the text it was found in.
Problem placed(const std::string& what, const std::string& text, Problem problem);

} // namespace pourbook
