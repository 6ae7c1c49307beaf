#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/casting_words.hpp"

#include <array>
#include <cmath>
#include <utility>

namespace pourbook {
namespace {

/// A table of one row, and each of its figures for programs.
class OneRow {
public:
    OneRow(Document& out, const char* title) : out_(out), table_{title, {}, {{}}, in::file} {}

    void add(const std::string& id, const std::string& title, DataCell cell, const std::string& unit = "",
             bool number = false) {
        table_.columns.push_back({id, title, unit, number});
        out_.figures.emplace_back(id, cell, "", in::program);
        table_.rows.front().push_back(std::move(cell));
    }
    DataTable finished() { return std::move(table_); }

private:
    Document& out_;
    DataTable table_;
};

DataCell figure(double x) {
    return DataCell::figure(x, significant(x, 3));
}

/// The ratio, or the difference where a ratio has no meaning; the other is null for programs.
void add_margin(OneRow& row, Document& out, const VersusResult& r) {
    const bool ratio = !std::isnan(r.ratio_median);
    const std::string shown = ratio ? "ratio" : "difference", other = ratio ? "difference" : "ratio";
    const std::array<std::pair<const char*, const char*>, 3> ends = {
        {{"_median", ""}, {"_low90", ", 90 % low"}, {"_high90", ", 90 % high"}}};
    const std::array<double, 3> figures =
        ratio ? std::array{r.ratio_median, r.ratio_low90, r.ratio_high90}
              : std::array{r.difference_median, r.difference_low90, r.difference_high90};
    for (std::size_t i = 0; i < ends.size(); ++i) {
        row.add(shown + ends[i].first, shown + ends[i].second, figure(figures[i]), r.difference_unit, true);
        out.figures.emplace_back(other + ends[i].first, Value(), in::program);
    }
    out.figures.emplace_back("difference_unit", ratio ? Value() : Value(r.difference_unit), in::program);
}

DataTable answer_of(Document& out, const VersusResult& r) {
    OneRow row(out, "Answer");
    row.add("winner", "better", r.tie ? DataCell::words("not told apart") : DataCell::words(r.better.metal->slug));
    if (r.tie) out.figures.back().cell = {}; // null for programs
    add_margin(row, out, r);
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

/// For programs, and as a table in files where there are any.
DataTable flips_of(const VersusResult& r) {
    DataTable table{"What would turn it", {}, {}, in::program | (r.flips.empty() ? 0 : in::file), "flips"};
    table.columns = {
        {"change", "change", "", false}, {"threshold", "threshold", "%", true}, {"then", "better then", "", false}};
    for (const Flip& f : r.flips)
        table.rows.push_back({DataCell::words(f.change), std::isnan(f.threshold) ? DataCell() : figure(f.threshold),
                              DataCell::words(f.then)});
    return table;
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
    out.figures.emplace_back("unit", r.unit, in::program);
    out.figures.emplace_back("deciding", r.deciding.empty() ? Value() : Value(r.deciding), in::program);
    out.figures.emplace_back("sentence", r.sentence, in::program);
    out.figures.emplace_back("in_spite_of", r.in_spite_of, in::program);
    out.figures.emplace_back("sources", r.sources, in::program);
    out.figures.emplace_back("state", of_casting(r.conditions) ? casting_words(*r.conditions.casting) : "handbook",
                             in::program);
    out.say(r.sentence, in::text | in::file);
    add_side(out, "better", r.better, setting);
    add_side(out, "worse", r.worse, setting);
    for (const std::string& key : r.sources)
        if (const Reference* reference = setting.catalogue.reference(key))
            out.say("  [" + key + "] " + reference->full(), in::text, "      ");
    out.say("Data version " + out.data_version, in::text);
    out.parts.push_back(answer_of(out, r));
    out.parts.push_back(flips_of(r));
    out.parts.push_back(values_of(r, setting));
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
