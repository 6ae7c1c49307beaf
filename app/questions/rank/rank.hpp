// Which metals serve a goal best, what is left out and why, and what can't be ranked for want of a value.
#pragma once

#include "core/progress.hpp"
#include "core/ranking/order.hpp"
#include "questions/rank/judge.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace pourbook {

struct RankRequest {
    GoalWords goal;
    std::vector<std::string> from; // slugs or names; empty: all metals
    Conditions conditions;
    std::optional<double> to_K =
        {};                     // upper end of a range of temperatures that begins at the conditions' (see judge.hpp)
    std::size_t top = 0;        // 0: all
    std::size_t samples = 2000; // 0: the order of the figures as cited, without intervals and chances
    std::uint64_t seed = 1;
    bool operator==(const RankRequest&) const = default;
};

/// Of a goal with a fall: the tube of this metal. Mass and cost NaN where density or price is not known.
struct RankedTube {
    double wall_m = no_number, mass_kg = no_number, cost_usd = no_number;
};

struct RankedMetal {
    const Metal* metal = nullptr;
    Place place;
    std::vector<RankInput> inputs; // the values that entered, of the first ones; of the others see RankResult::input
    bool from_memory = false;      // a value that entered is only remembered
    bool stale_price = false;      // a price past its period entered
    double at_K = no_number;       // the temperature of the values
    std::optional<RankedTube> tube;
};

/// Which better figure would settle the order of the first two, where the data can't tell them apart.
struct Settling {
    std::string cause;    // "sterling-silver.resistivity", "price.copper"
    double share = 0;     // of the variance of the ratio of the two
    std::string sentence; // empty: the first is told apart from the second
};

struct RankResult {
    std::string goal, label, sentence, formula, unit;
    bool best_high = true;
    Holding holding = Holding::size;
    Conditions conditions;
    double to_K = no_number;
    std::size_t samples = 0;
    std::shared_ptr<const FallTime> fall; // null: the goal names none
    std::vector<RankedMetal> ranked;
    std::size_t ranked_in_all = 0; // before `top` cut the list
    std::vector<LeftOut> excluded;
    std::vector<LeftOut> unrankable;
    Settling settling;
    std::string flip_sentence; // of castings: what would turn the order of the first two (flips.hpp); empty: nothing
    std::string price_years;   // a sentence, where prices of several years enter (price_years.hpp); else empty
    /// Where the goal uses a price: the first ten of the ranked metals at exchange, retail and scrap prices.
    std::vector<std::pair<std::string, std::vector<std::string>>> order_by_price_form;

    /// A value that entered, looked up where it was not kept. Empty: none such entered.
    std::optional<Evaluated> input(const RankedMetal& of, const std::string& property) const;
    const Catalogue* catalogue = nullptr; // the ranked metals'
    Merit merit;
};

/// Metals found by words (see search_metals) that meet every condition; a metal without the needed value does not meet
/// it. Errors: unreadable (condition, with column).
Result<std::vector<const Metal*>> list_metals(const Catalogue& catalogue, const std::string& find,
                                              const std::vector<std::string>& where, const Conditions& conditions);

/// Errors: unreadable (formula, condition or goal, with column), unknown (metal), refused (stopped by the progress).
Result<RankResult> rank(const Catalogue& catalogue, const RankRequest& request, const Progress& progress = {});

} // namespace pourbook
