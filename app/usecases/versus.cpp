#include "usecases/versus.hpp"

#include "core/quantity/format.hpp"
#include "core/ranking/order.hpp"
#include "usecases/find_metal.hpp"
#include "usecases/shown.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace pourbook {
namespace {

Result<VersusSide> side_of(const Catalogue& catalogue, const std::string& word, const GoalPlan& plan,
                           const Conditions& conditions) {
    const Result<const Metal*> metal = find_metal(catalogue, word);
    if (!metal) return metal.problem();
    Inputs inputs = look_up(catalogue, **metal, plan.merit.properties(), conditions);
    if (!inputs.missing.empty()) return Problem{Problem::Kind::no_value, inputs.reason, 0};
    VersusSide side;
    side.metal = *metal;
    side.merit = plan.merit.value(nominal(inputs.values));
    side.from_memory = any_from_memory(inputs.values);
    side.inputs = std::move(inputs.values);
    side.barred = barred(catalogue, **metal, plan, conditions.temperature_K);
    if (std::isnan(side.merit))
        return Problem{Problem::Kind::no_value, "the formula has no finite value for " + (*metal)->slug, 0};
    return side;
}

/// How much of log(merit a / merit b) each input explains: the change when b takes over a's value, one after another.
std::size_t deciding_input(const Merit& merit, const VersusSide& a, const VersusSide& b) {
    std::vector<double> values = nominal(b.inputs);
    std::size_t most = 0;
    double largest = -1, before = merit.value(values);
    for (std::size_t i = 0; i < values.size(); ++i) {
        values[i] = a.inputs[i].value.value_si;
        const double now = merit.value(values);
        const double share = std::abs(std::log(std::abs(now / before)));
        if (share > largest) {
            largest = share;
            most = i;
        }
        before = now;
    }
    return most;
}

bool carried_by_electrons(const std::string& property) {
    return property == "conductivity" || property == "resistivity" || property == "thermal_conductivity";
}

double main_content(const Metal& m) {
    double most = 0;
    for (const Portion& p : m.composition) most = std::max(most, p.wt_percent);
    return most;
}

std::string additions(const Catalogue& catalogue, const Metal& m) {
    std::string out;
    const double main = main_content(m);
    for (const Portion& p : m.composition) {
        if (p.wt_percent <= 0 || p.wt_percent == main) continue;
        const Metal* element = catalogue.element(p.element);
        out += (out.empty() ? "" : ", ") + trimmed(p.wt_percent, 3) + " % " + (element ? element->slug : p.element);
    }
    return out;
}

/// Physics of the difference, where the data carries it: alloying atoms in solid solution scatter electrons
/// (Matthiessen, Linde).
std::string physics(const Catalogue& catalogue, const Metal& better, const Metal& worse) {
    const std::string added = additions(catalogue, worse);
    if (!worse.is_element() && !added.empty() && main_content(better) >= main_content(worse))
        return "the " + added + " in " + worse.name +
               " scatters its electrons as far as it stays in solution (solid-solution scattering)";
    if (better.is_element() && worse.is_element())
        return "that is the nature of the two pure metals at this temperature";
    return {};
}

std::string figures(const Property& p, const VersusSide& a, const VersusSide& b, std::size_t i) {
    const auto one = [&](const VersusSide& s) { return shown_value(p, s.inputs[i].value, UnitSystem::shown); };
    const std::string unit = shown_unit(p, UnitSystem::shown);
    return one(a) + " against " + one(b) + (unit.empty() ? "" : " " + unit);
}

std::string reason_of(const Catalogue& catalogue, const VersusResult& r, std::size_t i) {
    if (r.better.metal == r.worse.metal) return "the two are the same metal";
    const Property& p = *catalogue.property(r.deciding);
    std::string text = p.label + " decides: " + figures(p, r.better, r.worse, i);
    if (carried_by_electrons(r.deciding)) {
        const std::string why = physics(catalogue, *r.better.metal, *r.worse.metal);
        if (!why.empty()) text += "; " + why;
    }
    return text;
}

/// "annealed copper (high purity)", "sterling silver (condition not stated)".
std::string state(const VersusSide& s) {
    const std::string& condition = s.inputs.front().value.condition;
    if (condition.empty() || condition == "unstated") return s.metal->name + " (condition not stated)";
    return condition + " " + s.metal->name;
}

std::string chance(double p) {
    return p > 0.999 ? "more than 99.9 %" : trimmed(100 * p, p > 0.99 ? 3 : 2) + " %";
}

std::string source_names(const Catalogue& catalogue, const std::vector<std::string>& keys) {
    std::string out;
    for (const std::string& key : keys) {
        const Reference* r = catalogue.reference(key);
        if (!r) continue;
        std::string name = r->authors.empty() ? r->title : r->authors;
        if (!r->year.empty()) name += ", " + r->year;
        out += (out.empty() ? "" : "; ") + name;
    }
    return out;
}

std::string sentence_of(const Catalogue& catalogue, const VersusResult& r) {
    const std::string goal = r.label.empty() ? r.formula : r.label;
    const std::string at = "At " + trimmed(r.conditions.temperature_K - 273.15, 4) + " °C";
    const std::string interval = significant(r.ratio_low90, 3) + " to " + significant(r.ratio_high90, 3);
    std::string text = r.tie ? at + " the data can't tell " + state(r.better) + " from " + state(r.worse) + " for " +
                                   goal + ": the ratio is " + significant(r.ratio_median, 3) + " (90 % interval " +
                                   interval + "), and the first is ahead with a probability of only " +
                                   chance(r.p_winner) + ". "
                             : at + ", for " + goal + ", " + state(r.better) + " is " + significant(r.ratio_median, 3) +
                                   " times as good as " + state(r.worse) + " (90 % interval " + interval +
                                   "; probability " + chance(r.p_winner) + "). ";
    std::string reason = r.reason;
    reason[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(reason[0])));
    text += reason + ".";
    if (r.better.from_memory || r.worse.from_memory) text += " One of these figures is only remembered, not read.";
    return text + " Figures: " + source_names(catalogue, r.sources) + ".";
}

