// Does the casting want a feeder, how large, where, and what happens without one; from cited rules.
//
// A wall is fed from its heaviest place through liquid metal. A feeder serves the part within its feeding distance: a
// multiple of the thickness, of which the cold end of the wall gives the larger part (plates of steel in sand; Pellini,
// Bishop, AFS Transactions 1950 to 1955, from memory): printed always, for other metals a guide. Where the wall is
// thinner than a feeder can serve (modulus below the printed least, or more than four feeders along the part) no feeder
// is planned: gates, a taper, a hot mould, and the pores to expect.
// Size: modulus and demand (feeder.hpp). A sleeve or a hot top lengthens its time and doubles what it gives.
#pragma once

#include "core/casting/feeder.hpp"
#include "core/casting/freezing_plan.hpp"

#include <string>
#include <vector>

namespace pourbook::casting {

struct FeedingInputs {
    std::string process;
    double casting_m3 = 0; // with stock
    Solid heaviest;        // the piece that freezes last
    double pour_K = 0;
};

struct FeedingPlan {
    Result<Feeder> feeder = Problem{};  // plain; a Problem where none is planned
    Result<Feeder> sleeved = Problem{}; // the same in an insulating sleeve
    bool too_thin = false;              // no feeder can serve this wall
    std::size_t feeders = 1;            // of that size along the part
    Traced share; // contraction of the melt from pour to solid, fraction of the melt; NaN where not known
    double melt_contraction = 0, solidification = no_number;
    double thickness_m = 0;               // of the heaviest place
    double distance_m = no_number;        // a feeder reaches so far from its edge, end included
    double end_effect_m = no_number;      // of which the cold end gives this
    double gate_spacing_m = no_number;    // for a thin wall
    double hole_m3 = no_number;           // what is missing without a feeder
    double feeder_freezing_s = no_number; // by the same model as the casting
    std::vector<std::string> notes;
    std::vector<SourceValue> sources;
};

/// freezing: of the same casting; may be a Problem. Errors: no_value where liquidus or the density of the melt are
/// missing.
Result<FeedingPlan> feeding_plan(const Material& material, const FeedingInputs& inputs,
                                 const Result<FreezingPlan>& freezing);

} // namespace pourbook::casting
