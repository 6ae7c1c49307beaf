// The ranking as JSON and as text.
#include "answers/parts/json.hpp"
#include "answers/parts/text.hpp"

#include "answers/drop/eddy_words.hpp"
#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"
#include "questions/rank/tube_columns.hpp"
#include "questions/say/shown_merit.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace pourbook {
namespace {

Json left_out(const std::vector<LeftOut>& list, bool with_missing) {
    Json out = Json::array();
    for (const LeftOut& l : list) {
        Json entry = {{"metal", l.metal->slug}};
        if (with_missing) entry["missing"] = l.missing;
        entry["reason"] = l.reason;
        out.push_back(entry);
    }
    return out;
}

/// Null: not worked out (see core/ranking/order.hpp).
Json counted(std::size_t rank) {
    return rank ? Json(rank) : Json(nullptr);
}

Json ranked_of(const RankedMetal& r, const Catalogue& catalogue) {
    const Place& p = r.place;
    Json out = {{"rank", p.rank},
                {"metal", r.metal->slug},
                {"median", p.median},
                {"low90", json_number(p.low90)},
                {"high90", json_number(p.high90)},
                {"p_first", json_number(p.p_first)},
                {"rank_low", counted(p.rank_low)},
                {"rank_high", counted(p.rank_high)},
                {"tied_with", p.tied_with},
                {"from_memory", r.from_memory},
                {"inputs", json_inputs(r.inputs, catalogue)}};
    if (r.tube) {
        out["wall_m"] = json_number(r.tube->wall_m);
        out["tube_mass_kg"] = json_number(r.tube->mass_kg);
        out["cost_usd"] = json_number(r.tube->cost_usd);
    }
    return out;
}

Table head_of(const RankResult& r, const Catalogue& catalogue, UnitSystem units) {
    Table t{{{"rank", true},
             {"metal"},
             {"value", true},
             {"90 % low", true},
             {"90 % high", true},
             {"first", true},
             {"ranks", true}},
            {}};
    if (r.fall)
        for (const TubeColumn& c : tube_columns(catalogue, units)) t.columns.push_back({c.head, true});
    for (const RankInput& i : r.ranked.front().inputs) {
        const std::string unit = shown_unit(*catalogue.property(i.property), units);
        t.columns.push_back({i.property + (unit.empty() ? "" : ", " + unit), true});
    }
    t.columns.push_back({"condition"});
    t.columns.push_back({"mark"});
    return t;
}

std::string figure(double x) {
    return std::isnan(x) ? "" : significant(x, 3);
}

std::vector<std::string> row_of(const RankedMetal& m, const ShownMerit& merit, const Catalogue& catalogue,
                                UnitSystem units) {
    const Place& p = m.place;
    const double low = merit.number(p.low90), high = merit.number(p.high90);
    std::vector<std::string> row = {std::to_string(p.rank),
                                    m.metal->slug,
                                    significant(merit.number(p.median), 3),
                                    figure(std::min(low, high)),
                                    figure(std::max(low, high)),
                                    std::isnan(p.p_first) ? "" : significant(100 * p.p_first, 2) + " %",
                                    p.rank_low ? std::to_string(p.rank_low) + "-" + std::to_string(p.rank_high)
                                               : "not counted"};
    if (m.tube)
        for (const TubeColumn& c : tube_columns(catalogue, units)) row.push_back(figure(c.number(*m.tube)));
    for (const RankInput& i : m.inputs) row.push_back(shown_value(*catalogue.property(i.property), i.value, units));
    row.push_back(m.inputs.empty() ? "" : m.inputs.front().value.condition);
    const bool stale = std::any_of(m.inputs.begin(), m.inputs.end(), [](const RankInput& i) { return i.value.stale; });
    row.push_back(std::string(m.from_memory ? "remembered" : "") + (stale ? " stale price" : ""));
    return row;
}

Table table_of(const RankResult& r, const ShownMerit& merit, const Catalogue& catalogue, UnitSystem units) {
    Table t = head_of(r, catalogue, units);
    for (const RankedMetal& m : r.ranked) t.rows.push_back(row_of(m, merit, catalogue, units));
    return t;
}

/// "cylinder 12 x 10 mm, N42, 1.30 T; bore 13 mm, length 1000 mm, wall: what 20 USD buys".
void write_fall(std::ostream& out, const FallTime& fall, const Catalogue& catalogue, UnitSystem units) {
    const DropSetup& setup = fall.setup();
    out << wrapped(magnet_text(setup, units) + "; " + tube_text(setup.inputs, units), page_width, "    ");
    if (fall.holding() == Holding::mass)
        out << "the wall is free instead: each tube has the mass " << mass_text(fall.held_si(), units) << "\n";
    if (fall.holding() == Holding::budget)
        out << "the wall is free instead: what " << shown_money(catalogue, fall.held_si(), 3, units)
            << " buy of each metal, without making or loss\n";
    for (const std::string& a : setup.assumptions) out << wrapped("assumed: " + a, page_width, "    ");
}

void write_left_out(std::ostream& out, const std::string& title, const std::vector<LeftOut>& list) {
    if (list.empty()) return;
    out << "\n" << title << "\n";
    for (const LeftOut& l : list) out << wrapped("  " + l.metal->slug + ": " + l.reason, page_width, "      ");
}

} // namespace

