// What Rank and Compare ask: the goal as chosen in the view, and the answers about it.
#include "gui/state/session.hpp"
#include "gui/state/typed_faults.hpp"

#include <algorithm>

namespace pourbook {
GoalWords Session::with_setup(GoalWords g) const {
    if (!needs_setup(catalogue, g)) return g;
    g.fall.setup = view.drop_setup;
    if (g.holding == Holding::mass) g.fall.mass = view.rank.mass;
    if (g.holding == Holding::budget) g.fall.budget = view.rank.budget;
    return g;
}

GoalWords Session::goal_words() const {
    GoalWords g;
    g.goal = view.rank.goal;
    if (g.goal.empty()) g.formula = view.rank.formula;
    g.best_high = view.rank.best_high;
    g.where = split_conditions(view.rank.where);
    g.include_unusual = view.rank.include_unusual;
    for (const Holding h : {Holding::mass, Holding::budget})
        if (view.rank.holding == name_of(h)) g.holding = h;
    return with_setup(std::move(g));
}

RankRequest Session::rank_request() const {
    RankRequest r;
    r.goal = goal_words();
    if (view.rank.only_pinned) r.from = view.pins;
    if (view.rank.on_shelf) r.from = metals_on_the_shelf(workshop.data());
    r.conditions = part_conditions();
    r.to_K = asked_conditions().to_K;
    r.samples = view.rank.samples;
    return r;
}

VersusChoice Session::compared() const {
    VersusChoice c = view.versus;
    const auto next = [&](const std::string& other) {
        for (const std::string& slug : view.pins)
            if (slug != other) return slug;
        return std::string();
    };
    if (!is_pinned(view, c.first)) c.first = next(c.second);
    if (!is_pinned(view, c.second) || c.second == c.first) c.second = next(c.first);
    return c;
}

const Result<VersusResult>* Session::versus() {
    VersusRequest request;
    request.a = compared().first;
    request.b = compared().second;
    request.goal = goal_words();
    request.conditions = rank_request().conditions;
    request.to_K = asked_conditions().to_K;
    return versus_.ask(request, [this, request] { return pourbook::versus(catalogue, request); });
}

const Result<TradeoffResult>* Session::tradeoff() {
    const RankRequest one = rank_request();
    TradeoffRequest request;
    request.first = one.goal;
    request.second.goal = view.rank.second_goal;
    if (request.second.goal.empty()) request.second.formula = view.rank.second_formula;
    request.second.best_high = view.rank.second_high;
    request.second.include_unusual = one.goal.include_unusual;
    request.second = with_setup(request.second);
    request.from = one.from;
    request.conditions = one.conditions;
    request.to_K = one.to_K;
    return tradeoff_.ask(request,
                         [this, request](const Progress& p) { return pourbook::tradeoff(catalogue, request, p); });
}

const Result<RankResult>* Session::ranking() {
    const RankRequest request = rank_request();
    const bool at_shelf_prices = view.rank.on_shelf && !request.from.empty();
    const Catalogue& from = at_shelf_prices ? shelf_ : own_;
    return ranking_.ask({request, at_shelf_prices},
                        [&from, request](const Progress& p) { return rank(from, request, p); });
}

} // namespace pourbook
