// A casting plan within what the person's own workshop can do, as its profile says.
#pragma once

#include "core/workshop/data.hpp"
#include "questions/pour/pour.hpp"

namespace pourbook {

/// What the request leaves open is taken from the profile: furnace, power, what one person lifts, the mould of the
/// process. Of the crucibles the smallest that takes the metal and the charge is used and named in the remarks; what is
/// stated in the request comes first. Errors: those of pour(); refused by every crucible: the reason of the largest.
Result<PourResult> pour_in_workshop(const Catalogue& catalogue, PourRequest request, const WorkshopData& own);

/// The plan that a limit refused, as if the workshop had none: power, lots and own contractions stay its own. It says
/// nothing of limits.
Result<PourResult> pour_beyond_limits(const Catalogue& catalogue, PourRequest request, const WorkshopData& own);

/// The limits within which that plan is asked for; of several crucibles the largest.
casting::Workshop limits_in_workshop(PourRequest request, const WorkshopData& own);

} // namespace pourbook
