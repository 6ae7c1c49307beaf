#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

/// Blank: not worked out (see core/ranking/order.hpp).
DataCell count_if_any(std::size_t n) {
    return n ? DataCell::figure(static_cast<double>(n), std::to_string(n)) : DataCell::figure(no_number, "");
}

DataCell share(double p) {
    return DataCell::figure(100 * p, std::isnan(p) ? "" : significant(100 * p, 2));
}

/// Of a goal with a fall: the tube that each metal makes.
std::vector<DataColumn> tube_columns(const ShownCurrency& money) {
    return {{"wall_m", "wall", "m", true},
            {"tube_mass_kg", "mass of the tube", "kg", true},
            money_column("tube_cost_", "cost of the tube", money)};
}

void add_tube_cells(std::vector<DataCell>& row, const RankedTube& tube, const ShownCurrency& money) {
    for (const double x : {tube.wall_m, tube.mass_kg, money.shown(tube.cost_usd)})
        row.push_back(DataCell::figure(x, std::isfinite(x) ? significant(x, 4) : ""));
}

DataTable ranked(const RankResult& r, const DocumentSetting& setting) {
    const MeritCells merit(r.formula, r.unit, setting);
    const ShownCurrency money = shown_currency(setting.catalogue, setting.units);
    DataTable table{"Ranking", {{"rank", "rank", "", true}}, {}};
    add_metal_columns(table);
    merit.add_columns(table, "", "");
    table.columns.push_back({"p_first", "first in", "%", true});
    table.columns.push_back({"rank_low", "best rank", "", true});
    table.columns.push_back({"rank_high", "worst rank", "", true});
    table.columns.push_back({"tied_with", "not told apart from"});
    if (r.fall)
        for (const DataColumn& c : tube_columns(money)) table.columns.push_back(c);
    const auto inputs = r.ranked.empty() ? std::vector<const Property*>{}
                                         : input_properties(r.ranked.front().inputs, setting.catalogue);
    for (const Property* p : inputs) table.columns.push_back(column_of(*p, setting.units));
    for (const RankedMetal& m : r.ranked) {
        std::vector<DataCell> row = {count_if_any(m.place.rank)};
        add_metal_cells(row, *m.metal);
        merit.add_cells(row, m.place);
        row.insert(row.end(), {share(m.place.p_first), count_if_any(m.place.rank_low), count_if_any(m.place.rank_high),
                               DataCell::words(joined(m.place.tied_with, " "))});
        if (r.fall) add_tube_cells(row, m.tube.value_or(RankedTube{}), money);
        add_input_cells(row, inputs, m.inputs, setting.units);
        table.rows.push_back(std::move(row));
    }
    return table;
}

} // namespace

Document document_of(const RankResult& r, const DocumentSetting& setting) {
    Document out = start_document(r.label.empty() ? r.formula : r.label, r.conditions, setting, r.to_K);
    out.conditions.insert(
        out.conditions.end(),
        {{"formula", r.formula}, {"best", r.best_high ? "high" : "low"}, {"holding", name_of(r.holding)}});
    for (const std::string& note : {r.sentence, r.settling.sentence})
        if (!note.empty()) out.notes.push_back(note);
    if (r.ranked.size() < r.ranked_in_all)
        out.notes.push_back("the first " + std::to_string(r.ranked.size()) + " of " + std::to_string(r.ranked_in_all) +
                            " ranked");
    out.parts.push_back(ranked(r, setting));
    add_left_out(out, "Left out", r.excluded);
    add_left_out(out, "Cannot be ranked", r.unrankable);
    collect_sources(out, setting.catalogue);
    return out;
}

Document document_of(const TradeoffResult& r, const DocumentSetting& setting) {
    const auto named = [](const std::string& label, const std::string& formula) {
        return label.empty() ? formula : label;
    };
    const std::string first = named(r.first_label, r.first_formula), second = named(r.second_label, r.second_formula);
    Document out = start_document(first + " and " + second, r.conditions, setting, r.to_K);
    out.conditions.insert(out.conditions.end(), {{"first formula", r.first_formula},
                                                 {"first best", r.first_high ? "high" : "low"},
                                                 {"second formula", r.second_formula},
                                                 {"second best", r.second_high ? "high" : "low"}});
    const MeritCells one(r.first_formula, r.first_unit, setting), two(r.second_formula, r.second_unit, setting);
    DataTable table{"Two goals", {}, {}};
    add_metal_columns(table);
    one.add_columns(table, "first_", first + ", ");
    two.add_columns(table, "second_", second + ", ");
    table.columns.push_back({"on_front", "on the front"});
    table.columns.push_back({"beaten_by", "beaten in both by"});
    table.columns.push_back({"sources", "sources"});
    for (const TradeoffPoint& p : r.points) {
        std::vector<DataCell> row;
        add_metal_cells(row, *p.metal);
        one.add_cells(row, p.first);
        two.add_cells(row, p.second);
        DataCell sources;
        sources.sources = p.sources;
        row.insert(row.end(), {DataCell::words(p.on_front ? "yes" : "no"), DataCell::words(p.beaten_by), sources});
        table.rows.push_back(std::move(row));
    }
    out.parts.push_back(std::move(table));
    add_left_out(out, "Left out", r.excluded);
    add_left_out(out, "Cannot be ranked", r.unrankable);
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
