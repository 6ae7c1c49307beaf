// The steps of a casting plan, in the order in which each needs the one before; for pour.hpp alone.
#pragma once

#include "questions/pour/pour.hpp"

namespace pourbook {

/// request: numbers already checked. Errors: as pour().
Result<PourResult> planned_pour(const Catalogue& catalogue, const Metal& metal, const PourRequest& request);

} // namespace pourbook
