#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "questions/say/oldest_price.hpp"

#include <cmath>

namespace pourbook {
namespace {

Value words_or_null(const std::string& words) {
    return words.empty() ? Value() : Value(words);
}

void add_figures(Document& out, const ValueResult& r, const Catalogue& catalogue) {
    const Property& p = *r.property;
    const Evaluated& e = r.value;
    const auto told = [&](const char* id, Value value) { out.figures.emplace_back(id, std::move(value), in::program); };
    told("metal", r.metal->slug);
    told("property", p.id);
    told("value", p.is_text ? Value(e.text) : number_or_null(e.value_si));
    told("unit", p.si_unit);
    told("standard_uncertainty", p.is_text ? Value() : number_or_null(e.standard_uncertainty_si));
    told("uncertainty_assumed", e.uncertainty_assumed);
    told("temperature_K", number_or_null(e.temperature_K));
    told("condition", words_or_null(e.condition));
    told("condition_matches", e.condition_matches);
    told("basis", name_of(e.basis));
    told("law", words_or_null(e.law));
    told("how_known", name_of(e.how_known));
    told("spread.low", number_or_null(e.spread_low_si));
    told("spread.high", number_or_null(e.spread_high_si));
    told("trail", e.trail);
    if (p.id != "price" && p.id != "metal_value") return;
    told("currency", "USD");
    told("stale", e.stale);
    told("as_of", words_or_null(oldest_price(e, catalogue)));
}

std::string figure_of(const SourceValue& s, const Property& p, UnitSystem units) {
    return std::isnan(s.value_si) ? s.printed : significant(shown_number(p, s.value_si, units), 4);
}

DataTable said_by(const ValueResult& r, UnitSystem units) {
    const auto words = [](const char* id, const char* title, unsigned shown_in) {
        return DataColumn{id, title, "", false, false, shown_in};
    };
    constexpr unsigned not_people = in::program | in::file;
    DataTable table{"What each source says",
                    {words("key", "source", not_people),
                     words("locator", "where in it", not_people),
                     {"value", r.property->label, shown_unit(*r.property, units), true, false, not_people},
                     words("how_known", "how known", not_people),
                     words("printed", "as printed", not_people),
                     words("record", "record", in::program),
                     words("chosen", "chosen", not_people),
                     words("through", "read through", not_people)},
                    {},
                    not_people,
                    "sources"};
    for (const SourceValue& s : r.value.sources) {
        DataCell key = DataCell::words(s.key), value;
        key.sources = {s.key};
        value = DataCell::figure(shown_number(*r.property, s.value_si, units), figure_of(s, *r.property, units));
        table.rows.push_back({key, DataCell::words(s.locator), value, DataCell::words(name_of(s.how_known)),
                              DataCell::words(s.printed), DataCell::words(s.record_id),
                              DataCell::both(s.chosen ? "yes" : "", s.chosen), DataCell::words(s.through)});
    }
    return table;
}

void say_all(Document& out, const ValueResult& r, const DocumentSetting& setting) {
    const Evaluated& e = r.value;
    out.say(r.metal->name + ", " + r.property->label + ": " + shown_with_level(*r.property, e, setting.units),
            in::text);
    if (!std::isnan(e.temperature_K))
        out.say("  at " + celsius_text(e.temperature_K) + ", condition: " + e.condition, in::text);
    if (!r.property->is_text)
        out.say(std::string("  basis: ") + name_of(e.basis) + (e.law.empty() ? "" : ", by " + e.law), in::text,
                "      ");
    if (const std::string rate = shown_rate(*r.property); !rate.empty())
        out.say("  shown at " + rate, in::text, "      ");
    for (const std::string& step : e.trail) {
        out.say("  " + step, in::text, "      ");
        out.say(step, in::file);
    }
    for (const SourceValue& s : e.sources)
        out.say((s.chosen ? "  * " : "    ") + figure_of(s, *r.property, setting.units) + "  " + s.key + ", " +
                    s.locator + (s.through.empty() ? "" : " (read through " + s.through + ")") + ", " +
                    name_of(s.how_known),
                in::text, "        ");
    for (const SourceValue& s : e.sources)
        if (const Reference* reference = setting.catalogue.reference(s.key))
            out.say("  [" + s.key + "] " + reference->full(), in::text, "      ");
}

} // namespace

Document document_of(const ValueResult& r, const DocumentSetting& setting) {
    Document out = start_document(r.metal->name + ", " + r.property->label, r.conditions, setting);
    for (DataFigure& asked : out.figures) asked.shown_in &= in::file;
    add_state(out, r.conditions);
    add_figures(out, r, setting.catalogue);
    say_all(out, r, setting);
    DataTable value{"Value", {}, {}, in::file};
    add_metal_columns(value);
    value.columns.push_back(column_of(*r.property, setting.units));
    add_metal_cells(value.rows.emplace_back(), *r.metal);
    value.rows.back().push_back(cell_of(*r.property, r.value, setting.units));
    out.parts.push_back(std::move(value));
    out.parts.push_back(said_by(r, setting.units));
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
