#include "questions/rank/rank_question.hpp"

#include <charconv>

namespace pourbook {
namespace {

QuestionField from_field() {
    using namespace input;
    QuestionField f = commas(metal("from", "only these metals, separated by commas; or stock: what is on your shelf, "
                                           "at the prices paid"));
    f.absent = "all";
    return f;
}

/// None, or enough of them for an interval.
Fault read_samples(std::size_t& samples, const std::string& text) {
    constexpr std::size_t fewest = 10, most = 200000;
    std::size_t count = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    const bool whole = error == std::errc() && end == text.data() + text.size();
    if (!whole || (count != 0 && count < fewest) || count > most)
        return unreadable("0, or a number from 10 to 200000 is expected");
    samples = count;
    return {};
}

template <class R> void add_draws(QuestionOf<R>& q, const std::string& usual) {
    using namespace input;
    q.add_read(words("samples", "samples for the intervals; 0: the figures as cited, without intervals", "", usual),
               [](R& r, const std::string& text, const Catalogue&) { return read_samples(r.samples, text); });
    q.add(whole_number("seed", "seed of the samples", "1", 0, 1e18), &R::seed);
}

/// The second goal of a tradeoff shares set-up, holding and bar with the first.
TradeoffRequest& shared(TradeoffRequest& r) {
    r.second.fall = r.first.fall;
    r.second.holding = r.first.holding;
    r.second.include_unusual = r.first.include_unusual;
    return r;
}

} // namespace

const QuestionOf<RankRequest>& rank_question() {
    using namespace input;
    using R = RankRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("rank", "order the metals by a goal");
        q.add_all(goal_question(), &R::goal);
        q.place("Which metals");
        q.add(from_field(), &R::from);
        add_also(q);
        q.place("Intervals");
        q.add(whole_number("top", "show only the first N", "all", 0, 1e6), &R::top);
        add_draws(q, "2000");
        add_ranged_conditions(q);
        as_casting(q, &R::conditions);
        return q;
    }();
    return question;
}

const QuestionOf<TradeoffRequest>& tradeoff_question() {
    using namespace input;
    using R = TradeoffRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("tradeoff", "two goals at once: which metals no other beats in both");
        const auto first = [](R& r) -> GoalWords& { return r.first; };
        q.add_all(goal_question(), first);
        q.place("Second goal");
        q.add(
            words("and", "the other goal, by name", "light-conductor"), [](R & r) -> auto& { return r.second.goal; });
        q.add(
            words("and-formula", "or by its formula over properties", "\"1 / density\""),
            [](R & r) -> auto& { return r.second.formula; });
        q.last().excludes = "and";
        q.add_read(choice("and-best", "which end is best, with its formula", {"high", "low"}),
                   [](R& r, const std::string& text, const Catalogue&) { return read_best(r.second.best_high, text); });
        q.place("Which metals");
        q.add(from_field(), &R::from);
        add_also(q);
        q.place("Intervals");
        add_draws(q, "1000");
        add_ranged_conditions(q);
        as_casting(q, &R::conditions);
        q.finish([](R& r) { shared(r); });
        return q;
    }();
    return question;
}

const QuestionOf<VersusRequest>& versus_question() {
    using namespace input;
    using R = VersusRequest;
    static const QuestionOf<R> question = [] {
        QuestionOf<R> q("versus", "two metals and a goal: one sentence with the ratio, the interval, the reason");
        q.place("Metals");
        q.add(needed(by_place(metal("metal", "the one"))), &R::a);
        q.add(needed(by_place(metal("other", "the other"))), &R::b);
        for (const QuestionField& field : goal_question().fields)
            if (field.name != "where" && field.name != "include-unusual") // said, not enforced: the metals are named
                q.add_one(goal_question(), field.name, &R::goal);
        q.place("Intervals");
        q.add(whole_number("samples", "samples for the intervals", "4000", 10, 200000),
              &R::samples); // no answer without
        q.add(whole_number("seed", "seed of the samples", "1", 0, 1e18), &R::seed);
        add_ranged_conditions(q);
        as_casting(q, &R::conditions);
        return q;
    }();
    return question;
}

} // namespace pourbook
