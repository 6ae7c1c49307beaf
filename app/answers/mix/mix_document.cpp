#include "answers/mix/mix_report.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"
#include "questions/mix/mix_sheet.hpp"
#include "questions/say/in_units_of.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr const char* mix_indent = "      ";

DataCell figure(double x, int digits) {
    return std::isnan(x) ? DataCell{} : DataCell::figure(x, trimmed(x, digits));
}

DataCell estimated(double x, int digits) {
    return DataCell::figure(x, significant(x, digits));
}

DataColumn mix_column(const char* id, const char* title, unsigned shown_in) {
    return {id, title, "", false, false, shown_in};
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
        DataCell value = estimated(shown_number(*p, e->value_si, units), 4);
        value.uncertainty =
            DataCell::figure(shown_uncertainty(*p, e->value_si, e->standard_uncertainty_si, units), "").number;
        value.how_known = name_of(HowKnown::computed);
        value.sources = keys_of(e->sources);
        add_row(*p, value, estimated(std::min(a, b), 3), estimated(std::max(a, b), 3), e->rule);
    }
    void add_value(const Result<Evaluated>& value) {
        const Property* p = setting_.catalogue.property("metal_value");
        if (!p) return;
        if (!value) return add_missing(*p, value.problem());
        add_row(*p, cell_of(*p, *value, setting_.units), {}, {}, "prices of the elements by content");
    }

    DataTable table{"Estimates",
                    {mix_column("property", "property", in::file),
                     mix_column("label", "property", in::text),
                     {"value", "value", "", true, true},
                     {"low90", "90 % low", "", true},
                     {"high90", "90 % high", "", true},
                     {"unit", "unit"},
                     mix_column("rule", "rule", in::file),
                     mix_column("why", "rule", in::text)},
                    {}};

private:
    void add_row(const Property& p, DataCell value, DataCell low, DataCell high, const std::string& rule) {
        const std::string why = value.reason.empty() ? rule : value.reason;
        table.rows.push_back({DataCell::words(p.id), DataCell::words(p.label), std::move(value), std::move(low),
                              std::move(high), DataCell::words(shown_unit(p, setting_.units)), DataCell::words(rule),
                              DataCell::words(why)});
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

DataTable composition(const MixResult& r, UnitSystem units) {
    const NamedUnit unit = melt_unit(r, units);
    DataTable table{
        "Composition",
        {{"element", "element"}, {"wt_percent", "by mass", "%", true}, {"at_percent", "by atoms", "%", true}},
        {}};
    if (r.blend) table.columns.push_back({"mass_" + unit.name, "put in", unit.name, true});
    for (const Share& s : r.composition.shares()) {
        table.rows.push_back({DataCell::words(s.element), figure(s.wt_percent, 4), figure(s.at_percent, 4)});
        if (!r.blend) continue;
        const auto& all = r.blend->elements;
        const auto at = std::find_if(all.begin(), all.end(), [&](const auto& e) { return e.element == s.element; });
        table.rows.back().push_back(at == all.end() ? DataCell{} : figure(at->kg() / unit.si, 6));
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
                     {"iacs", "conductivity", "%IACS", true, false, in::text},
                     mix_column("sources", "sources", in::file)},
                    {}};
    for (const ImpurityEffect& i : list) {
        DataCell sources;
        sources.sources = keys_of(i.per_wt.sources);
        table.rows.push_back({DataCell::words(i.element), figure(i.content_wt, 3), figure(i.low90_wt, 3),
                              figure(i.high90_wt, 3), figure(i.most_wt, 3),
                              figure(shown_number(*p, i.resistivity_si, setting.units), 4),
                              figure(100 / (i.resistivity_si * iacs_S_m), 3), sources});
    }
    document.parts.push_back(std::move(table));
}

/// "+ 1.2 kg sterling-silver", what is left after loss, fineness and karat.
void say_made_of(Document& out, const MixResult& r, UnitSystem units) {
    const NamedUnit unit = melt_unit(r, units);
    const auto mass = [&](double kg) { return trimmed(kg / unit.si, 6) + " " + unit.name; };
    out.say(std::string("ESTIMATE from composition, ") + name_of(r.treatment), in::text);
    for (const Stock& s : r.stocks)
        if (r.blend) out.say("  " + mass(s.mass_kg) + " " + s.name, in::text);
    if (r.blend)
        out.say("  in all " + mass(r.blend->mass_kg()) +
                    (r.mass_kg < r.blend->mass_kg() ? ", " + mass(r.mass_kg) + " after melt loss" : ""),
                in::text);
    if (!r.precious.empty())
        out.say(r.precious + " fineness " + trimmed(r.composition.fineness(r.precious), 4) + " per mille", in::text);
    if (r.composition.wt("Au") > 0) out.say(trimmed(r.composition.karat(), 4) + " karat", in::text);
    out.say("an estimate from the composition, not a measurement", in::file);
}

