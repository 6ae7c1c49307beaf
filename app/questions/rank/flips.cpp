#include "questions/rank/flips.hpp"

#include "core/evaluate/sampled.hpp"
#include "core/laws/casting_value.hpp"
#include "core/materials/names.hpp"
#include "core/quantity/format.hpp"
#include "core/ranking/order.hpp"
#include "questions/say/casting_words.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <utility>

namespace pourbook {
namespace {

constexpr double least_content_searched_wt = 0.1, most_pores_searched = 0.15;
constexpr int halvings = 40;

/// A quantity drawn in one of the two, by its key.
struct Drawn {
    std::string key;
    double low = 0, high = 0, searched_to = 0;
    bool pores = false;
};

void add_once(std::vector<Drawn>& all, const Drawn& one) {
    if (std::none_of(all.begin(), all.end(), [&](const Drawn& d) { return d.key == one.key; })) all.push_back(one);
}

/// The foreign elements and the pores of one side's castings.
std::vector<Drawn> drawn_in(const VersusSide& side) {
    std::vector<Drawn> out;
    const std::string contents = content_key(*side.metal, ""), pores = state_key(*side.metal, "porosity");
    for (const RankInput& i : side.inputs) {
        for (const Term& t : i.value.terms)
            for (const Between& b : t.between)
                if (b.key.starts_with(contents))
                    add_once(out, {b.key, b.low, b.high, std::max(least_content_searched_wt, 2 * b.high), false});
        for (const Pores& p : i.value.pores)
            if (p.share.key == pores) add_once(out, {pores, p.share.low, p.share.high, most_pores_searched, true});
    }
    return out;
}

std::vector<RankInput> with_fixed_inputs(std::vector<RankInput> inputs, const std::string& key, double amount) {
    for (RankInput& i : inputs) i.value = with_fixed(std::move(i.value), key, amount);
    return inputs;
}

constexpr double open_at_most = 0.8; // chance of the likelier one in what is called a draw

class Flips {
public:
    Flips(VersusResult& r, const Catalogue& catalogue, const GoalPlan& plan, std::size_t samples, std::uint64_t seed)
        : r_(r), catalogue_(catalogue), plan_(plan), samples_(samples), seed_(seed) {}

    void run() {
        for (const VersusSide* side : {&r_.better, &r_.worse})
            for (const Drawn& d : drawn_in(*side)) add_amount(*side, d);
        std::stable_sort(amounts_.begin(), amounts_.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first; });
        for (auto& [away, flip] : amounts_) r_.flips.push_back(std::move(flip));
        for (const VersusSide* side : {&r_.better, &r_.worse})
            for (const std::string& treatment : treatment_names) add_treatment(*side, treatment);
        r_.flip_sentence = sentence();
    }

private:
    /// Above 0 where the better of the answer is ahead, the quantity of one side being this amount.
    double lead(const VersusSide& side, const Drawn& d, double amount) const {
        const double changed = plan_.merit.value(nominal(with_fixed_inputs(side.inputs, d.key, amount)));
        const bool of_better = &side == &r_.better;
        const double a = of_better ? changed : plan_.merit.value(nominal(r_.better.inputs)),
                     b = of_better ? plan_.merit.value(nominal(r_.worse.inputs)) : changed;
        return plan_.worse(b, a) ? std::abs(a - b) : -std::abs(a - b);
    }

    void add_amount(const VersusSide& side, const Drawn& d) {
        double low = 0, high = d.searched_to;
        const bool first_ahead = lead(side, d, low) > 0;
        if (first_ahead == (lead(side, d, high) > 0)) return;
        for (int i = 0; i < halvings; ++i) {
            const double middle = (low + high) / 2;
            ((lead(side, d, middle) > 0) == first_ahead ? low : high) = middle;
        }
        Flip f;
        f.metal = side.metal;
        f.threshold = d.pores ? 100 * low : low;
        f.element = d.pores ? "" : element_of(d.key);
        f.then = r_.worse.metal->slug;
        const std::string amount =
            std::string(first_ahead ? "more" : "less") + " than about " + significant(f.threshold, 2) + " % ";
        const std::string name = short_name(*side.metal);
        f.change = d.pores ? amount + "of the " + name + " is pores"
                           : amount + element_word(catalogue_, f.element) + " stays in the " + name;
        const double away = std::abs(low - (d.low + d.high) / 2) / (d.high - d.low + 1e-12);
        amounts_.push_back({away, std::move(f)});
    }

