#include "questions/rank/versus.hpp"

#include "core/quantity/format.hpp"
#include "core/ranking/order.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/rank/deciding.hpp"
#include "questions/rank/flips.hpp"
#include "questions/rank/judge.hpp"
#include "questions/rank/scattering.hpp"
#include "questions/say/casting_words.hpp"
#include "questions/say/share.hpp"
#include "questions/say/shown.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

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

const RankInput& input(const VersusSide& s, const std::string& property) {
    return *std::find_if(s.inputs.begin(), s.inputs.end(), [&](const RankInput& i) { return i.property == property; });
}

/// "density (2.680 against 8.960 g/cm³)", the better one's first.
std::string part(const Catalogue& catalogue, const VersusResult& r, const std::string& property) {
    const Property& p = *catalogue.property(property);
    const bool range = property == "liquidus" && has_melting_range(r.better.inputs);
    const auto one = [&](const VersusSide& s) {
        const std::string top = shown_value(p, input(s, property).value, UnitSystem::shown);
        if (!range) return top;
        return shown_value(*catalogue.property("solidus"), input(s, "solidus").value, UnitSystem::shown) + " to " + top;
    };
    const std::string unit = shown_unit(p, UnitSystem::shown);
    return (range ? "melting range" : p.label) + " (" + one(r.better) + " against " + one(r.worse) +
           (unit.empty() ? "" : " " + unit) + ")";
}

std::string parts(const Catalogue& catalogue, const VersusResult& r, const std::vector<std::string>& properties) {
    std::string text;
    for (const std::string& p : properties) text += (text.empty() ? "" : " and ") + part(catalogue, r, p);
    return text;
}

std::string reason_of(const Catalogue& catalogue, const VersusResult& r, const Deciding& d) {
    if (r.better.metal == r.worse.metal) return "the two are the same metal";
    if (d.helps.empty()) return "no single figure decides";
    std::string text = parts(catalogue, r, d.helps);
    if (r.tie) {
        text += (d.helps.size() > 1 ? " speak for " : " speaks for ") + r.better.metal->name;
        return text + (d.hinders.empty() ? "" : ", " + parts(catalogue, r, d.hinders) + " against it");
    }
    text += d.helps.size() > 1 ? " decide together" : " decides";
    if (!d.hinders.empty()) text += ", in spite of " + parts(catalogue, r, d.hinders);
    if (std::none_of(d.helps.begin(), d.helps.end(), carried_by_electrons)) return text;
    // Of castings of two pure metals what is left in them counts as much as their nature.
    if (of_casting(r.conditions) && r.better.metal->is_element() && r.worse.metal->is_element()) return text;
    Conditions here = r.conditions;
    here.temperature_K = r.better.at_K;
    const std::string why = why_it_conducts(catalogue, *r.better.metal, *r.worse.metal, here, !std::isnan(r.to_K));
    return text + (why.empty() ? "" : ": " + why);
}