std::string two_phases(const MixResult& r, const DocumentSetting& setting) {
    const Property* p = setting.catalogue.property("resistivity");
    if (!p || !r.resistivity || !(r.resistivity->second_share > second_phase_matters)) return {};
    const auto shown = [&](double si) { return significant(shown_number(*p, si, setting.units), 3); };
    return "two phases: between " + shown(r.resistivity->parallel_si) + " (parallel) and " +
           shown(r.resistivity->series_si) + " (series) " + shown_unit(*p, setting.units);
}

std::string worth(const MixResult& r, const DocumentSetting& setting) {
    if (!r.metal_value) return "Metal value: no value: " + r.metal_value.problem().text;
    const auto money = [&](double usd) { return shown_money(setting.catalogue, usd, 4, setting.units); };
    const std::string rate = rate_sentence(setting.catalogue);
    const NamedUnit each = price_mass_unit(setting.units);
    return "Metal value " + money(r.metal_value->value_si * each.si) + "/" + each.name + ", prices as old as " +
           r.value_as_of + (r.blend ? ": " + money(r.metal_value->value_si * r.mass_kg) + " for the melt" : "") +
           " (without premium, making or refining)" + (rate.empty() ? "" : ". " + rate);
}

void say_story(Document& out, const char* what, const Estimate& e, UnitSystem units) {
    const auto line = [&](const std::string& text) { out.say("  " + in_units_of(units, text), in::text, mix_indent); };
    out.say(std::string(what) + ": " + e.rule, in::text);
    for (const std::string& step : e.trail) line(step);
    if (!e.range.empty()) line("holds for: " + e.range);
    if (!e.error.empty()) line("error: " + e.error);
    for (const Citation& c : e.sources) line("[" + c.source + ", " + c.locator + ", " + name_of(c.how_known) + "]");
}

void say_how(Document& out, const MixResult& r, const DocumentSetting& setting) {
    if (Sentence* head = out.say("How each was estimated", in::text)) head->apart = true;
    if (r.resistivity) {
        for (const std::string& step : r.resistivity->state.trail) out.say("  " + step, in::text, mix_indent);
        say_story(out, "Resistivity", r.resistivity->estimate, setting.units);
    }
    if (r.density) say_story(out, "Density", *r.density, setting.units);
    if (r.melting) say_story(out, "Melting range", r.melting->liquidus, setting.units);
    if (Sentence* head = out.say("Sources", in::text)) head->apart = true;
    for (const std::string& key : r.sources)
        if (const Reference* s = setting.catalogue.reference(key))
            out.say("  [" + s->key + "] " + s->full(), in::text, mix_indent);
    if (Sentence* last = out.say("An estimate, not a measurement. Data version " + out.data_version, in::text))
        last->apart = true;
}

} // namespace

Document document_of(const MixResult& r, const DocumentSetting& setting) {
    Document out = start_document("Mix: " + short_words(r.composition), {}, setting);
    out.figures[1] = {"treatment", name_of(r.treatment)};
    for (const Stock& s : r.stocks) out.figures.emplace_back("stock", exact(s.mass_kg) + " kg " + s.name);
    if (r.blend) out.figures.emplace_back("mass_after_loss_kg", exact(r.mass_kg));
    if (!r.value_as_of.empty()) out.figures.emplace_back("oldest_price", r.value_as_of);
    for (const std::string& hazard : r.hazards) out.say("Take care: " + hazard, in::text | in::file);
    say_made_of(out, r, setting.units);
    out.parts.push_back(estimates(r, setting));
    out.say(two_phases(r, setting), in::text | in::file);
    for (const std::string& sentence :
         {freezing_sentence(r, setting.catalogue, setting.units), phases_sentence(r, setting.catalogue, setting.units)})
        out.say(sentence, in::text | in::file);
    out.say(worth(r, setting), in::text);
    out.say(addition_sentence(r, setting.units), in::text | in::file);
    out.say(scrap_sentence(r), in::text | in::file);
    for (const std::string& loss : loss_sentences(r, setting.catalogue, setting.units))
        out.say(loss, in::text | in::file);
    out.parts.push_back(composition(r, setting.units));
    add_impurities(out, "With a dissolved impurity", r.impurities, setting);
    add_impurities(out, "Any one of these dissolved would explain the measured figure", r.equivalents, setting);
    say_how(out, r, setting);
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
