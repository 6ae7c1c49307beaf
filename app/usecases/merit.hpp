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
};

std::vector<double> nominal(const std::vector<RankInput>& inputs);
bool any_from_memory(const std::vector<RankInput>& inputs);

Inputs look_up(const Catalogue& catalogue, const Metal& metal, const std::vector<std::string>& properties,
               const Conditions& conditions);

/// What a goal counts of a metal: a formula over its properties.
class Merit {
public:
    Merit() = default;
    explicit Merit(Formula formula) : formula_(std::move(formula)) {}

    const Formula& formula() const { return formula_; }
    /// Ids of the properties that enter, each once; values and inputs below are in this order.
    const std::vector<std::string>& properties() const { return formula_.names(); }
    bool uses(const std::string& property) const;

    /// NaN where there is no finite number.
    double value(const std::vector<double>& values) const { return formula_.value(values); }
    /// In each sample, as value().
    std::vector<double> samples(const std::vector<RankInput>& inputs, Draws& draws) const;

private:
    Formula formula_;
};

/// Each value in each sample. Every cause of uncertainty is drawn once and shared by all that name it; a value moves by
/// the exponential of its deviation (log_spread), so it never changes sign and its median stays.
Columns drawn(const std::vector<RankInput>& inputs, Draws& draws);

/// Relative change of the merit for a relative change of each input, by central differences.
std::vector<double> sensitivities(const Merit& merit, const std::vector<RankInput>& inputs);

/// "formula 'x', column 3: what is wrong": a problem placed in the text it was found in.
Problem placed(const std::string& what, const std::string& text, Problem problem);

} // namespace pourbook