void compare(VersusResult& r, const Merit& merit, const VersusRequest& request) {
    Draws draws(request.samples, request.seed);
    const auto a = merit.samples(r.better.inputs, draws), b = merit.samples(r.worse.inputs, draws);
    std::vector<double> ratios;
    double wins = 0;
    for (std::size_t s = 0; s < a.size(); ++s) {
        ratios.push_back(r.best_high ? a[s] / b[s] : b[s] / a[s]);
        wins += ratios.back() > 1 ? 1 : ratios.back() == 1 ? 0.5 : 0;
    }
    r.p_winner = wins / static_cast<double>(a.size());
    r.ratio_median = quantile(ratios, 0.5);
    r.ratio_low90 = quantile(ratios, 0.05);
    r.ratio_high90 = quantile(ratios, 0.95);
    r.tie = r.p_winner < told_apart;
}

void collect_sources(VersusResult& r) {
    for (const VersusSide* side : {&r.better, &r.worse})
        for (const RankInput& i : side->inputs)
            for (const SourceValue& s : i.value.sources)
                if (s.chosen && std::find(r.sources.begin(), r.sources.end(), s.key) == r.sources.end())
                    r.sources.push_back(s.key);
}

} // namespace

Result<VersusResult> versus(const Catalogue& catalogue, const VersusRequest& request) {
    const Result<GoalPlan> plan = plan_goal(catalogue, request.goal);
    if (!plan) return plan.problem();
    Result<VersusSide> a = side_of(catalogue, request.a, *plan, request.conditions);
    if (!a) return a.problem();
    Result<VersusSide> b = side_of(catalogue, request.b, *plan, request.conditions);
    if (!b) return b.problem();
    VersusResult r;
    r.goal = plan->id;
    r.label = plan->label;
    r.formula = plan->merit.formula().text();
    r.unit = plan->merit.formula().dimension().text();
    r.best_high = plan->best_high;
    r.conditions = request.conditions;
    const bool a_leads = plan->best_high ? a->merit >= b->merit : a->merit <= b->merit;
    r.better = a_leads ? std::move(*a) : std::move(*b);
    r.worse = a_leads ? std::move(*b) : std::move(*a);
    compare(r, plan->merit, request);
    const std::size_t i = deciding_input(plan->merit, r.better, r.worse);
    r.deciding = r.better.inputs[i].property;
    r.reason = reason_of(catalogue, r, i);
    collect_sources(r);
    r.sentence = sentence_of(catalogue, r);
    return r;
}

} // namespace pourbook
