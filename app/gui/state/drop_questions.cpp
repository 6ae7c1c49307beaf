#include "gui/state/drop_questions.hpp"

#include "questions/metals/temperature_words.hpp"

#include <algorithm>

namespace pourbook {
namespace {

std::string pinned_or_first(const std::string& slug, const std::vector<std::string>& pins) {
    if (std::find(pins.begin(), pins.end(), slug) != pins.end()) return slug;
    return pins.empty() ? std::string() : pins.front();
}

} // namespace

DropRequest DropQuestions::request(const SetupWords& setup, const Conditions& conditions) const {
    DropRequest r;
    r.setup = setup;
    r.conditions = conditions;
    return r;
}

std::string DropQuestions::metal() const {
    return pinned_or_first(view_.drop.metal, view_.pins);
}

std::string DropQuestions::second_metal() const {
    return pinned_or_first(view_.drop.second_metal, view_.pins);
}

const DropQuestions::Falls* DropQuestions::falls(const Conditions& conditions) {
    return falls_by(falls_, conditions);
}

const DropQuestions::Falls* DropQuestions::falls_in_nitrogen(Conditions conditions) {
    static const double boiling_K = *temperature_from("liquid nitrogen");
    conditions.temperature_K = boiling_K;
    return falls_by(cold_, conditions);
}

const DropQuestions::Falls* DropQuestions::falls_by(Background<FallsAsked, Falls>& by, const Conditions& conditions) {
    DropRequest r = request(view_.drop_setup, conditions);
    r.wall = view_.drop.wall;
    const std::vector<std::string> metals = view_.pins;
    const auto entries = workshop_.shared_entries(known_kind("trial"));
    return by.ask({r, metals, workshop_.serial()}, [this, r, metals, entries]() -> Falls {
        Result<std::vector<DropOfMetal>> drops = drop_in_each(catalogue_, r, metals);
        if (!drops) return drops.problem();
        if (r.wall != WallWords{}) return FallsBeside{std::move(*drops), {}}; // no trial is of such a wall
        Result<MeasuredFalls> measured = measured_falls(catalogue_, trials_from(*entries), r.setup, r.conditions);
        if (!measured) return measured.problem();
        return FallsBeside{std::move(*drops), std::move(*measured)};
    });
}

const Result<SweepResult>* DropQuestions::sweep(const Conditions& conditions) {
    SweepRequest r;
    r.setup = view_.drop_setup;
    r.conditions = conditions;
    r.metals = view_.pins;
    r.steps = 25;
    const std::string over = view_.drop.over, range = view_.drop.range;
    return sweep_.ask({r, over, range}, [this, r, over, range]() -> Result<SweepResult> {
        const Result<SweepRequest> ranged = with_range(catalogue_, r, over, range);
        if (!ranged) return ranged.problem();
        return pourbook::sweep(catalogue_, *ranged);
    });
}

const Result<AgainstResult>* DropQuestions::against(const Conditions& conditions) {
    AgainstRequest r{request(view_.drop_setup, conditions), request(view_.drop.second, conditions)};
    r.first.wall = view_.drop.wall;
    r.first.metal = metal();
    r.second.metal = second_metal();
    return against_.ask(r, [this, r] { return pourbook::against(catalogue_, r); });
}

Result<DropSetup> DropQuestions::read(const DropRequest& asked) const {
    if (asked.wall == WallWords{}) return drop_setup(catalogue_, asked.setup);
    std::vector<WallPiece> pieces;
    return whole_setup(catalogue_, asked, tube_metal(catalogue_, asked.metal, "", asked.conditions), pieces);
}

const Result<DropSetup>& DropQuestions::setup(const SetupWords& words, const WallWords& wall,
                                              const Conditions& conditions) {
    constexpr std::size_t kept = 4; // A, B and what is being typed
    DropRequest asked = request(words, conditions);
    asked.wall = wall;
    asked.metal = metal();
    for (const ReadSetup& known : setups_)
        if (known.asked == asked) return known.made;
    if (setups_.size() == kept) setups_.pop_back();
    Result<DropSetup> made = read(asked);
    return setups_.emplace_front(ReadSetup{std::move(asked), std::move(made)}).made;
}

} // namespace pourbook
