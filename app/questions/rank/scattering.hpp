// Why one metal carries charge and heat better than another, as far as the data carries the reason.
#pragma once

#include "questions/rank/merit.hpp"

#include <string>

namespace pourbook {

bool carried_by_electrons(const std::string& property);

/// "the 0.02 % phosphorus in X scatters its electrons ..." (Matthiessen, Linde): said only of additions with a cited
/// increment of resistivity in that base that dissolve in it, and only where the base itself is not the reason.
/// Of two pure metals: that it is their nature. Empty where neither holds.
std::string why_it_conducts(const Catalogue& catalogue, const Metal& better, const Metal& worse,
                            const Conditions& conditions, bool over_range);

} // namespace pourbook
