#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {
namespace {

/// A table of one row, and each of its figures for programs.
class OneRow {
public:
    OneRow(Document& out, const char* title) : out_(out), table_{title, {}, {{}}, in::file} {}

    void add(const char* id, const char* title, DataCell cell, const char* unit = "", bool number = false) {
        table_.columns.push_back({id, title, unit, number});
        out_.figures.emplace_back(id, cell, "", in::program);
        table_.rows.front().push_back(std::move(cell));
    }
    DataTable finished() { return std::move(table_); }

private:
    Document& out_;
    DataTable table_;
};

DataCell ratio(double x) {
    return DataCell::figure(x, significant(x, 3));
}

DataTable answer_of(Document& out, const VersusResult& r) {
    OneRow row(out, "Answer");
    row.add("winner", "better", r.tie ? DataCell::words("not told apart") : DataCell::words(r.better.metal->slug));
    if (r.tie) out.figures.back().cell = {}; // null for programs
    row.add("ratio_median", "ratio", ratio(r.ratio_median), "", true);
    row.add("ratio_low90", "ratio, 90 % low", ratio(r.ratio_low90), "", true);
    row.add("ratio_high90", "ratio, 90 % high", ratio(r.ratio_high90), "", true);
    DataCell chance = DataCell::figure(100 * r.p_winner, significant(100 * r.p_winner, 3));
    chance.value = r.p_winner;
    row.add("p_winner", "chance of being better", std::move(chance), "%", true);
    row.add("reason", "why", DataCell::words(r.reason));
    return row.finished();
}

void add_side(Document& out, const std::string& id, const VersusSide& side, const DocumentSetting& setting) {
    const auto told = [&](const char* of, Value value) {
        out.figures.emplace_back(id + "." + of, std::move(value), in::program);
    };
    told("metal", side.metal->slug);
    told("merit", number_or_null(side.merit));
    told("worst_at_K", number_or_null(side.at_K));
    told("from_memory", side.from_memory);
    told("inputs", Value());
    if (!side.barred.empty()) told("caution", side.barred);
    for (const RankInput& i : side.inputs)
        if (const Property* p = setting.catalogue.property(i.property))
            out.figures.emplace_back(id + ".inputs." + i.property, cell_of(*p, i.value, setting.units),
                                     column_of(*p, setting.units).unit, in::program);
    out.say(side.barred.empty() ? "" : side.metal->name + ": " + side.barred, in::text | in::file, "  ");
}

DataTable values_of(const VersusResult& r, const DocumentSetting& setting) {
    DataTable values{"Values", {}, {}, in::file};
    add_metal_columns(values);
    const auto inputs = input_properties(r.better.inputs, setting.catalogue);
    for (const Property* p : inputs) values.columns.push_back(column_of(*p, setting.units));
    for (const VersusSide* side : {&r.better, &r.worse}) {
        values.rows.emplace_back();
        add_metal_cells(values.rows.back(), *side->metal);
        add_input_cells(values.rows.back(), inputs, side->inputs, setting.units);
    }
    return values;
}

} // namespace

Document document_of(const VersusResult& r, const DocumentSetting& setting) {
    Document out =
        start_document(r.better.metal->name + " against " + r.worse.metal->name, r.conditions, setting, r.to_K);
    out.figures.emplace_back("goal", r.label.empty() ? r.formula : r.label, in::file);
    out.figures.emplace_back("goal", r.goal.empty() ? Value() : Value(r.goal), in::program);
    out.figures.emplace_back("formula", r.formula);
    out.figures.emplace_back("best", r.best_high ? "high" : "low", in::file);
    for (const auto& [id, words] : {std::pair{"unit", &r.unit}, {"deciding", &r.deciding}, {"sentence", &r.sentence}})
        out.figures.emplace_back(id, *words, in::program);
    out.figures.emplace_back("sources", r.sources, in::program);
    out.say(r.sentence, in::text | in::file);
    add_side(out, "better", r.better, setting);
    add_side(out, "worse", r.worse, setting);
    for (const std::string& key : r.sources)
        if (const Reference* reference = setting.catalogue.reference(key))
            out.say("  [" + key + "] " + reference->full(), in::text, "      ");
    out.say("Data version " + out.data_version, in::text);
    out.parts.push_back(answer_of(out, r));
    out.parts.push_back(values_of(r, setting));
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
