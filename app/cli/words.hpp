// Words that all commands share: units, and the exit code of a problem.
#pragma once

#include "core/result.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

int exit_code(const Problem& problem);

Result<UnitSystem> units_from(const std::string& word);

} // namespace pourbook
