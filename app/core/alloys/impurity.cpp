#include "core/alloys/impurity.hpp"

#include "core/alloys/diagram.hpp"
#include "core/evaluate/evaluate.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr double any_solid_K = 1e5;

Result<Evaluated> pure_resistivity(const Catalogue& catalogue, const std::string& host) {
    const Metal* metal = catalogue.element(host);
    if (!metal) return Problem{Problem::Kind::unknown, "pure " + host + " is not in the reference", 0};
    return evaluate(catalogue, *metal, "resistivity", {});
}

double most_dissolved(const Catalogue& catalogue, const std::string& host, const std::string& impurity) {
    const Diagram* d = catalogue.alloys.diagram(host, impurity);
    const auto s = d ? solubility(*d, host, any_solid_K) : std::nullopt;
    return s ? s->wt : no_number;
}

Problem too_much() {
    return Problem{Problem::Kind::out_of_range,
                   "an impurity adds at most 1.5 uohm.cm under this rule: give it as part of the composition", 0};
}

} // namespace

Result<ImpurityEffect> effect_of_impurity(const Catalogue& catalogue, const std::string& host,
                                          const std::string& impurity, double content_wt) {
    const Result<Evaluated> pure = pure_resistivity(catalogue, host);
    if (!pure) return pure.problem();
    const Result<Estimate> k = increment_per_wt(catalogue, host, impurity);
    if (!k) return k.problem();
    if (!(content_wt >= 0)) return Problem{Problem::Kind::unreadable, "an impurity content can't be negative", 0};
    if (k->value_si * content_wt > most_dilute_si) return too_much();
    ImpurityEffect out;
    out.element = impurity;
    out.per_wt = *k;
    out.content_wt = content_wt;
    out.resistivity_si = pure->value_si + k->value_si * content_wt;
    out.most_wt = most_dissolved(catalogue, host, impurity);
    return out;
}

Result<std::vector<ImpurityEffect>> equivalent_impurities(const Catalogue& catalogue, const std::string& host,
                                                          double measured_si) {
    const Result<Evaluated> pure = pure_resistivity(catalogue, host);
    if (!pure) return pure.problem();
    const double added = measured_si - pure->value_si;
    if (added <= pure->standard_uncertainty_si)
        return Problem{Problem::Kind::refused,
                       "the measured metal conducts as well as pure " + host +
                           " within its uncertainty: no impurity is "
                           "needed to explain it",
                       0};
    if (added > most_dilute_si) return too_much();
    std::vector<ImpurityEffect> all;
    for (const SoluteEffect& e : catalogue.alloys.effects) {
        const bool listed =
            std::any_of(all.begin(), all.end(), [&](const ImpurityEffect& i) { return i.element == e.solute; });
        if (e.host != host || !e.dissolved || listed) continue;
        const Result<Estimate> k = increment_per_wt(catalogue, host, e.solute);
        if (!k) continue;
        ImpurityEffect one;
        one.element = e.solute;
        one.per_wt = *k;
        one.resistivity_si = measured_si;
        one.content_wt = added / k->value_si;
        one.low90_wt = added / k->high90_si;
        one.high90_wt = added / k->low90_si;
        one.most_wt = most_dissolved(catalogue, host, e.solute);
        all.push_back(std::move(one));
    }
    if (all.empty())
        return Problem{Problem::Kind::no_value, "no rule: no coefficients are stored for impurities in " + host, 0};
    std::sort(all.begin(), all.end(),
              [](const ImpurityEffect& x, const ImpurityEffect& y) { return x.content_wt < y.content_wt; });
    return all;
}

} // namespace pourbook
