// A share or a chance as people read it, the same everywhere.
#pragma once

#include "core/quantity/format.hpp"

#include <cmath>
#include <string>

namespace pourbook {

/// Of samples: "3.5 %", "0 %", "100 %"; empty for NaN: not worked out.
inline std::string share_text(double share) {
    return std::isnan(share) ? "" : trimmed(100 * share, 2) + " %";
}

/// A chance that is never quite certain: "97 %", "99.6 %", "above 99.9 %".
inline std::string chance_text(double chance) {
    return chance > 0.999 ? "above 99.9 %" : trimmed(100 * chance, chance > 0.99 ? 3 : 2) + " %";
}

} // namespace pourbook
