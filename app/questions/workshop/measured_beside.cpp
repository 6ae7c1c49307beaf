#include "questions/workshop/measured_beside.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double iacs_percent_S_m = iacs_S_m / 100;
constexpr std::size_t most_likely = 4;

std::string figure(double iacs) {
    return significant(iacs, 3);
}

std::string names_of(const std::vector<const BesideMetal*>& metals) {
    std::string out;
    for (std::size_t i = 0; i < metals.size(); ++i)
        out += (i == 0 ? "" : i + 1 == metals.size() ? " and " : ", ") + metals[i]->metal->name;
    return out;
}

/// Those that agree: owned ones if there are any, else all.
std::string sentence_of(const MeasuredBeside& beside) {
    std::vector<const BesideMetal*> owned, others;
    for (const BesideMetal& m : beside.metals)
        if (m.agrees) (m.owned ? owned : others).push_back(&m);
    const std::string head = "It conducts " + figure(beside.iacs) + " %IACS (90 %: " + figure(beside.low90) + " to " +
                             figure(beside.high90) + ")";
    if (!owned.empty()) return head + ": of what lies on your shelf that fits " + names_of(owned) + ".";
    if (!others.empty()) return head + ": that fits " + names_of(others) + ", none of them on your shelf.";
    const auto nearest =
        std::min_element(beside.metals.begin(), beside.metals.end(), [&](const auto& a, const auto& b) {
            return std::abs(a.iacs - beside.iacs) < std::abs(b.iacs - beside.iacs);
        });
    if (nearest == beside.metals.end()) return head + ".";
    return head + ": that fits none of these metals; the nearest is " + nearest->metal->name + " with " +
           figure(nearest->iacs) + ".";
}

} // namespace

std::optional<MeasuredBeside> measured_beside(const Catalogue& catalogue, const TrialResult& trial,
                                              const std::vector<std::string>& owned,
                                              const std::vector<std::string>& known) {
    if (!trial.inferred) return std::nullopt;
    const InferResult& r = *trial.inferred;
    MeasuredBeside out{r.iacs_percent, r.iacs_low90, r.iacs_high90, {}, ""};
    const auto is_owned = [&](const std::string& slug) {
        return std::find(owned.begin(), owned.end(), slug) != owned.end();
    };
    const auto add = [&](const Metal* metal) {
        if (!metal) return;
        const bool there =
            std::any_of(out.metals.begin(), out.metals.end(), [&](const auto& m) { return m.metal == metal; });
        const Result<Evaluated> value = evaluate(catalogue, *metal, "conductivity", r.conditions);
        if (there || !value) return;
        const double half = normal_90 * value->standard_uncertainty_si;
        BesideMetal m{metal,
                      value->value_si / iacs_percent_S_m,
                      (value->value_si - half) / iacs_percent_S_m,
                      (value->value_si + half) / iacs_percent_S_m,
                      is_owned(metal->slug),
                      metal->slug == trial.trial.metal,
                      false};
        m.agrees = m.low90 <= out.high90 && out.low90 <= m.high90;
        out.metals.push_back(m);
    };
    for (const std::string& slug : owned) add(catalogue.metal(slug));
    for (const std::string& slug : known) add(catalogue.metal(slug));
    add(catalogue.metal(trial.trial.metal));
    for (std::size_t i = 0; i < std::min(most_likely, r.consistent.size()); ++i) add(r.consistent[i].metal);
    for (const ConsistentMetal& near : r.nearest) add(near.metal);
    std::sort(out.metals.begin(), out.metals.end(), [](const auto& a, const auto& b) { return a.iacs < b.iacs; });
    out.sentence = sentence_of(out);
    return out;
}

} // namespace pourbook
