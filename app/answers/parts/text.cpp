#include "answers/parts/text.hpp"

#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace pourbook {
namespace {

std::string kelvin_or_nothing(double kelvin) {
    return std::isnan(kelvin) ? "" : trimmed(kelvin, 6) + " K";
}

std::string mark(HowKnown how) {
    return how == HowKnown::read ? "" : std::string(name_of(how));
}

std::string composition_text(const Metal& m) {
    std::string out;
    for (const Portion& p : m.composition) {
        if (p.wt_percent > 0)
            out += (out.empty() ? "" : ", ") + p.element + " " + trimmed(p.wt_percent, 4);
        else
            out += (out.empty() ? "" : ", ") + p.element + " " + p.limits;
    }
    return out;
}

std::string cited(const SourceValue& s) {
    return s.key + ", " + s.locator + (s.through.empty() ? "" : " (read through " + s.through + ")");
}

std::string shown_si(const Property& p, double si, UnitSystem units) {
    return significant(shown_number(p, si, units), 4);
}

/// Reference lines behind an answer: key and full reference.
void write_references(std::ostream& out, const std::vector<SourceValue>& sources, const Catalogue& catalogue) {
    for (const SourceValue& s : sources)
        if (const Reference* r = catalogue.reference(s.key))
            out << wrapped("  [" + s.key + "] " + r->full(), page_width, "      ");
}

std::string rate_line(const Catalogue& catalogue) {
    const std::string rate = rate_sentence(catalogue);
    return rate.empty() ? "" : wrapped(rate, page_width, "    ");
}

} // namespace

std::string text_of_metals(const std::vector<const Metal*>& metals) {
    Table t{{{"slug"}, {"name"}, {"family"}, {"composition, wt%"}, {"also"}}, {}};
    for (const Metal* m : metals)
        t.rows.push_back({m->slug, m->name, m->family, composition_text(*m), joined(m->designations)});
    return as_text(t);
}

std::string text_of(const ValueResult& r, const Catalogue& catalogue, UnitSystem units) {
    std::ostringstream out;
    out << r.metal->name << ", " << r.property->label << ": " << shown_full(*r.property, r.value, units) << "\n";
    if (!std::isnan(r.value.temperature_K))
        out << "  at " << kelvin_or_nothing(r.value.temperature_K) << ", condition: " << r.value.condition << "\n";
    if (const std::string rate = shown_rate(*r.property); !rate.empty())
        out << wrapped("  shown at " + rate, page_width, "      ");
    for (const std::string& step : r.value.trail) out << wrapped("  " + step, page_width, "      ");
    for (const SourceValue& s : r.value.sources) {
        const std::string figure = std::isnan(s.value_si) ? s.printed : shown_si(*r.property, s.value_si, units);
        out << wrapped((s.chosen ? "  * " : "    ") + figure + "  " + cited(s) + ", " + name_of(s.how_known),
                       page_width, "        ");
    }
    write_references(out, r.value.sources, catalogue);
    return out.str();
}

std::string text_of(const SheetResult& s, const Catalogue& catalogue, UnitSystem units) {
    std::ostringstream out;
    const Metal& m = *s.metal;
    out << m.name << " (" << m.slug << "), " << m.family << "\n";
    if (!m.designations.empty()) out << "  designations: " << joined(m.designations) << "\n";
    if (!m.aliases.empty()) out << "  also called: " << joined(m.aliases) << "\n";
    out << "  composition, wt%: " << composition_text(m) << "\n";
    if (!m.composition_citation.source.empty())
        out << "    [" << m.composition_citation.source << ", " << m.composition_citation.locator << ", "
            << name_of(m.composition_citation.how_known) << "]\n";
    if (!m.note.empty()) out << wrapped("  " + m.note, page_width, "  ");
    for (const Caution* c : s.cautions)
        out << wrapped("  CAUTION (" + c->element + "): " + c->text + " [" + c->citation.source + ", " +
                           c->citation.locator + "]",
                       page_width, "      ");
    out << "\n";
    Table t{{{"property"}, {"value", true}, {"±", true}, {"unit"}, {"condition"}, {"known"}, {"source"}}, {}};
    for (const SheetRow& row : s.rows) {
        const Property& p = *row.property;
        if (!row.value) {
            const std::string& why = row.value.problem().text; // "property of metal: reason"
            const std::size_t colon = why.find(": ");
            t.rows.push_back(
                {p.label, "no value", "", "", "", "", colon == std::string::npos ? why : why.substr(colon + 2)});
            continue;
        }
        const Evaluated& e = *row.value;
        const std::string u =
            p.is_text ? "" : significant(shown_uncertainty(p, e.value_si, e.standard_uncertainty_si, units), 2);
        t.rows.push_back({p.label, shown_value(p, e, units), u, p.is_text ? "" : shown_unit(p, units), e.condition,
                          mark(e.how_known), e.sources.front().key + ", " + e.sources.front().locator});
    }
    out << as_text(t) << rate_line(catalogue) << "\nRecords (as printed)\n";
    Table records{{{"id"}, {"figure"}, {"condition"}, {"use"}, {"known"}, {"source"}}, {}};
    for (const Record& r : m.records) {
        std::string figure = r.text + r.none + r.equation_printed;
        if (r.points.size() == 1) figure = r.points.front().printed + " " + r.unit;
        if (r.points.size() > 1)
            figure = std::to_string(r.points.size()) + " points, " + r.points.front().printed + " to " +
                     r.points.back().printed + " " + r.unit;
        if (!std::isnan(r.lowest_K()))
            figure += r.points.size() > 1 || r.equation
                          ? ", " + kelvin_or_nothing(r.lowest_K()) + " to " + kelvin_or_nothing(r.highest_K())
                          : " at " + kelvin_or_nothing(r.lowest_K());
        records.rows.push_back({r.id, figure, r.condition + (r.temper.empty() ? "" : " " + r.temper),
                                r.use == Use::alternate ? "" : name_of(r.use), mark(r.citation.how_known),
                                r.citation.source + ", " + r.citation.locator});
    }
    out << as_text(records) << "\nSources\n";
    for (const Reference* r : s.references) out << wrapped("  [" + r->key + "] " + r->full(), page_width, "      ");
    out << "\nDefer to local codes and licensed practice. Data version " << catalogue.data_version << "\n";
    return out.str();
}

