#include "core/alloys/estimate.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

constexpr std::array names = {"as-cast", "annealed", "quenched", "aged"};

} // namespace

const char* name_of(Treatment treatment) {
    return names[static_cast<std::size_t>(treatment)];
}

std::optional<Treatment> treatment_named(const std::string& name) {
    const auto it = std::find(names.begin(), names.end(), name);
    if (it == names.end()) return std::nullopt;
    return static_cast<Treatment>(it - names.begin());
}

void cite(Estimate& estimate, const Citation& citation) {
    const bool known = std::any_of(estimate.sources.begin(), estimate.sources.end(), [&](const Citation& c) {
        return c.source == citation.source && c.locator == citation.locator;
    });
    if (!known) estimate.sources.push_back(citation);
}

} // namespace pourbook
