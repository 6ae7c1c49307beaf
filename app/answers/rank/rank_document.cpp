#include "answers/rank/rank_columns.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "questions/drop/eddy_words.hpp"
#include "questions/say/hazard_mark.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr const char* rank_indent = "    ";

std::string form_words(const std::string& form, const std::vector<std::string>& slugs, const Conditions& conditions) {
    return "at " + form + " prices" + (form == conditions.price_form ? " (used here)" : "") + ": " + joined(slugs);
}

/// How many of each list people are told: as many as --top leaves of the ranking; 0: all.
std::size_t most_told(const RankResult& r) {
    return r.ranked.size() < r.ranked_in_all ? r.ranked.size() : 0;
}

std::string headline(const RankResult& r, const std::string& unit) {
    return r.formula + " [" + (unit.empty() ? "1" : unit) + "], best " + (r.best_high ? "high" : "low") + ", at " +
           celsius_text(r.conditions.temperature_K) +
           (std::isnan(r.to_K) ? "" : " to " + celsius_text(r.to_K) + " (the worst over the range counts)") +
           ", condition: " + r.conditions.condition;
}

/// "cylinder 12 x 10 mm, N42, 1.30 T; bore 13 mm, length 1000 mm", the wall that a mass or a budget makes.
void say_fall(Document& out, const FallTime& fall, const DocumentSetting& setting) {
    const DropSetup& setup = fall.setup();
    out.say(magnet_text(setup, setting.units) + "; " + tube_text(setup.inputs, setting.units), in::text, rank_indent);
    if (fall.holding() == Holding::mass)
        out.say("the wall is free instead: each tube has the mass " + mass_text(fall.held_si(), setting.units),
                in::text);
    if (fall.holding() == Holding::budget)
        out.say("the wall is free instead: what " + shown_money(setting.catalogue, fall.held_si(), 3, setting.units) +
                    " buy of each metal, without making or loss",
                in::text);
    for (const std::string& a : setup.assumptions) out.say("assumed: " + a, in::text, rank_indent);
}

void add_asked(Document& out, const RankResult& r, const DocumentSetting& setting) {
    out.figures.insert(
        out.figures.end(),
        {{"formula", r.formula}, {"best", r.best_high ? "high" : "low"}, {"holding", name_of(r.holding)}});
    const auto told = [&](const char* id, Value value) { out.figures.emplace_back(id, std::move(value), in::program); };
    told("goal", r.goal.empty() ? Value() : Value(r.goal));
    told("unit", r.unit);
    told("over_the_range", std::isnan(r.to_K) ? Value() : Value("worst"));
    told("samples", static_cast<std::int64_t>(r.samples));
    told("ranked_in_all", static_cast<std::int64_t>(r.ranked_in_all));
    if (r.fall) {
        const std::string rate = shown_rate(setting.catalogue);
        told("held", number_or_null(r.fall->held_si())); // kg or USD
        told("rate_of_exchange", rate.empty() ? Value() : Value(rate));
        told("assumptions", r.fall->setup().assumptions);
    }
    if (!r.settling.sentence.empty()) {
        told("settling.cause", r.settling.cause);
        told("settling.share", r.settling.share);
        told("settling.sentence", r.settling.sentence);
    }
    if (!r.flip_sentence.empty()) told("flip", r.flip_sentence);
    if (!r.order_by_price_form.empty()) told("price_form", r.conditions.price_form);
    for (const auto& [form, slugs] : r.order_by_price_form) told(("order_by_price_form." + form).c_str(), slugs);
}

DataTable ranked(const RankResult& r, const DocumentSetting& setting) {
    DataTable table{"Ranking", {}, {}, in::all, "results"};
    const std::vector<RankColumn> columns = rank_columns(r, setting);
    for (const RankColumn& c : columns) table.columns.push_back(c.column);
    for (const RankedMetal& m : r.ranked) {
        std::vector<DataCell>& row = table.rows.emplace_back();
        for (const RankColumn& c : columns) row.push_back(c.cell(m));
    }
    return table;
}

void say_before(Document& out, const RankResult& r, const DocumentSetting& setting) {
    out.say(r.sentence.empty() ? "" : r.label + ": " + r.sentence, in::text);
    out.say(r.sentence, in::file);
    out.say(headline(r, MeritCells(r.formula, r.unit, setting).unit()), in::text);
    if (r.fall) say_fall(out, *r.fall, setting);
    out.say(r.settling.sentence, in::file);
    out.say(r.flip_sentence, in::file);
    if (r.ranked.size() < r.ranked_in_all)
        out.say("the first " + std::to_string(r.ranked.size()) + " of " + std::to_string(r.ranked_in_all) + " ranked",
                in::file);
}

void say_after(Document& out, const RankResult& r, const DocumentSetting& setting) {
    const auto any = [&](bool (*of)(const RankedMetal&)) { return std::any_of(r.ranked.begin(), r.ranked.end(), of); };
    if (r.ranked.empty()) out.say("no metal can be ranked: see below", in::text);
    if (r.fall || !r.order_by_price_form.empty()) out.say(rate_sentence(setting.catalogue), in::text, rank_indent);
    if (r.ranked.size() < r.ranked_in_all)
        out.say("(" + std::to_string(r.ranked_in_all - r.ranked.size()) + " more: leave out --top)", in::text);
    for (auto [form, slugs] : r.order_by_price_form) {
        if (const std::size_t most = most_told(r); most && most < slugs.size()) slugs.resize(most);
        out.say(form_words(form, slugs, r.conditions), in::text, rank_indent);
    }
    out.say(r.settling.sentence, in::text);
    out.say(r.flip_sentence, in::text);
    if (any([](const RankedMetal& m) { return m.from_memory; }))
        out.say("remembered: a value that entered was not read in a text, only remembered", in::text | in::file);
    if (std::any_of(r.ranked.begin(), r.ranked.end(),
                    [&](const RankedMetal& m) { return !hazard_elements(setting.catalogue, *m.metal).empty(); }))
        out.say("hazard: the metal holds this element; the caution: pourbook sheet METAL", in::text | in::file);
    if (Sentence* years = out.say(r.price_years)) years->id = "price_years";
    if (any([](const RankedMetal& m) { return m.stale_price; }))
        out.say("stale price: a price that entered is past its period", in::text | in::file);
}

} // namespace

Document document_of(const RankResult& r, const DocumentSetting& setting) {
    Document out = start_document(r.label.empty() ? r.formula : r.label, r.conditions, setting, r.to_K);
    add_state(out, r.conditions);
    add_asked(out, r, setting);
    say_before(out, r, setting);
    out.parts.push_back(ranked(r, setting));
    say_after(out, r, setting);
    add_left_out(out, "Left out", "excluded", r.excluded, in::all);
    add_left_out(out, "Can't be ranked", "unrankable", r.unrankable, in::all);
    for (DataTable& list : out.parts) list.most = most_told(r);
    if (Sentence* last =
            out.say("Sources of each number: pourbook sheet METAL. Data version " + out.data_version, in::text))
        last->apart = true;
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
