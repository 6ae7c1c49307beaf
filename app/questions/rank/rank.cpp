#include "questions/rank/rank.hpp"

#include "core/evaluate/money.hpp"
#include "core/materials/names.hpp"
#include "questions/drop/tube_metal.hpp"
#include "questions/metals/find_metal.hpp"
#include "questions/rank/flips.hpp"
#include "questions/rank/price_years.hpp"
#include "questions/rank/settle.hpp"
#include "questions/say/casting_words.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <utility>

namespace pourbook {
namespace {

constexpr std::size_t samples_for_flips = 1000;
constexpr std::size_t often = 64;     // metals between two words of progress
constexpr std::size_t kept = 4000000; // samples kept in all; beyond, they are drawn again where they matter
constexpr std::size_t price_form_rows = 10;
constexpr std::size_t told = 300; // metals whose figures get their trail and further sources
constexpr double judging = 0.8;   // share of the work before the ordering

const Problem stopped{Problem::Kind::refused, "stopped before the ranking was finished", 0};

class Ranking {
public:
    Ranking(const Catalogue& catalogue, const GoalPlan& plan, const RankRequest& request, std::size_t metals)
        : catalogue_(catalogue), plan_(plan), request_(request),
          judge_(catalogue, plan, request.conditions, request.to_K.value_or(no_number), request.samples, request.seed,
                 metals <= told),
          few_(metals <= told) {
        result_.goal = plan.id;
        result_.label = plan.label;
        result_.sentence = plan.sentence;
        result_.formula = plan.merit.formula().text();
        result_.unit = plan.merit.formula().dimension().text();
        result_.best_high = plan.best_high;
        result_.holding = plan.holding;
        result_.conditions = request.conditions;
        result_.to_K = request.to_K.value_or(no_number);
        result_.samples = request.samples;
        result_.fall = plan.merit.fall();
        result_.catalogue = &catalogue;
        result_.merit = plan.merit;
    }

    Result<RankResult> run(const std::vector<const Metal*>& field, const Progress& progress) {
        keep_ = field.size() * request_.samples <= kept;
        judged_.reserve(field.size());
        standings_.reserve(field.size());
        for (std::size_t i = 0; i < field.size(); ++i) {
            if (i % often == 0 &&
                !goes_on(progress, judging * static_cast<double>(i) / static_cast<double>(field.size())))
                return stopped;
            consider(*field[i]);
        }
        const SamplesOf samples_of = [this](std::size_t i) { return keep_ ? samples_[i] : judge_.samples(judged_[i]); };
        auto places =
            put_in_order(standings_, samples_of, request_.samples, plan_.best_high, part_of(progress, judging, 1));
        if (!goes_on(progress, 1)) return stopped;
        finish(std::move(places));
        return std::move(result_);
    }

private:
    void consider(const Metal& metal) {
        std::optional<Judged> judged = judge_.judge(metal);
        if (!judged) return;
        std::vector<double> samples = judge_.samples(*judged);
        if (std::any_of(samples.begin(), samples.end(), [](double x) { return std::isnan(x); })) {
            judge_.unrankable.push_back(
                {&metal, "the formula has no finite value for it inside the uncertainty of what enters", {}});
            return;
        }
        standings_.push_back(sum_up(metal.slug, judged->merit, samples));
        if (keep_) samples_.push_back(std::move(samples));
        if (!few_) judged->inputs = {};
        judged_.push_back(std::move(*judged));
    }

    void finish(std::vector<Place> places) {
        order_by_price_form();
        result_.ranked_in_all = places.size();
        tell(places);
        settle(places);
        const std::size_t shown = request_.top ? std::min(request_.top, places.size()) : places.size();
        result_.ranked.reserve(shown);
        for (std::size_t i = 0; i < shown; ++i) {
            Judged& j = judged_[places[i].contender];
            result_.ranked.push_back(
                {j.metal, std::move(places[i]), std::move(j.inputs), j.from_memory, j.stale_price, j.at_K, tube_of(j)});
        }
        turn_first_two();
        result_.price_years = price_years(result_.ranked, catalogue_);
        result_.excluded = std::move(judge_.excluded);
        result_.unrankable = std::move(judge_.unrankable);
    }

