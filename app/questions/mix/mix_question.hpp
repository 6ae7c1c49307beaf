// The fields of a mix: stocks or a composition, what was done to it, what is asked of it.
#pragma once

#include "questions/fields.hpp"
#include "questions/mix/mix.hpp"

namespace pourbook {

/// As stated; mix_request_from() reads the words against the catalogue.
struct MixAsked {
    std::string blend, composition, treatment = "as-cast", target, with;
    bool atomic = false;
    std::optional<double> melt_loss, phases_at_K, measured_resistivity_ohm_m;
    std::vector<std::string> impurities;
};
const QuestionOf<MixAsked>& mix_question();

/// Errors: unreadable, naming the field; unknown metals and elements.
Result<MixRequest> mix_request_from(const Stated& stated, const Catalogue& catalogue);

} // namespace pourbook
