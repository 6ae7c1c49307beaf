#include "answers/parts/source_index.hpp"

#include "charts/words.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

std::string range_text(const Record& r) {
    const auto kelvin = [](double t) { return significant(t, 4) + " K"; };
    return kelvin(r.lowest_K()) + " to " + kelvin(r.highest_K());
}

Taken from(const Citation& c, std::string what, std::string printed) {
    return {"", "", std::move(what), std::move(printed), c.locator, c.through, c.how_known, Use::alternate};
}

/// "1.387 uohm.cm at 250 K", "24 figures, 14 K to 1358 K", "equation, 545 K to 1073 K", "not found: ...".
std::string printed_text(const Record& r) {
    if (!r.none.empty()) return "not found: " + r.none;
    if (!r.text.empty()) return r.text;
    if (r.equation) return "equation, " + range_text(r);
    if (r.points.empty()) return "no figure";
    const Point& p = r.points.front();
    const std::string unit = pretty_unit(r.unit);
    if (r.points.size() > 1) return std::to_string(r.points.size()) + " figures in " + unit + ", " + range_text(r);
    return p.printed + " " + unit +
           (std::isnan(p.temperature_K) ? "" : " at " + significant(p.temperature_K, 5) + " K");
}

} // namespace

SourceIndex::SourceIndex(const Catalogue& catalogue) {
    const auto add = [&](const Citation& c, Taken taken, const Metal* metal) {
        if (metal) {
            taken.slug = metal->slug;
            taken.metal = metal->name;
        }
        taken_[c.source].push_back(std::move(taken));
    };
    for (const Metal& metal : catalogue.metals) {
        if (!metal.composition.empty())
            add(metal.composition_citation, from(metal.composition_citation, "composition", ""), &metal);
        for (const Record& r : metal.records) {
            const Property* property = catalogue.property(r.property);
            Taken taken = from(r.citation, property ? property->label : r.property, printed_text(r));
            taken.use = r.use;
            add(r.citation, std::move(taken), &metal);
        }
    }
    for (const PriceSet& set : catalogue.price_sets)
        for (const Price& p : set.prices)
            add(p.citation, from(p.citation, "price, " + p.as_of, p.printed + " " + pretty_unit(p.unit)),
                catalogue.metal(p.metal));
    add_practice(catalogue);
    for (const Caution& c : catalogue.cautions) {
        Taken taken = from(c.citation, "caution", "");
        taken.metal = c.element;
        add(c.citation, std::move(taken), nullptr);
    }
}

void SourceIndex::add_practice(const Catalogue& catalogue) {
    const auto add_plain = [&](const Citation& c, const std::string& what, const std::string& printed) {
        taken_[c.source].push_back(from(c, what, printed));
    };
    for (const Practice& p : catalogue.practices)
        add_plain(p.citation, p.quantity, p.figure.printed.empty() ? p.text : p.figure.printed + " " + p.unit);
    for (const MagnetFigure& f : catalogue.magnet_figures)
        add_plain(f.citation, f.subject + ", " + f.quantity, f.printed + " " + f.unit);
    for (const PriceForm& f : catalogue.price_forms) add_plain(f.citation, "price form", f.form);
    for (const AtomicMass& m : catalogue.alloys.masses) add_plain(m.citation, "atomic mass", "");
    for (const SoluteEffect& e : catalogue.alloys.effects) add_plain(e.citation, "resistivity increment", "");
    for (const VolumeEffect& v : catalogue.alloys.volumes) add_plain(v.citation, "volume effect", "");
    for (const FrozenState& f : catalogue.alloys.frozen) add_plain(f.citation, "heat treatment", "");
    for (const auto& t : catalogue.alloys.tables) add_plain(t.citation, "resistivity of a binary system", "");
    for (const auto& d : catalogue.alloys.diagrams) {
        for (const auto& f : d.fields) add_plain(f.citation, "binary diagram", "");
        for (const Invariant& v : d.invariants) add_plain(v.citation, "binary diagram", "");
    }
}

const std::vector<Taken>& SourceIndex::taken_from(const std::string& key) const {
    static const std::vector<Taken> nothing;
    const auto at = taken_.find(key);
    return at == taken_.end() ? nothing : at->second;
}

} // namespace pourbook
