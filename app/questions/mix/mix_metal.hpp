// A mix used like any metal. Its name is its words: "mix:" and then stocks or a composition, what is dissolved besides,
// and a treatment where it is not as cast: "mix:1.2kg sterling-silver + 300g silver", "mix:Cu with P 0.02 annealed".
// The metal carries an estimate for each treatment, so that a condition asked for is answered where a rule reaches; its
// records are marked computed and name the rule and its error. What has no rule has no value, and says why.
#pragma once

#include "questions/mix/mix.hpp"

#include <string>
#include <vector>

namespace pourbook {

bool names_mix(const std::string& word);

/// The known metal nearest in composition, within 15 wt%; nullptr: none.
const Metal* nearest_kin(const Catalogue& catalogue, const Composition& composition);

/// Errors: unreadable, unknown, as in mix_words.hpp.
Result<MixRequest> mix_request_from(const Catalogue& catalogue, const std::string& words);

/// A copy of the catalogue with these mixes among its metals; other words are passed over. Each is named by its words;
/// family, for foundry practice and price forms: that of the known metal nearest in composition; magnetic behaviour
/// (rule of ours): ferromagnetic above 50 at% of iron, cobalt and nickel, weakly magnetic from 1 wt% of iron and
/// cobalt, else non-magnetic. Errors: as above and as mix().
Result<Catalogue> with_mixes(const Catalogue& catalogue, const std::vector<std::string>& words);

} // namespace pourbook
