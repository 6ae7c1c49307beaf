// The merit of one metal: a formula over its properties, or a computation from them, with the values that entered and
// its value in every sample.
#pragma once

#include "core/evaluate/evaluate.hpp"
#include "core/ranking/formula.hpp"
#include "core/uncertainty/draws.hpp"
#include "questions/drop/fall_time.hpp"

#include <memory>
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
bool any_stale(const std::vector<RankInput>& inputs);

Inputs look_up(const Catalogue& catalogue, const Metal& metal, const std::vector<std::string>& properties,
               const Conditions& conditions);

/// What a goal counts of a metal: a formula over its properties, and over the fall where the formula names it.
class Merit {
public:
    Merit() = default;
    /// `fall` where the formula names fall_time.
    explicit Merit(Formula formula, std::shared_ptr<const FallTime> fall = nullptr);

    const Formula& formula() const { return formula_; }
    const std::shared_ptr<const FallTime>& fall() const { return fall_; }
    /// Ids of the properties that enter, each once; values and inputs are in this order everywhere.
    const std::vector<std::string>& properties() const { return properties_; }
    bool uses(const std::string& property) const;

    Inputs inputs(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions) const;
    /// One of them. Errors: those of evaluate().
    Result<Evaluated> input(const Catalogue& catalogue, const Metal& metal, const std::string& property,
                            const Conditions& conditions) const;
    /// Why physics forbids the computation for this metal; empty: it doesn't.
    std::string refusal(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions) const;

    /// Why the computation can't be made of these values; empty: it can.
    std::string fault(const std::vector<double>& values) const;

    /// NaN where there is no finite number.
    double value(const std::vector<double>& values) const;
    /// In each sample, as value().
    std::vector<double> samples(const std::vector<RankInput>& inputs, Draws& draws) const;
    /// Cross-section of the tube's wall, where there is a fall.
    double wall_area_m2(const std::vector<double>& values) const;

private:
    std::size_t slot_of(const std::string& property);

    Formula formula_;
    std::shared_ptr<const FallTime> fall_;
    std::vector<std::string> properties_;
    std::vector<std::size_t> names_;       // of each name in the formula: place in properties_; past the end: the fall
    std::vector<std::size_t> fall_inputs_; // of each of the fall's properties
};

/// Each value in each sample (core/evaluate/sampled); solidus and liquidus of one metal are drawn together.
Columns drawn(const std::vector<RankInput>& inputs, Draws& draws);

/// Relative change of the merit for a relative change of each input, by central differences.
std::vector<double> sensitivities(const Merit& merit, const std::vector<RankInput>& inputs);

/// "formula 'x', column 3: what is wrong": a problem placed in the text it was found in.
Problem placed(const std::string& what, const std::string& text, Problem problem);

} // namespace pourbook
