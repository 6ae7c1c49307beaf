// Numbers as people read them: significant figures, never more than the uncertainty supports; locale-independent.
#pragma once

#include <string>
#include <vector>

namespace pourbook {

/// Plain decimal notation from 1e-4 to 1e6, else with an exponent. "no value" is never written here: NaN gives "nan".
std::string significant(double value, int figures);

/// Like significant, without trailing zeros: 293.15, 77, 1357.77.
std::string trimmed(double value, int figures);

/// Value rounded to the place of the uncertainty's second figure (at most `most` figures): (1.6784, 0.017) -> "1.678".
std::string rounded_to(double value, double uncertainty, int most = 5);

/// Words in a row: "a, b, c".
std::string joined(const std::vector<std::string>& words, const char* between = ", ");

} // namespace pourbook