    /// The first ones get their figures with trails and further sources.
    void tell(const std::vector<Place>& places) {
        if (few_) return;
        Conditions there = request_.conditions;
        for (std::size_t i = 0; i < std::min(told, places.size()); ++i) {
            Judged& j = judged_[places[i].contender];
            there.temperature_K = j.at_K;
            j.inputs = plan_.merit.inputs(catalogue_, *j.metal, there).values;
        }
    }

    void turn_first_two() {
        if (result_.ranked.size() < 2 || request_.to_K || !of_casting(request_.conditions)) return;
        VersusResult two;
        two.conditions = request_.conditions;
        two.best_high = plan_.best_high;
        for (auto [side, ranked] : {std::pair{&two.better, &result_.ranked[0]}, {&two.worse, &result_.ranked[1]}}) {
            side->metal = ranked->metal;
            side->inputs = ranked->inputs;
            side->at_K = request_.conditions.temperature_K;
        }
        const auto& ties = result_.ranked[0].place.tied_with;
        two.tie = std::find(ties.begin(), ties.end(), two.worse.metal->slug) != ties.end();
        find_flips(two, catalogue_, plan_, std::min(request_.samples, samples_for_flips), request_.seed);
        if (two.flip_sentence.empty()) return;
        two.flip_sentence.front() =
            static_cast<char>(std::tolower(static_cast<unsigned char>(two.flip_sentence.front())));
        two.flip_sentence.pop_back(); // a blank
        result_.flip_sentence = two.better.metal->name + " before " + two.worse.metal->name + ": " + two.flip_sentence;
    }

    std::optional<RankedTube> tube_of(const Judged& j) const {
        if (!result_.fall) return std::nullopt;
        const double area = plan_.merit.wall_area_m2(j.values);
        RankedTube tube;
        tube.wall_m = result_.fall->wall_m(area);
        const auto density = tube_density(catalogue_, *j.metal, request_.conditions);
        if (!density) return tube;
        tube.mass_kg = density->value_si * area * result_.fall->length_m();
        if (const auto price = evaluate(catalogue_, *j.metal, "price", request_.conditions))
            tube.cost_usd = tube.mass_kg * price->value_si;
        return tube;
    }

    void settle(const std::vector<Place>& places) {
        if (places.size() < 2) return;
        const Judged &first = judged_[places[0].contender], &second = judged_[places[1].contender];
        const auto& ties = places[0].tied_with;
        if (std::find(ties.begin(), ties.end(), second.metal->slug) == ties.end()) return;
        double sum = 0;
        for (const auto& [cause, variance] : ratio_variance(plan_.merit, first.inputs, second.inputs)) {
            sum += variance;
            if (variance > result_.settling.share) result_.settling = {cause, variance, {}};
        }
        if (sum <= 0) return;
        result_.settling.share /= sum;
        result_.settling.sentence = "The data can't tell " + first.metal->name + " from " + second.metal->name +
                                    "; a better figure for " + plain_cause(catalogue_, result_.settling.cause) +
                                    " would do most to settle it.";
    }

    /// Only the price changes with the form, so everything else stays as judged.
    void order_by_price_form() {
        const auto& properties = plan_.merit.properties();
        const auto price = std::find(properties.begin(), properties.end(), "price");
        if (price == properties.end()) return;
        const std::ptrdiff_t at = price - properties.begin();
        for (const std::string& form : price_form_names)
            result_.order_by_price_form.emplace_back(form, first_ones(form, static_cast<std::size_t>(at)));
    }

