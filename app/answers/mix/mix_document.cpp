#include "answers/mix/mix_report.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"
#include "questions/mix/mix_sheet.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

DataCell figure(double x, int digits) {
    return std::isnan(x) ? DataCell{} : DataCell::figure(x, trimmed(x, digits));
}

std::vector<std::string> keys_of(const std::vector<Citation>& citations) {
    std::vector<std::string> out;
    for (const Citation& c : citations)
        if (std::find(out.begin(), out.end(), c.source) == out.end()) out.push_back(c.source);
    return out;
}

/// What the mix is reckoned to be: a property a row, in its own unit.
class EstimateRows {
public:
    explicit EstimateRows(const DocumentSetting& setting) : setting_(setting) {}

    void add(const char* id, const Result<Estimate>& e) {
        const Property* p = setting_.catalogue.property(id);
        if (!p) return;
        if (!e) return add_missing(*p, e.problem());
        const UnitSystem units = setting_.units;
        const double a = shown_number(*p, e->low90_si, units), b = shown_number(*p, e->high90_si, units);
        DataCell value = figure(shown_number(*p, e->value_si, units), 4);
        value.uncertainty =
            DataCell::figure(shown_uncertainty(*p, e->value_si, e->standard_uncertainty_si, units), "").number;
        value.how_known = name_of(HowKnown::computed);
        value.sources = keys_of(e->sources);
        add_row(*p, value, figure(std::min(a, b), 3), figure(std::max(a, b), 3), e->rule);
    }
    void add_value(const Result<Evaluated>& value) {
        const Property* p = setting_.catalogue.property("metal_value");
        if (!p) return;
        if (!value) return add_missing(*p, value.problem());
        add_row(*p, cell_of(*p, *value, setting_.units), {}, {}, "prices of the elements by content");
    }

    DataTable table{"Estimates",
                    {{"property", "property"},
                     {"value", "value", "", true, true},
                     {"low90", "90 % low", "", true},
                     {"high90", "90 % high", "", true},
                     {"unit", "unit"},
                     {"rule", "rule"}},
                    {}};

private:
    void add_row(const Property& p, DataCell value, DataCell low, DataCell high, const std::string& rule) {
        table.rows.push_back({DataCell::words(p.id), std::move(value), std::move(low), std::move(high),
                              DataCell::words(shown_unit(p, setting_.units)), DataCell::words(rule)});
    }
    void add_missing(const Property& p, const Problem& problem) {
        DataCell none;
        none.reason = problem.text;
        add_row(p, std::move(none), {}, {}, "");
    }
    const DocumentSetting& setting_;
};

DataTable estimates(const MixResult& r, const DocumentSetting& setting) {
    EstimateRows rows(setting);
    const auto of_melting = [&](Estimate MeltingEstimate::*which) {
        return r.melting ? Result<Estimate>((*r.melting).*which) : Result<Estimate>(r.melting.problem());
    };
    rows.add("resistivity",
             r.resistivity ? Result<Estimate>(r.resistivity->estimate) : Result<Estimate>(r.resistivity.problem()));
    rows.add("temperature_coefficient", r.temperature_coefficient);
    rows.add("thermal_conductivity", r.thermal_conductivity);
    rows.add("density", r.density);
    rows.add("linear_expansion_at", r.linear_expansion);
    rows.add("solidus", of_melting(&MeltingEstimate::solidus));
    rows.add("liquidus", of_melting(&MeltingEstimate::liquidus));
    rows.add_value(r.metal_value);
    return std::move(rows.table);
}

DataTable composition(const MixResult& r) {
    DataTable table{
        "Composition",
        {{"element", "element"}, {"wt_percent", "by mass", "%", true}, {"at_percent", "by atoms", "%", true}},
        {}};
    if (r.blend) table.columns.push_back({"mass_kg", "put in", "kg", true});
    for (const Share& s : r.composition.shares()) {
        table.rows.push_back({DataCell::words(s.element), figure(s.wt_percent, 6), figure(s.at_percent, 6)});
        if (!r.blend) continue;
        const auto& all = r.blend->elements;
        const auto at = std::find_if(all.begin(), all.end(), [&](const auto& e) { return e.element == s.element; });
        table.rows.back().push_back(at == all.end() ? DataCell{} : figure(at->kg(), 6));
    }
    return table;
}

void add_impurities(Document& document, const char* title, const std::vector<ImpurityEffect>& list,
                    const DocumentSetting& setting) {
    const Property* p = setting.catalogue.property("resistivity");
    if (list.empty() || !p) return;
    DataTable table{title,
                    {{"element", "element"},
                     {"content", "content", "%", true},
                     {"low90", "90 % low", "%", true},
                     {"high90", "90 % high", "%", true},
                     {"most_dissolved", "can dissolve", "%", true},
                     {"resistivity", p->label, shown_unit(*p, setting.units), true},
                     {"sources", "sources"}},
                    {}};
    for (const ImpurityEffect& i : list) {
        DataCell sources;
        sources.sources = keys_of(i.per_wt.sources);
        table.rows.push_back({DataCell::words(i.element), figure(i.content_wt, 3), figure(i.low90_wt, 3),
                              figure(i.high90_wt, 3), figure(i.most_wt, 3),
                              figure(shown_number(*p, i.resistivity_si, setting.units), 4), sources});
    }
    document.parts.push_back(std::move(table));
}

} // namespace

Document document_of(const MixResult& r, const DocumentSetting& setting) {
    Document out = start_document("Mix: " + short_words(r.composition), {}, setting);
    out.figures[1] = {"treatment", name_of(r.treatment)};
    for (const Stock& s : r.stocks) out.figures.emplace_back("stock", exact(s.mass_kg) + " kg " + s.name);
    if (r.blend) out.figures.emplace_back("mass_after_loss_kg", exact(r.mass_kg));
    if (!r.value_as_of.empty()) out.figures.emplace_back("oldest_price", r.value_as_of);
    out.say("an estimate from the composition, not a measurement");
    for (const std::string& sentence : {phases_sentence(r, setting.catalogue, setting.units),
                                        freezing_sentence(r, setting.catalogue, setting.units), addition_sentence(r)})
        out.say(sentence);
    out.parts = {estimates(r, setting), composition(r)};
    add_impurities(out, "With a dissolved impurity", r.impurities, setting);
    add_impurities(out, "What would explain the measured figure", r.equivalents, setting);
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
