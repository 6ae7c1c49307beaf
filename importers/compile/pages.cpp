#include "importers/compile/compile.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <sstream>

namespace pourbook {
namespace {

struct Taken {
    std::map<std::string, std::size_t> values_of; // property -> number of values
    std::set<std::string> metals;
    std::set<std::string> how_known;
    std::set<std::string> through;
};

void take(Taken& t, const std::string& what, const std::string& metal, const Citation& c, std::size_t values) {
    t.values_of[what] += values;
    if (!metal.empty()) t.metals.insert(metal);
    t.how_known.insert(name_of(c.how_known));
    if (!c.through.empty()) t.through.insert(c.through);
}

std::map<std::string, Taken> taken_from(const Catalogue& c) {
    std::map<std::string, Taken> all;
    for (const Metal& m : c.metals) {
        for (const Record& r : m.records)
            take(all[r.citation.source], r.property, m.slug, r.citation, std::max<std::size_t>(r.points.size(), 1));
        if (!m.composition_citation.source.empty())
            take(all[m.composition_citation.source], "composition", m.slug, m.composition_citation, 1);
    }
    for (const AtomicMass& m : c.alloys.masses) take(all[m.citation.source], "atomic mass", "", m.citation, 1);
    for (const SoluteEffect& e : c.alloys.effects)
        take(all[e.citation.source], "resistivity increment", "", e.citation, 1);
    for (const VolumeEffect& v : c.alloys.volumes) take(all[v.citation.source], "volume effect", "", v.citation, 1);
    for (const ResistivityTable& t : c.alloys.tables)
        take(all[t.citation.source], "resistivity of a binary system", "", t.citation, t.points.size());
    for (const FrozenState& s : c.alloys.frozen) take(all[s.citation.source], "heat treatment", "", s.citation, 1);
    for (const Diagram& d : c.alloys.diagrams) {
        for (const DiagramField& f : d.fields)
            take(all[f.citation.source], "binary diagram", "", f.citation, f.rows.size());
        for (const Invariant& v : d.invariants) take(all[v.citation.source], "binary diagram", "", v.citation, 1);
    }
    for (const MagnetFigure& f : c.magnet_figures)
        take(all[f.citation.source], "magnet " + f.quantity, "", f.citation, 1);
    for (const Caution& k : c.cautions) take(all[k.citation.source], "caution", "", k.citation, 1);
    for (const PriceForm& f : c.price_forms) take(all[f.citation.source], "price form", "", f.citation, 1);
    for (const PriceSet& s : c.price_sets)
        for (const Price& p : s.prices) take(all[p.citation.source], "price", p.metal, p.citation, 1);
    for (const Practice& p : c.practices) take(all[p.citation.source], p.quantity, p.metal, p.citation, 1);
    return all;
}

template <class Names> std::string listed(const Names& names, const char* joint) {
    std::string out;
    for (const auto& name : names) out += (out.empty() ? "" : joint) + name;
    return out;
}

void write_source(std::ostream& out, const Reference& r, const Taken* t) {
    out << "## " << r.key << "\n\n"
        << r.full() << "\n\n- kind: " << r.kind << ", reliability " << r.reliability << "\n";
    if (!r.read_in.empty()) out << "- read in: " << r.read_in << "\n";
    if (!r.reuse.empty()) out << "- reuse: " << r.reuse << "\n";
    if (!r.note.empty()) out << "- note: " << r.note << "\n";
    if (t) {
        std::string what;
        for (const auto& [property, values] : t->values_of)
            what += (what.empty() ? "" : ", ") + property + " " + std::to_string(values);
        out << "- taken: " << what << "\n";
        if (!t->metals.empty()) out << "- metals: " << listed(t->metals, ", ") << "\n";
        out << "- how known: " << listed(t->how_known, ", ") << "\n";
        if (!t->through.empty()) out << "- original read through: " << listed(t->through, "; ") << "\n";
    } else {
        out << "- taken: nothing\n";
    }
    out << "\n";
}

} // namespace

std::string sources_page(const Catalogue& c) {
    const auto all = taken_from(c);
    std::ostringstream out;
    out << "# Sources\n\nGenerated from db/ by `pourbook-compile --sources`; don't edit. Each source once, by key: "
           "what it is, how it was read and what was taken.\n"
        << "Reliability: A standard or critical evaluation in good text; B handbook or sheet that agrees with a second "
           "source; C usable, rounded or of unclear\n"
        << "origin; M memory only. Facts and figures were taken, no sentences.\n\n";
    for (const Reference& r : c.references) {
        const auto t = all.find(r.key);
        write_source(out, r, t == all.end() ? nullptr : &t->second);
    }
    std::string page = out.str();
    page.pop_back();
    return page;
}

std::string coverage_page(const Catalogue& c) {
    std::ostringstream out;
    std::vector<const Property*> shown;
    for (const Property& p : c.properties)
        for (const Metal& m : c.metals)
            if (std::any_of(m.records.begin(), m.records.end(), [&](const Record& r) { return r.property == p.id; })) {
                shown.push_back(&p);
                break;
            }
    out << "| metal |";
    for (const Property* p : shown) out << " " << p->id << " |";
    out << "\n|---|";
    for (std::size_t i = 0; i < shown.size(); ++i) out << "---|";
    out << "\n";
    for (const Metal& m : c.metals) {
        out << "| " << m.slug << " |";
        for (const Property* p : shown) {
            std::size_t values = 0;
            bool read = false;
            for (const Record& r : m.records)
                if (r.property == p->id && r.none.empty()) {
                    values += std::max<std::size_t>(r.points.size(), 1);
                    read = read || r.citation.how_known == HowKnown::read;
                }
            out << " " << (values ? std::to_string(values) + (read ? "" : " m") : "") << " |";
        }
        out << "\n";
    }
    return out.str();
}

} // namespace pourbook
