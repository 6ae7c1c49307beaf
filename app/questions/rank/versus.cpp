#include "questions/rank/versus.hpp"

#include "core/quantity/format.hpp"
#include "core/ranking/order.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/rank/judge.hpp"
#include "questions/say/share.hpp"
#include "questions/say/shown.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <numeric>

namespace pourbook {
namespace {

Result<VersusSide> side_at(const Catalogue& catalogue, const Metal& metal, const GoalPlan& plan,
                           const Conditions& conditions) {
    if (const std::string why = plan.merit.refusal(catalogue, metal, conditions); !why.empty())
        return Problem{Problem::Kind::refused, why, 0};
    Inputs inputs = plan.merit.inputs(catalogue, metal, conditions);
    if (!inputs.missing.empty()) return Problem{Problem::Kind::no_value, inputs.reason, 0};
    if (const std::string why = plan.merit.fault(nominal(inputs.values)); !why.empty())
        return Problem{Problem::Kind::refused, metal.slug + ": " + why, 0};
    VersusSide side;
    side.metal = &metal;
    side.merit = plan.merit.value(nominal(inputs.values));
    side.from_memory = any_from_memory(inputs.values);
    side.inputs = std::move(inputs.values);
    side.at_K = conditions.temperature_K;
    if (std::isnan(side.merit))
        return Problem{Problem::Kind::no_value, "the formula has no finite value for " + metal.slug, 0};
    return side;
}

/// At the temperature of the range where it is worst.
Result<VersusSide> side_of(const Catalogue& catalogue, const std::string& word, const GoalPlan& plan,
                           const std::vector<Conditions>& range) {
    const Result<const Metal*> metal = find_metal(catalogue, word);
    if (!metal) return metal.problem();
    VersusSide worst;
    std::string bar;
    for (const Conditions& conditions : range) {
        Result<VersusSide> here = side_at(catalogue, **metal, plan, conditions);
        if (!here) return here;
        if (bar.empty()) bar = barred(catalogue, **metal, plan, conditions.temperature_K);
        if (!worst.metal || plan.worse(here->merit, worst.merit)) worst = std::move(*here);
    }
    worst.barred = bar;
    return worst;
}

/// Inputs by how much of log(merit a / merit b) each explains, the most first: the change when b takes over a's value,
/// one after another. Only the first, and a second that weighs at least half as much.
std::vector<std::size_t> deciding_inputs(const Merit& merit, const VersusSide& a, const VersusSide& b) {
    std::vector<double> values = nominal(b.inputs), share;
    double before = merit.value(values);
    for (std::size_t i = 0; i < values.size(); ++i) {
        values[i] = a.inputs[i].value.value_si;
        const double now = merit.value(values);
        share.push_back(std::abs(std::log(std::abs(now / before))));
        before = now;
    }
    std::vector<std::size_t> order(share.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t i, std::size_t j) { return share[i] > share[j]; });
    order.resize(order.size() > 1 && share[order[0]] > 0 && share[order[1]] >= share[order[0]] / 2 ? 2 : 1);
    return order;
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
std::string physics(const Catalogue& catalogue, const Metal& better, const Metal& worse, bool over_range) {
    const std::string added = additions(catalogue, worse);
    const bool several = added.find(',') != std::string::npos;
    if (!worse.is_element() && !added.empty() && main_content(better) >= main_content(worse))
        return "the " + added + " in " + worse.name + (several ? " scatter" : " scatters") +
               " its electrons as far as " + (several ? "they stay" : "it stays") +
               " in solution (solid-solution scattering)";
    if (better.is_element() && worse.is_element())
        return std::string("that is the nature of the two pure metals ") +
               (over_range ? "where each is worst" : "at this temperature");
    return {};
}

std::string figures(const Property& p, const VersusSide& a, const VersusSide& b, std::size_t i) {
    const auto one = [&](const VersusSide& s) { return shown_value(p, s.inputs[i].value, UnitSystem::shown); };
    const std::string unit = shown_unit(p, UnitSystem::shown);
    return one(a) + " against " + one(b) + (unit.empty() ? "" : " " + unit);
}

std::string reason_of(const Catalogue& catalogue, const VersusResult& r, const std::vector<std::size_t>& deciding) {
    if (r.better.metal == r.worse.metal) return "the two are the same metal";
    std::string text, why;
    for (const std::size_t i : deciding) {
        const Property& p = *catalogue.property(r.better.inputs[i].property);
        text += (text.empty() ? "" : " and ") + p.label + " (" + figures(p, r.better, r.worse, i) + ")";
        if (why.empty() && carried_by_electrons(p.id))
            why = physics(catalogue, *r.better.metal, *r.worse.metal, !std::isnan(r.to_K));
    }
    text += deciding.size() > 1 ? " decide together" : " decides";
    return text + (why.empty() ? "" : ": " + why);
}

/// "copper (high purity), annealed": by the first value that depends on the condition; the name alone where none does.
std::string state(const Catalogue& catalogue, const VersusSide& s) {
    for (const RankInput& i : s.inputs) {
        if (catalogue.property(i.property)->condition_spread <= 0) continue;
        const std::string& condition = i.value.condition;
        const bool stated = !condition.empty() && condition != "unstated";
        return s.metal->name + ", " + (stated ? condition : "condition not stated");
    }
    return s.metal->name;
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

std::string with_capital(std::string text) {
    text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
    return text;
}

/// A fall is best told in seconds.
std::string seconds(const VersusResult& r) {
    if (r.formula != fall_time_name) return {};
    return ", " + significant(r.better.merit, 3) + " s against " + significant(r.worse.merit, 3) + " s";
}

std::string celsius(double kelvin) {
    return trimmed(kelvin - 273.15, 5);
}

/// "at the warm end, 26.85 °C"
std::string worst_place(const VersusResult& r, const VersusSide& side) {
    const double from = r.conditions.temperature_K, slack = 1e-6 * (r.to_K - from);
    const std::string place = side.at_K <= from + slack     ? "at the cold end"
                              : side.at_K >= r.to_K - slack ? "at the warm end"
                                                            : "in between";
    return place + ", " + celsius(side.at_K) + " °C";
}

std::string deciding_end(const VersusResult& r) {
    if (std::isnan(r.to_K)) return {};
    const std::string a = worst_place(r, r.better), b = worst_place(r, r.worse);
    if (a == b) return "Over the range the worst counts, here " + a + ". ";
    return "Over the range the worst of each counts: " + r.better.metal->name + " " + a + "; " + r.worse.metal->name +
           " " + b + ". ";
}

std::string verdict(const VersusResult& r) {
    const std::string from = celsius(r.conditions.temperature_K) + " °C",
                      at = std::isnan(r.to_K) ? " at " + from : " from " + from + " to " + celsius(r.to_K) + " °C";
    const std::string interval =
        "90 % interval " + significant(r.ratio_low90, 3) + " to " + significant(r.ratio_high90, 3);
    const std::string head = with_capital(r.label.empty() ? r.formula : r.label) + ": ", &a = r.better.metal->name,
                      &b = r.worse.metal->name;
    if (r.better.metal == r.worse.metal) return head + a + " ties with itself" + at + ". ";
    if (r.tie)
        return head + "the data can't tell " + a + " from " + b + at + seconds(r) + ". The ratio is " +
               significant(r.ratio_median, 3) + " (" + interval + "), with " + a + " ahead at a probability of only " +
               chance_text(r.p_winner) + ". ";
    return head + a + " beats " + b + at + " by a factor of " + significant(r.ratio_median, 3) + seconds(r) + " (" +
           interval + "; probability " + chance_text(r.p_winner) + "). ";
}

std::string sentence_of(const Catalogue& catalogue, const VersusResult& r) {
    std::string text =
        verdict(r) + deciding_end(r) + with_capital(r.reason) + ". Taken as: " + state(catalogue, r.better);
    if (r.worse.metal != r.better.metal) text += "; " + state(catalogue, r.worse);
    text += (r.held.empty() ? "" : "; " + r.held) + ".";
    if (r.better.from_memory || r.worse.from_memory) text += " One of these figures is only remembered, not read.";
    return text + " Figures: " + source_names(catalogue, r.sources) + ".";
}

/// What is equal for both, as far as it bears on the answer.
std::string held_words(const Catalogue& catalogue, const GoalPlan& plan) {
    if (const auto& fall = plan.merit.fall()) {
        if (fall->holding() == Holding::size) return "tubes of the same size";
        const std::string amount =
            fall->holding() == Holding::mass
                ? significant(fall->held_si() * 1000, 3) + " g"
                : shown_money(catalogue, fall->held_si(), 3, UnitSystem::shown) + at_rate(catalogue);
        return "tubes of the same bore and length with " + amount + " of metal";
    }
    if (plan.holding == Holding::mass) return "parts of the same mass";
    if (plan.holding == Holding::budget) return "parts of the same cost";
    const auto& names = plan.merit.properties();
    return std::any_of(names.begin(), names.end(), carried_by_electrons) ? "parts of the same size" : "";
}

void compare(VersusResult& r, const Catalogue& catalogue, const GoalPlan& plan, const VersusRequest& request,
             const std::vector<Conditions>& range) {
    Draws draws(request.samples, request.seed);
    const auto samples = [&](const VersusSide& s) {
        return samples_over(catalogue, plan, *s.metal, s.inputs, range, draws);
    };
    const auto a = samples(r.better), b = samples(r.worse);
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
    const std::vector<Conditions> range = over_range(request.conditions, request.to_K.value_or(no_number));
    Result<VersusSide> a = side_of(catalogue, request.a, *plan, range);
    if (!a) return a.problem();
    Result<VersusSide> b = side_of(catalogue, request.b, *plan, range);
    if (!b) return b.problem();
    VersusResult r;
    r.goal = plan->id;
    r.label = plan->label;
    r.formula = plan->merit.formula().text();
    r.unit = plan->merit.formula().dimension().text();
    r.best_high = plan->best_high;
    r.conditions = request.conditions;
    r.to_K = request.to_K.value_or(no_number);
    r.held = held_words(catalogue, *plan);
    const bool a_leads = !plan->worse(a->merit, b->merit);
    r.better = a_leads ? std::move(*a) : std::move(*b);
    r.worse = a_leads ? std::move(*b) : std::move(*a);
    compare(r, catalogue, *plan, request, range);
    const std::vector<std::size_t> deciding = deciding_inputs(plan->merit, r.better, r.worse);
    r.deciding = r.better.inputs[deciding.front()].property;
    r.reason = reason_of(catalogue, r, deciding);
    collect_sources(r);
    r.sentence = sentence_of(catalogue, r);
    return r;
}

} // namespace pourbook