std::string json_of(const RankResult& result, const Catalogue& catalogue) {
    Json out = {{"goal", result.goal.empty() ? Json(nullptr) : Json(result.goal)},
                {"formula", result.formula},
                {"unit", result.unit},
                {"best", result.best_high ? "high" : "low"},
                {"temperature_K", result.conditions.temperature_K},
                {"temperature_to_K", json_number(result.to_K)},
                {"over_the_range", std::isnan(result.to_K) ? Json(nullptr) : Json("worst")},
                {"condition", result.conditions.condition},
                {"holding", name_of(result.holding)},
                {"samples", result.samples}};
    if (result.fall) {
        out["held"] = json_number(result.fall->held_si()); // kg or USD
        out["rate_of_exchange"] = json_rate(catalogue);
        out["assumptions"] = result.fall->setup().assumptions;
    }
    out["results"] = Json::array();
    for (const RankedMetal& r : result.ranked) out["results"].push_back(ranked_of(r, catalogue));
    if (!result.settling.sentence.empty())
        out["settling"] = {
            {"cause", result.settling.cause}, {"share", result.settling.share}, {"sentence", result.settling.sentence}};
    if (!result.order_by_price_form.empty()) {
        out["price_form"] = result.conditions.price_form;
        for (const auto& [form, slugs] : result.order_by_price_form) out["order_by_price_form"][form] = slugs;
    }
    out["ranked_in_all"] = result.ranked_in_all;
    out["excluded"] = left_out(result.excluded, false);
    out["unrankable"] = left_out(result.unrankable, true);
    out["data_version"] = catalogue.data_version;
    return json_text(out);
}

std::string text_of(const RankResult& r, const Catalogue& catalogue, UnitSystem units) {
    const ShownMerit merit(catalogue, r.formula, r.unit, units);
    std::ostringstream out;
    if (!r.sentence.empty()) out << wrapped(r.label + ": " + r.sentence, page_width, "");
    out << r.formula << " [" << (merit.unit().empty() ? "1" : merit.unit()) << "], best "
        << (r.best_high ? "high" : "low") << ", at " << trimmed(r.conditions.temperature_K, 6) << " K"
        << (std::isnan(r.to_K) ? "" : " to " + trimmed(r.to_K, 6) + " K (the worst over the range counts)")
        << ", condition: " << r.conditions.condition << "\n";
    if (r.fall) write_fall(out, *r.fall, catalogue, units);
    out << "\n";
    if (r.ranked.empty()) out << "no metal can be ranked: see below\n";
    if (!r.ranked.empty()) out << as_text(table_of(r, merit, catalogue, units));
    if (const std::string rate = rate_sentence(catalogue); !rate.empty() && (r.fall || !r.order_by_price_form.empty()))
        out << wrapped(rate, page_width, "    ");
    if (r.ranked.size() < r.ranked_in_all)
        out << "(" << r.ranked_in_all - r.ranked.size() << " more: leave out --top)\n";
    for (const auto& [form, slugs] : r.order_by_price_form)
        out << wrapped("at " + form + " prices" + (form == r.conditions.price_form ? " (used here)" : "") + ": " +
                           joined(slugs),
                       page_width, "    ");
    if (!r.settling.sentence.empty()) out << wrapped(r.settling.sentence, page_width, "");
    if (std::any_of(r.ranked.begin(), r.ranked.end(), [](const RankedMetal& m) { return m.from_memory; }))
        out << "remembered: a value that entered was not read in a text, only remembered\n";
    write_left_out(out, "Left out", r.excluded);
    write_left_out(out, "Can't be ranked", r.unrankable);
    out << "\nSources of each number: pourbook sheet METAL. Data version " << catalogue.data_version << "\n";
    return out.str();
}

} // namespace pourbook