    std::vector<std::string> first_ones(const std::string& form, std::size_t price) const {
        std::vector<std::pair<double, const Metal*>> merits;
        merits.reserve(judged_.size());
        std::vector<double> values;
        for (const Judged& j : judged_) {
            if (form == request_.conditions.price_form) {
                merits.emplace_back(j.merit, j.metal);
                continue;
            }
            values = j.values;
            values[price] = price_in(form, j, values[price]);
            if (!std::isnan(values[price])) merits.emplace_back(plan_.merit.value(values), j.metal);
        }
        const auto end = merits.begin() + static_cast<std::ptrdiff_t>(std::min(price_form_rows, merits.size()));
        std::partial_sort(merits.begin(), end, merits.end(), [&](const auto& a, const auto& b) {
            if (a.first == b.first) return a.second->slug < b.second->slug;
            return plan_.best_high ? a.first > b.first : a.first < b.first;
        });
        std::vector<std::string> slugs;
        for (auto m = merits.begin(); m != end; ++m) slugs.push_back(m->second->slug);
        return slugs;
    }

    /// NaN where there is none. `asked`: the price in the form that was asked for.
    double price_in(const std::string& form, const Judged& j, double asked) const {
        if (request_.conditions.price_form == "exchange") return asked * form_factor(catalogue_, form, j.metal->family);
        Conditions conditions = request_.conditions;
        conditions.price_form = form;
        const Result<Evaluated> e = evaluate(catalogue_, *j.metal, "price", conditions);
        return e ? e->value_si : no_number;
    }

    const Catalogue& catalogue_;
    const GoalPlan& plan_;
    const RankRequest& request_;
    Judge judge_;
    bool few_;                   // everything is told of each at once
    bool keep_ = true;           // their samples
    std::vector<Judged> judged_; // these three go together
    std::vector<Standing> standings_;
    std::vector<std::vector<double>> samples_; // only where they are kept
    RankResult result_;
};

} // namespace

std::optional<Evaluated> RankResult::input(const RankedMetal& of, const std::string& property) const {
    for (const RankInput& i : of.inputs)
        if (i.property == property) return i.value;
    if (!of.inputs.empty() || !merit.uses(property)) return std::nullopt;
    Conditions there = conditions;
    there.temperature_K = of.at_K;
    Result<Evaluated> value = merit.input(*catalogue, *of.metal, property, there);
    return value ? std::optional(std::move(*value)) : std::nullopt;
}

Result<std::vector<const Metal*>> list_metals(const Catalogue& catalogue, const std::string& find,
                                              const std::vector<std::string>& where, const Conditions& conditions) {
    const auto parsed = conditions_of(catalogue, where);
    if (!parsed) return parsed.problem();
    std::vector<const Metal*> out;
    const auto named = search_metals(catalogue, find);
    if (const std::string known = not_kept(catalogue, find); named.empty() && !known.empty())
        return Problem{Problem::Kind::unknown, known, 0};
    for (const Metal* metal : named) {
        const bool meets = std::all_of(parsed->begin(), parsed->end(), [&](const Condition& condition) {
            const Inputs inputs = look_up(catalogue, *metal, condition.names(), conditions);
            return inputs.missing.empty() && condition.holds(nominal(inputs.values), *metal);
        });
        if (meets) out.push_back(metal);
    }
    return out;
}

Result<RankResult> rank(const Catalogue& catalogue, const RankRequest& request, const Progress& progress) {
    const Result<GoalPlan> plan = plan_goal(catalogue, request.goal);
    if (!plan) return plan.problem();
    std::vector<const Metal*> field;
    for (const std::string& word : request.from) {
        const Result<const Metal*> metal = find_metal(catalogue, word);
        if (!metal) return metal.problem();
        if (std::find(field.begin(), field.end(), *metal) == field.end()) field.push_back(*metal);
    }
    if (request.from.empty())
        for (const Metal& m : catalogue.metals) field.push_back(&m);
    return Ranking(catalogue, *plan, request, field.size()).run(field, progress);
}

} // namespace pourbook