    static std::string element_of(const std::string& key) {
        std::string rest = key.substr(key.find(".content.") + 9);
        return rest.substr(0, rest.find('.'));
    }

    static std::string short_name(const Metal& metal) { return metal.name.substr(0, metal.name.find(" (")); }

    void add_treatment(const VersusSide& side, const std::string& treatment) {
        const std::string now =
            r_.conditions.casting->treatment.empty() ? treatment_names.front() : r_.conditions.casting->treatment;
        if (treatment == now || side.metal->is_element()) return;
        Conditions c = r_.conditions;
        c.temperature_K = side.at_K;
        c.casting->treatment = treatment;
        Inputs changed = plan_.merit.inputs(catalogue_, *side.metal, c);
        if (!changed.missing.empty() || same_figures(changed.values, side.inputs)) return;
        const bool of_better = &side == &r_.better;
        const double p =
            chance(of_better ? changed.values : r_.better.inputs, of_better ? r_.worse.inputs : changed.values);
        const bool better_wins = p >= told_apart, worse_wins = p <= 1 - told_apart;
        if (r_.tie ? !better_wins && !worse_wins : better_wins) return;
        if (!better_wins && !worse_wins && std::max(p, 1 - p) > open_at_most) return; // doubt alone is no flip
        Flip f;
        f.metal = side.metal;
        f.then = better_wins ? r_.better.metal->slug : worse_wins ? r_.worse.metal->slug : "draw";
        f.change = treatment + " " + side.metal->name;
        r_.flips.push_back(std::move(f));
    }

    /// A treatment that changes nothing here.
    static bool same_figures(const std::vector<RankInput>& a, const std::vector<RankInput>& b) {
        for (std::size_t i = 0; i < a.size(); ++i)
            if (std::abs(a[i].value.value_si - b[i].value.value_si) > 1e-6 * std::abs(b[i].value.value_si))
                return false;
        return true;
    }

    double chance(const std::vector<RankInput>& better, const std::vector<RankInput>& worse) const {
        Draws draws(samples_, seed_);
        const std::vector<double> a = plan_.merit.samples(better, draws), b = plan_.merit.samples(worse, draws);
        double wins = 0, all = 0;
        for (std::size_t s = 0; s < a.size(); ++s) {
            if (!std::isfinite(a[s]) || !std::isfinite(b[s])) continue;
            wins += plan_.worse(b[s], a[s]) ? 1 : 0;
            all += 1;
        }
        return all > 0 ? wins / all : 0.5;
    }

    std::string who(const std::string& slug) const {
        return (slug == r_.better.metal->slug ? r_.better : r_.worse).metal->name;
    }

    /// The first amount and the first treatment.
    std::string sentence() const {
        std::string amount, treatment;
        for (const Flip& f : r_.flips)
            if (std::string& text = std::isnan(f.threshold) ? treatment : amount; text.empty())
                text = std::isnan(f.threshold) ? treatment_words(f) : amount_words(f);
        if (amount.empty() && treatment.empty()) return {};
        if (amount.empty()) return with_capital(treatment) + ". ";
        return amount + (treatment.empty() ? "" : "; " + treatment) + ". ";
    }

    std::string amount_words(const Flip& f) const {
        if (r_.tie) return "Where " + f.change + ", " + who(f.then) + " is ahead";
        return "It holds unless " + f.change;
    }

    std::string treatment_words(const Flip& f) const {
        const std::string what = f.change.starts_with("aged")       ? "ageing"
                                 : f.change.starts_with("annealed") ? "annealing"
                                 : f.change.starts_with("quenched") ? "quenching"
                                                                    : "leaving as cast";
        return what + " the " + f.metal->name +
               (f.then == "draw" ? " would make it a draw" : " would make " + who(f.then) + " the better");
    }

    static std::string with_capital(std::string text) {
        text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
        return text;
    }

    VersusResult& r_;
    const Catalogue& catalogue_;
    const GoalPlan& plan_;
    std::size_t samples_;
    std::uint64_t seed_;
    std::vector<std::pair<double, Flip>> amounts_; // with how far from the middle of what is drawn, in its width
};

} // namespace

void find_flips(VersusResult& r, const Catalogue& catalogue, const GoalPlan& plan, std::size_t samples,
                std::uint64_t seed) {
    if (r.better.metal != r.worse.metal && samples > 0) Flips(r, catalogue, plan, samples, seed).run();
}

} // namespace pourbook
