#include "core/alloys/estimate.hpp"

#include "core/evaluate/evaluate.hpp"

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

Problem no_rule(const std::string& why) {
    return no_value("no rule: " + why);
}

Result<double> pure_value(const Catalogue& catalogue, const std::string& symbol, const char* property,
                          Estimate& estimate) {
    const Metal* metal = catalogue.element(symbol);
    if (!metal) return no_rule("pure " + symbol + " is not in the reference");
    const Result<Evaluated> value = evaluate(catalogue, *metal, property, {});
    if (!value) return value.problem();
    const SourceValue& s = value->sources.front();
    cite(estimate, {s.key, s.locator, s.how_known, s.through});
    return value->value_si;
}

} // namespace pourbook