/// "copper (high purity), annealed": by the first value that depends on the condition; the name alone where none does.
std::string state(const Catalogue& catalogue, const VersusSide& s, const Conditions& conditions) {
    const bool conducts = std::any_of(s.inputs.begin(), s.inputs.end(),
                                      [](const RankInput& i) { return !std::isnan(i.value.handbook_si); });
    if (conducts && of_casting(conditions))
        return s.metal->name + ", " + casting_words(catalogue, *s.metal, *conditions.casting);
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

/// Whether the temperature has a part in the goal: a melting point is the same at any.
bool by_temperature(const Catalogue& catalogue, const VersusResult& r) {
    return std::any_of(r.better.inputs.begin(), r.better.inputs.end(),
                       [&](const RankInput& i) { return catalogue.property(i.property)->varies_with_temperature; });
}

std::string deciding_end(const VersusResult& r) {
    const std::string a = worst_place(r, r.better), b = worst_place(r, r.worse);
    if (a == b) return "Over the range the worst counts, here " + a + ". ";
    return "Over the range the worst of each counts: " + r.better.metal->name + " " + a + "; " + r.worse.metal->name +
           " " + b + ". ";
}

std::string at_words(const VersusResult& r) {
    const std::string from = celsius(r.conditions.temperature_K) + " °C";
    return std::isnan(r.to_K) ? " at " + from : " from " + from + " to " + celsius(r.to_K) + " °C";
}

bool by_difference(const VersusResult& r) {
    return std::isnan(r.ratio_median);
}

std::string margin(const VersusResult& r) {
    const double x = by_difference(r) ? r.difference_median : r.ratio_median;
    return significant(x, 3) + (r.difference_unit.empty() ? "" : " " + r.difference_unit);
}

std::string interval(const VersusResult& r) {
    const double low = by_difference(r) ? r.difference_low90 : r.ratio_low90,
                 high = by_difference(r) ? r.difference_high90 : r.ratio_high90;
    return "90 % interval " + significant(low, 3) + " to " + significant(high, 3) +
           (r.difference_unit.empty() ? "" : " " + r.difference_unit);
}

std::string verdict(const VersusResult& r, const std::string& at) {
    const std::string head = with_capital(r.label.empty() ? r.formula : r.label) + ": ", &a = r.better.metal->name,
                      &b = r.worse.metal->name;
    if (r.better.metal == r.worse.metal) return head + a + " ties with itself" + at + ". ";
    if (r.tie)
        return head + "the data can't tell " + a + " from " + b + at + seconds(r) + ". The " +
               (by_difference(r) ? "difference" : "ratio") + " is " + margin(r) + " (" + interval(r) + "), with " + a +
               " ahead at a probability of only " + chance_text(r.p_winner) + ". ";
    return head + a + " beats " + b + at + " by " + (by_difference(r) ? "" : "a factor of ") + margin(r) + seconds(r) +
           " (" + interval(r) + "; probability " + chance_text(r.p_winner) + "). ";
}

std::string sentence_of(const Catalogue& catalogue, const VersusResult& r) {
    const bool warm = by_temperature(catalogue, r);
    std::string text = verdict(r, warm ? at_words(r) : "") + (warm && !std::isnan(r.to_K) ? deciding_end(r) : "") +
                       with_capital(r.reason) + ". Taken as: " + state(catalogue, r.better, r.conditions);
    if (r.worse.metal != r.better.metal) text += "; " + state(catalogue, r.worse, r.conditions);
    text += (r.held.empty() ? "" : "; " + r.held) + ".";
    if (of_casting(r.conditions)) text += " " + r.flip_sentence + "Handbook metal: --as handbook.";
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

/// A ratio has no meaning for temperatures, nor where a merit is not well away from zero. Copies: quantiles reorder.
bool ratio_means(const Formula& formula, std::vector<double> a, std::vector<double> b) {
    constexpr double clear_of_zero = 0.2; // of the median, for the low end of the 90 % interval
    if (formula.dimension() == base_dimension(Dimension::kelvin)) return false;
    const auto clear = [&](std::vector<double>& x) {
        const double low = quantile(x, 0.05);
        return low > 0 && low > clear_of_zero * quantile(x, 0.5);
    };
    return clear(a) && clear(b);
}

/// As the one property of a formula is shown; kelvin for temperatures; else SI base units.
struct Scale {
    double of_si = 1;
    std::string unit;
};

Scale difference_scale(const Catalogue& catalogue, const Formula& formula) {
    if (formula.dimension() == base_dimension(Dimension::kelvin)) return {1, "K"};
    const Property* p = formula.names().size() == 1 ? catalogue.property(formula.names().front()) : nullptr;
    if (p && p->dimension == formula.dimension())
        return {shown_uncertainty(*p, 1, 1, UnitSystem::shown), shown_unit(*p, UnitSystem::shown)};
    return {1, formula.dimension().dimensionless() ? "" : formula.dimension().text()};
}

void put_differences(VersusResult& r, const Scale& scale, const std::vector<double>& a, const std::vector<double>& b) {
    std::vector<double> differences;
    for (std::size_t s = 0; s < a.size(); ++s)
        differences.push_back((r.best_high ? a[s] - b[s] : b[s] - a[s]) * scale.of_si);
    r.difference_unit = scale.unit;
    r.difference_median = std::max(0.0, quantile(differences, 0.5)); // with half the samples at least not below
    r.difference_low90 = quantile(differences, 0.05);
    r.difference_high90 = quantile(differences, 0.95);
    r.ratio_median = r.ratio_low90 = r.ratio_high90 = no_number;
}

void put_ratios(VersusResult& r, const std::vector<double>& a, const std::vector<double>& b) {
    std::vector<double> ratios;
    for (std::size_t s = 0; s < a.size(); ++s) ratios.push_back(r.best_high ? a[s] / b[s] : b[s] / a[s]);
    r.ratio_median = std::max(1.0, quantile(ratios, 0.5)); // with half the samples at least not below
    r.ratio_low90 = quantile(ratios, 0.05);
    r.ratio_high90 = quantile(ratios, 0.95);
}

/// Samples in which either has no finite value say nothing of the two.
void keep_finite(std::vector<double>& a, std::vector<double>& b) {
    std::size_t finite = 0;
    for (std::size_t s = 0; s < a.size(); ++s) {
        if (!std::isfinite(a[s]) || !std::isfinite(b[s])) continue;
        a[finite] = a[s];
        b[finite++] = b[s];
    }
    a.resize(finite);
    b.resize(finite);
}

/// Puts the likelier winner first. False: too few samples have a finite value.
bool compare(VersusResult& r, const Catalogue& catalogue, const GoalPlan& plan, const VersusRequest& request,
             const std::vector<Conditions>& range) {
    Draws draws(request.samples, request.seed);
    const auto samples = [&](const VersusSide& s) {
        return samples_over(catalogue, plan, *s.metal, s.inputs, range, draws);
    };
    std::vector<double> a = samples(r.better), b = samples(r.worse);
    keep_finite(a, b);
    if (a.empty() || 2 * a.size() < request.samples) return false;
    double wins = 0;
    for (std::size_t s = 0; s < a.size(); ++s) wins += plan.worse(b[s], a[s]) ? 1 : a[s] == b[s] ? 0.5 : 0;
    r.p_winner = wins / static_cast<double>(a.size());
    if (r.p_winner < 0.5) {
        std::swap(r.better, r.worse);
        std::swap(a, b);
        r.p_winner = 1 - r.p_winner;
    }
    const Formula& formula = plan.merit.formula();
    if (ratio_means(formula, a, b))
        put_ratios(r, a, b);
    else
        put_differences(r, difference_scale(catalogue, formula), a, b);
    r.tie = r.p_winner < told_apart;
    return true;
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
    if (!compare(r, catalogue, *plan, request, range))
        return Problem{Problem::Kind::no_value,
                       "the formula has no finite value for " + r.better.metal->slug + " or " + r.worse.metal->slug +
                           " in half of the samples or more: a figure that enters is known only as a range about zero, "
                           "or too roughly",
                       0};
    const Deciding deciding = deciding_inputs(plan->merit, r.best_high, r.better.inputs, r.worse.inputs);
    if (of_casting(r.conditions)) find_flips(r, catalogue, *plan, request.samples, request.seed);
    r.deciding = deciding.helps.empty() ? "" : deciding.helps.front();
    r.in_spite_of = deciding.hinders;
    r.reason = reason_of(catalogue, r, deciding);
    collect_sources(r);
    r.sentence = sentence_of(catalogue, r);
    return r;
}

} // namespace pourbook
