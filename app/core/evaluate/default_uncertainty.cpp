#include "core/evaluate/default_uncertainty.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace pourbook {
namespace {

constexpr double remembered_factor = 2.5, unknown_factor = 1.5;

struct KindFactor {
    std::string_view kind;
    double factor;
};

constexpr std::array kind_factors = {KindFactor{"standard", 0.25},
                                     KindFactor{"evaluated review", 0.25},
                                     KindFactor{"agency", 0.5},
                                     KindFactor{"handbook", 0.5},
                                     KindFactor{"paper", 0.5},
                                     KindFactor{"compilation", 0.75},
                                     KindFactor{"textbook", 0.75},
                                     KindFactor{"data sheet", 1.5},
                                     KindFactor{"general text", 1.5},
                                     KindFactor{"trade practice", 1.5},
                                     KindFactor{"memory", remembered_factor}};

} // namespace

double source_factor(const Reference* reference, HowKnown how_known) {
    if (how_known == HowKnown::memory || how_known == HowKnown::common_practice) return remembered_factor;
    if (!reference) return unknown_factor;
    const auto at = std::find_if(kind_factors.begin(), kind_factors.end(),
                                 [&](const KindFactor& k) { return reference->kind == k.kind; });
    return at == kind_factors.end() ? unknown_factor : at->factor;
}

} // namespace pourbook
