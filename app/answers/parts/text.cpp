#include "answers/parts/text.hpp"

#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace pourbook {
namespace {

std::string shown_si(const Property& p, double si, UnitSystem units) {
    return significant(shown_number(p, si, units), 4);
}

} // namespace

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

std::string text_of_metals(const std::vector<const Metal*>& metals) {
    DataTable t{
        "Metals", {titled("slug"), titled("name"), titled("family"), titled("composition, wt%"), titled("also")}, {}};
    for (const Metal* m : metals)
        t.add_words({m->slug, m->name, m->family, composition_text(*m), joined(m->designations)});
    return as_text(t);
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
        DataTable t{
            "Coverage",
            {titled("metal"), titled("property"), titled("values", true), titled("preferred source"), titled("known")},
            {}};
        for (const CoverageCell& cell : c.coverage)
            if (cell.values > 0)
                t.add_words({cell.metal->slug, cell.property->id, std::to_string(cell.values), cell.preferred_source,
                             name_of(cell.how_known)});
        out << "\n" << as_text(t);
    }
    if (with_conflicts) {
        DataTable t{"Conflicts",
                    {titled("metal"), titled("property"), titled("spread", true), titled("low", true),
                     titled("chosen", true), titled("high", true), titled("unit"), titled("sources")},
                    {}};
        for (const Conflict& k : c.conflicts) {
            std::vector<std::string> keys;
            for (const SourceValue& s : k.value.sources) keys.push_back(s.key);
            const auto figure = [&](double si) { return shown_si(*k.property, si, UnitSystem::shown); };
            t.add_words({k.metal->slug, k.property->id, significant(k.spread_percent, 2) + " %",
                         figure(k.value.spread_low_si), figure(k.value.value_si), figure(k.value.spread_high_si),
                         shown_unit(*k.property, UnitSystem::shown), joined(keys)});
        }
        out << "\n" << as_text(t);
    }
    return out.str();
}

} // namespace pourbook
