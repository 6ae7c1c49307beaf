// One metal against a goal: left out by the goal, unrankable for want of a value, or judged with what entered.
//
// Over a range of temperatures the goal is taken at `range_steps` even temperatures, ends included, and the worst of
// them counts (in each sample too): what the metal can be relied on for anywhere in the range. A metal must be cited
// over the whole range.
#pragma once

#include "core/laws/plain_figures.hpp"
#include "questions/rank/goal_plan.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace pourbook {

constexpr int range_steps = 9;

struct LeftOut {
    const Metal* metal = nullptr;
    std::string reason;
    std::vector<std::string> missing; // unrankable only: property ids
};

struct Judged {
    const Metal* metal = nullptr;
    double at_K = no_number;            // over a range: where the merit is worst
    double merit = no_number;           // with nothing varied
    std::vector<double> values = {};    // that entered, in the merit's order
    bool from_memory = false;           // one of them is only remembered
    bool stale_price = false;           // one is a price past its period
    std::vector<RankInput> inputs = {}; // may be empty
};

/// The conditions at each temperature of a range; the one there is where `to_K` is NaN.
std::vector<Conditions> over_range(Conditions from, double to_K);

/// The merit in each sample, over a range the worst of each. `inputs`: of a range that is one temperature.
std::vector<double> samples_over(const Catalogue& catalogue, const GoalPlan& plan, const Metal& metal,
                                 const std::vector<RankInput>& inputs, const std::vector<Conditions>& range,
                                 Draws& draws);

class Judge {
public:
    /// `to_K`: the upper end of a range from the conditions' temperature, or NaN. `story`: inputs with trails and
    /// further sources; else they are for samples only, and empty where none are drawn.
    Judge(const Catalogue& catalogue, const GoalPlan& plan, const Conditions& conditions, double to_K,
          std::size_t samples, std::uint64_t seed, bool story);

    /// Empty where the metal is not ranked; it is then in one of the two lists.
    std::optional<Judged> judge(const Metal& metal);
    std::vector<LeftOut> excluded, unrankable;

    /// The merit in each sample; the same at each call. Inputs that are not there are looked up again.
    std::vector<double> samples(const Judged& judged);

private:
    std::optional<Judged> at(const Metal& metal, const Conditions& conditions);
    bool meets_conditions(const Metal& metal, const Conditions& conditions);
    std::optional<Judged> plainly(const Metal& metal);
    std::optional<Judged> weighed(Judged judged);
    std::vector<RankInput> inputs_again(const Metal& metal);

    const Catalogue& catalogue_;
    const GoalPlan& plan_;
    std::vector<Conditions> range_;
    std::optional<PlainFigures> plain_; // where nothing but the numbers is wanted
    std::vector<PlainFigure> figures_;  // of the metal last read
    Draws draws_;
};

} // namespace pourbook
