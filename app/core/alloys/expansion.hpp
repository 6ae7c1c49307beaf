// Linear expansion of an alloy near 20 degC from its composition: the elements' own coefficients, weighted by volume
// (each element's mass over its density). That is the rule of mixtures of phases equally stiff; real phases and solid
// solutions lie about it, and how far is measured on the known alloys. Range: not with iron as the host (Invar,
// austenite and ferrite: the coefficient goes by magnetism and structure, not by content).
#pragma once

#include "core/alloys/estimate.hpp"

namespace pourbook {

/// Instantaneous coefficient at 20 degC, 1/K. Errors: no_value.
Result<Estimate> estimate_expansion(const AlloySetting& setting);

} // namespace pourbook
