// Words that several commands share: temperature, condition, units, and the exit code of a problem.
#pragma once

#include "core/evaluate/evaluate.hpp"
#include "usecases/shown.hpp"

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

Result<UnitSystem> units_from(const std::string& word);

} // namespace pourbook
