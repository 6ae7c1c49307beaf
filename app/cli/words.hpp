// Words that several commands share: temperature, condition, units, and the exit code of a problem.
#pragma once

#include "core/evaluate/evaluate.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

int exit_code(const Problem& problem);

struct ConditionWords {
    std::string at;        // "77K", "20degC"; empty: 293.15 K
    std::string condition; // "annealed", "T6"; empty: reference
    std::string rrr;
    std::string price_form; // exchange, retail or scrap; empty: exchange
};

/// Errors: unreadable, naming the argument.
Result<Conditions> conditions_from(const ConditionWords& words);

/// Cuts the upper end off a range "77K:300K" and gives it in kelvin; NaN where `at` is a single temperature or empty.
/// Errors: unreadable, also where the range doesn't rise.
Result<double> take_upper_end(std::string& at);

Result<UnitSystem> units_from(const std::string& word);

} // namespace pourbook
