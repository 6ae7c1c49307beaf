#include "answers/parts/text.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr const char* sheet_indent = "      ";

std::string known_otherwise(HowKnown how);

/// "memory" for a cited figure that was not read, "carried" or "estimated" for the rest.
std::string known_otherwise(const Evaluated& e) {
    return e.basis == Basis::cited ? known_otherwise(e.how_known) : name_of(e.basis);
}

std::string known_otherwise(HowKnown how) {
    return how == HowKnown::read ? "" : name_of(how);
}

DataColumn sheet_column(const char* id, const char* title, unsigned shown_in = in::text | in::file) {
    return {id, title, "", false, false, shown_in};
}

void say_head(Document& out, const SheetResult& s) {
    const Metal& m = *s.metal;
    const auto say = [&](const std::string& text) { out.say(text, in::text | in::file, sheet_indent); };
    out.say(m.name + " (" + m.slug + "), " + m.family, in::text);
    if (!m.designations.empty()) say("  designations: " + joined(m.designations));
    if (!m.aliases.empty()) say("  also called: " + joined(m.aliases));
    say("  composition, wt%: " + composition_text(m));
    const Citation& from = m.composition_citation;
    if (!from.source.empty()) say("    [" + from.source + ", " + from.locator + ", " + name_of(from.how_known) + "]");
    if (!m.note.empty()) out.say("  " + m.note, in::text | in::file, "  ");
    for (const Caution* c : s.cautions)
        say("  CAUTION (" + c->element + "): " + c->text + " [" + c->citation.source + ", " + c->citation.locator +
            "]");
}

/// A row for each property: for a terminal in words, for files with the story of the figure.
DataTable properties_of(const SheetResult& s, UnitSystem units) {
    DataTable table{"Properties",
                    {sheet_column("property", "property"),
                     {"shown", "value", "", true, false, in::text},
                     {"value", "value", "", true, true, in::file},
                     {"uncertainty", "± (90 %)", "", true, false, in::text},
                     sheet_column("unit", "unit"),
                     sheet_column("condition", "condition", in::text),
                     sheet_column("known", "known", in::text),
                     sheet_column("source", "source", in::text)},
                    {}};
    for (const SheetRow& row : s.rows) {
        const Property& p = *row.property;
        const DataCell value = cell_of(p, row.value, units);
        std::vector<DataCell>& cells = table.rows.emplace_back();
        cells = {DataCell::words(p.label), value, value};
        if (!row.value) {
            cells.insert(cells.end(), {{}, {}, {}, {}, DataCell::words(value.reason)});
            continue;
        }
        const Evaluated& e = *row.value;
        const SourceValue& first = e.sources.front();
        cells.insert(cells.end(), {DataCell::words(p.is_text ? "" : significant(normal_90 * value.uncertainty, 2)),
                                   DataCell::words(p.is_text ? "" : shown_unit(p, units)), DataCell::words(e.condition),
                                   DataCell::words(known_otherwise(e) + (value.mark.empty() ? "" : " " + value.mark)),
                                   DataCell::words(first.key + ", " + first.locator)});
    }
    return table;
}

std::string kelvin(double t) {
    return trimmed(t, 6) + " K";
}

/// The figure as printed, with the temperatures it holds at.
std::string record_figure(const Record& r) {
    std::string figure = r.text + r.none + r.equation_printed;
    if (r.points.size() == 1) figure = r.points.front().printed + " " + r.unit;
    if (r.points.size() > 1)
        figure = std::to_string(r.points.size()) + " points, " + r.points.front().printed + " to " +
                 r.points.back().printed + " " + r.unit;
    if (std::isnan(r.lowest_K())) return figure;
    return figure + (r.points.size() > 1 || r.equation ? ", " + kelvin(r.lowest_K()) + " to " + kelvin(r.highest_K())
                                                       : " at " + kelvin(r.lowest_K()));
}

DataTable records_of(const Metal& m) {
    DataTable table{"Records (as printed)",
                    {sheet_column("id", "id"), sheet_column("figure", "figure"), sheet_column("condition", "condition"),
                     sheet_column("use", "use"), sheet_column("known", "known"), sheet_column("source", "source")},
                    {}};
    for (const Record& r : m.records) {
        DataCell source = DataCell::words(r.citation.source + ", " + r.citation.locator);
        table.rows.push_back({DataCell::words(r.id), DataCell::words(record_figure(r)),
                              DataCell::words(r.condition + (r.temper.empty() ? "" : " " + r.temper)),
                              DataCell::words(r.use == Use::alternate ? "" : name_of(r.use)),
                              DataCell::words(known_otherwise(r.citation.how_known)), std::move(source)});
    }
    return table;
}

} // namespace

Document document_of(const SheetResult& s, const DocumentSetting& setting) {
    Document out = start_document(s.metal->name, s.conditions, setting);
    add_state(out, s.conditions);
    say_head(out, s);
    out.parts.push_back(properties_of(s, setting.units));
    out.say(rate_sentence(setting.catalogue), in::text, "    ");
    out.parts.push_back(records_of(*s.metal));
    if (Sentence* head = out.say("Sources", in::text)) head->apart = true;
    for (const Reference* r : s.references) out.say("  [" + r->key + "] " + r->full(), in::text, sheet_indent);
    if (Sentence* last =
            out.say("Defer to local codes and licensed practice. Data version " + out.data_version, in::text))
        last->apart = true;
    out.sources = s.references;
    return out;
}

} // namespace pourbook