std::string text_of_references(const std::vector<const Reference*>& references) {
    std::ostringstream out;
    for (const Reference* r : references) {
        out << wrapped("[" + r->key + "] " + r->full(), page_width, "    ");
        out << "    " << r->kind << ", reliability " << r->reliability << "\n";
        if (references.size() == 1)
            for (const std::string& line : {r->read_in.empty() ? "" : "read in: " + r->read_in,
                                            r->reuse.empty() ? "" : "reuse: " + r->reuse, r->note})
                if (!line.empty()) out << wrapped("    " + line, page_width, "    ");
    }
    return out.str();
}

std::string text_of(const CheckResult& c, const Catalogue& catalogue, bool with_coverage, bool with_conflicts) {
    std::ostringstream out;
    const auto share = [](std::size_t part, std::size_t all) {
        return all == 0 ? std::string("0")
                        : significant(100.0 * static_cast<double>(part) / static_cast<double>(all), 3);
    };
    out << c.metals << " metals (" << c.elements << " pure, " << c.alloys << " alloys), " << c.records << " records, "
        << c.values << " values, " << c.prices << " prices, " << c.references << " sources\n"
        << c.values - c.values_computed << " of the values are published figures, " << c.values_computed
        << " were computed from published ones by a stated rule\n"
        << share(c.values_read, c.values) << " % of the values were read in a text; of the " << c.core_answers
        << " resolved core answers " << share(c.core_answers_read, c.core_answers) << " %\n"
        << c.without_source << " values without source or locator\n"
        << c.conflicts.size() << " answers whose sources disagree (see --conflicts)\n"
        << "data version " << catalogue.data_version << "\n";
    for (const std::string& fault : c.faults) out << "FAULT " << fault << "\n";
    if (with_coverage) {
        Table t{{{"metal"}, {"property"}, {"values", true}, {"preferred source"}, {"known"}}, {}};
        for (const CoverageCell& cell : c.coverage)
            if (cell.values > 0)
                t.rows.push_back({cell.metal->slug, cell.property->id, std::to_string(cell.values),
                                  cell.preferred_source, name_of(cell.how_known)});
        out << "\n" << as_text(t);
    }
    if (with_conflicts) {
        Table t{{{"metal"},
                 {"property"},
                 {"spread", true},
                 {"low", true},
                 {"chosen", true},
                 {"high", true},
                 {"unit"},
                 {"sources"}},
                {}};
        for (const Conflict& k : c.conflicts) {
            std::vector<std::string> keys;
            for (const SourceValue& s : k.value.sources) keys.push_back(s.key);
            const auto figure = [&](double si) { return shown_si(*k.property, si, UnitSystem::shown); };
            t.rows.push_back({k.metal->slug, k.property->id, significant(k.spread_percent, 2) + " %",
                              figure(k.value.spread_low_si), figure(k.value.value_si), figure(k.value.spread_high_si),
                              shown_unit(*k.property, UnitSystem::shown), joined(keys)});
        }
        out << "\n" << as_text(t);
    }
    return out.str();
}

} // namespace pourbook
