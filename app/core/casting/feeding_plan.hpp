// Where a casting freezes last, how long that takes in its mould, and the feeder it needs, from cited mould data.
// Freezing in a thick mould: Chvorinov's rule (feeder.hpp), in sand multiplied by the cited correction; in a preheated
// shell: the thin-shell rule. No rule is offered for a permanent mould: its heat transfer depends on the coating.
#pragma once

#include "core/casting/feeder.hpp"
#include "core/casting/melt_data.hpp"
#include "core/casting/practice.hpp"

#include <string>
#include <vector>

namespace pourbook::casting {

struct FeedingInputs {
    std::string process;
    double casting_m3 = 0; // with stock
    double modulus_m = 0;  // of the section that freezes last
    double pour_K = 0;
    double mould_K = room_temperature_K;
    double shell_wall_m = no_number; // NaN: the middle of the printed thicknesses
};

struct FeedingPlan {
    Result<Feeder> feeder = Problem{};
    Traced share; // contraction of the melt from pour to solid, fraction of the melt; NaN where not known
    double melt_contraction = 0, solidification = no_number;
    std::string mould_kind;
    Result<Traced> freezing_s = Problem{}; // of the section that freezes last
    double constant_s_m2 = no_number;      // K of t = K M^2, thick moulds
    double shell_wall_m = no_number;
    std::vector<std::string> notes;
    std::vector<SourceValue> sources;
};

/// Errors: no_value where liquidus or the density of the melt are missing.
Result<FeedingPlan> feeding_plan(const Material& material, const FeedingInputs& inputs);

} // namespace pourbook::casting
