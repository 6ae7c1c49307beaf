// Which inputs make the better of two metals the better one, and which count against it.
#pragma once

#include "questions/rank/merit.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// Properties, the weightiest first. Solidus and liquidus together are one part, under the name of the liquidus.
struct Deciding {
    std::vector<std::string> helps;   // one, or two where the second weighs at least half as much
    std::vector<std::string> hinders; // those that weigh at least a tenth of the first that helps
};

/// A part helps where the merit gains both when the worse metal takes over the better one's figure and when the better
/// one gives up its own. Weighed by the mean change of log(merit), of the merit where one is not positive.
Deciding deciding_inputs(const Merit& merit, bool best_high, const std::vector<RankInput>& better,
                         const std::vector<RankInput>& worse);

/// Whether solidus and liquidus both enter, and so are one part.
bool has_melting_range(const std::vector<RankInput>& inputs);

} // namespace pourbook
