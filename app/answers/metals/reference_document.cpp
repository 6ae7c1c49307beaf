// What the reference itself holds: its sources, what was taken from one of them, its coverage.
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {
namespace {

DataCell count(std::size_t n) {
    return DataCell::figure(static_cast<double>(n), std::to_string(n));
}

Document plain_document(const std::string& title, const DocumentSetting& setting) {
    Document out = start_document(title, {}, setting);
    out.figures.clear();
    return out;
}

DataTable coverage(const CheckResult& check) {
    DataTable table{"Coverage", {}, {}};
    add_metal_columns(table);
    table.columns.insert(table.columns.end(), {{"property", "property"},
                                               {"values", "published figures", "", true},
                                               {"how_known", "how known"},
                                               {"sources", "preferred source"}});
    for (const CoverageCell& c : check.coverage) {
        table.rows.emplace_back();
        add_metal_cells(table.rows.back(), *c.metal);
        DataCell source;
        if (!c.preferred_source.empty()) source.sources = {c.preferred_source};
        const bool answered = !c.preferred_source.empty();
        table.rows.back().insert(table.rows.back().end(),
                                 {DataCell::words(c.property->id), count(c.values),
                                  DataCell::words(answered ? name_of(c.how_known) : ""), source});
    }
    return table;
}

DataTable conflicts(const CheckResult& check, UnitSystem units) {
    DataTable table{"Where sources disagree", {}, {}};
    add_metal_columns(table);
    table.columns.insert(table.columns.end(), {{"property", "property"},
                                               {"value", "value", "", true, true},
                                               {"unit", "unit"},
                                               {"spread", "spread", "%", true}});
    for (const Conflict& c : check.conflicts) {
        table.rows.emplace_back();
        add_metal_cells(table.rows.back(), *c.metal);
        table.rows.back().insert(table.rows.back().end(),
                                 {DataCell::words(c.property->id), cell_of(*c.property, c.value, units),
                                  DataCell::words(shown_unit(*c.property, units)),
                                  DataCell::figure(c.spread_percent, significant(c.spread_percent, 2))});
    }
    return table;
}

DataTable counts(const CheckResult& c) {
    DataTable table{"Counts", {{"what", "what"}, {"count", "count", "", true}}, {}};
    const std::pair<const char*, std::size_t> lines[] = {{"metals", c.metals},
                                                         {"elements", c.elements},
                                                         {"alloys", c.alloys},
                                                         {"records", c.records},
                                                         {"published values", c.values},
                                                         {"of them read in a text", c.values_read},
                                                         {"sources", c.references},
                                                         {"prices", c.prices},
                                                         {"records without a source", c.without_source},
                                                         {"core properties answered", c.core_answers},
                                                         {"of them from a text that was read", c.core_answers_read}};
    for (const auto& [what, n] : lines) table.rows.push_back({DataCell::words(what), count(n)});
    return table;
}

} // namespace

Document document_of(const std::vector<const Reference*>& references, const DocumentSetting& setting) {
    Document out = plain_document("Sources", setting);
    DataTable table{"Sources",
                    {{"key", "key"},
                     {"kind", "kind"},
                     {"reliability", "grade"},
                     {"reference", "reference"},
                     {"read_in", "read in"},
                     {"reuse", "reuse"},
                     {"note", "note"}},
                    {}};
    for (const Reference* r : references) {
        std::vector<DataCell>& row = table.rows.emplace_back();
        for (const std::string& words : {r->key, r->kind, r->reliability, r->full(), r->read_in, r->reuse, r->note})
            row.push_back(DataCell::words(words));
    }
    out.parts.push_back(std::move(table));
    return out;
}

Document taken_document(const Reference& reference, const std::vector<Taken>& taken, const DocumentSetting& setting) {
    Document out = plain_document("Taken from " + reference.key, setting);
    DataTable table{"Taken from it",
                    {{"metal", "metal"},
                     {"what", "what"},
                     {"printed", "as printed"},
                     {"locator", "where in it"},
                     {"through", "read through"},
                     {"how_known", "how known"},
                     {"use", "use"}},
                    {}};
    for (const Taken& t : taken) {
        std::vector<DataCell>& row = table.rows.emplace_back();
        for (const std::string& words : {t.metal, t.what, t.printed, t.locator, t.through,
                                         std::string(name_of(t.how_known)), std::string(name_of(t.use))})
            row.push_back(DataCell::words(words));
    }
    out.parts.push_back(std::move(table));
    out.sources.push_back(&reference);
    return out;
}

Document document_of(const CheckResult& check, const DocumentSetting& setting) {
    Document out = plain_document("What the reference holds", setting);
    for (const std::string& fault : check.faults) out.say(fault);
    out.parts = {coverage(check), conflicts(check, setting.units), counts(check)};
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
