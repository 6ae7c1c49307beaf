// Which cause of uncertainty weighs most in the ratio of two merits.
#pragma once

#include "questions/rank/merit.hpp"

#include <map>
#include <string>
#include <vector>

namespace pourbook {

/// Relative variance of the ratio a/b by cause, to first order; causes shared by both cancel as far as they act alike.
std::map<std::string, double> ratio_variance(const Merit& merit, const std::vector<RankInput>& a,
                                             const std::vector<RankInput>& b);

/// "the resistivity of sterling silver": the plain name of a cause.
std::string plain_cause(const Catalogue& catalogue, const std::string& cause);

} // namespace pourbook
