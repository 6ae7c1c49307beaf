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

Taken of_record(const Catalogue& catalogue, const Record& r) {
    const Property* property = catalogue.property(r.property);
    Taken taken{"", "", property ? property->label : r.property, printed_text(r)};
    taken.use = r.use;
    return taken;
}

Taken of_metal(const Metal* metal, Taken taken) {
    if (!metal) return taken;
    taken.slug = metal->slug;
    taken.metal = metal->name;
    return taken;
}

/// Hands use() every citation, with a function that makes what is told of it: most are only counted.
template <class Use> void each_of_metals(const Catalogue& catalogue, const Use& use) {
    for (const Metal& metal : catalogue.metals) {
        if (!metal.composition.empty())
            use(metal.composition_citation, [&] { return of_metal(&metal, {"", "", "composition", ""}); });
        for (const Record& r : metal.records)
            use(r.citation, [&] { return of_metal(&metal, of_record(catalogue, r)); });
    }
    for (const PriceSet& set : catalogue.price_sets)
        for (const Price& p : set.prices)
            use(p.citation, [&] {
                return of_metal(catalogue.metal(p.metal),
                                {"", "", "price, " + p.as_of, p.printed + " " + pretty_unit(p.unit)});
            });
}

/// What belongs to no single metal: practice, magnets, diagrams ...
template <class Use> void each_of_practice(const Catalogue& catalogue, const Use& use) {
    const auto plain = [&](const Citation& c, const char* what) { use(c, [&] { return Taken{"", "", what, ""}; }); };
    for (const Practice& p : catalogue.practices)
        use(p.citation, [&] {
            return Taken{"", "", p.quantity, p.figure.printed.empty() ? p.text : p.figure.printed + " " + p.unit};
        });
    for (const MagnetFigure& f : catalogue.magnet_figures)
        use(f.citation, [&] { return Taken{"", "", f.subject + ", " + f.quantity, f.printed + " " + f.unit}; });
    for (const PriceForm& f : catalogue.price_forms)
        use(f.citation, [&] { return Taken{"", "", "price form", f.form}; });
    for (const AtomicMass& m : catalogue.alloys.masses) plain(m.citation, "atomic mass");
    for (const SoluteEffect& e : catalogue.alloys.effects) plain(e.citation, "resistivity increment");
    for (const VolumeEffect& v : catalogue.alloys.volumes) plain(v.citation, "volume effect");
    for (const FrozenState& f : catalogue.alloys.frozen) plain(f.citation, "heat treatment");
    for (const auto& t : catalogue.alloys.tables) plain(t.citation, "resistivity of a binary system");
    for (const auto& d : catalogue.alloys.diagrams) {
        for (const auto& f : d.fields) plain(f.citation, "binary diagram");
        for (const Invariant& v : d.invariants) plain(v.citation, "binary diagram");
    }
    for (const Caution& c : catalogue.cautions) use(c.citation, [&] { return Taken{"", c.element, "caution", ""}; });
}

template <class Use> void each_citation(const Catalogue& catalogue, const Use& use) {
    each_of_metals(catalogue, use);
    each_of_practice(catalogue, use);
}

} // namespace

SourceIndex::SourceIndex(const Catalogue& catalogue) : catalogue_(catalogue) {
    each_citation(catalogue, [this](const Citation& c, const auto&) { ++count_[c.source]; });
}

std::size_t SourceIndex::count(const std::string& key) const {
    const auto at = count_.find(key);
    return at == count_.end() ? 0 : at->second;
}

const std::vector<Taken>& SourceIndex::taken_from(const std::string& key) {
    if (key == key_) return taken_;
    key_ = key;
    taken_.clear();
    each_citation(catalogue_, [this](const Citation& c, const auto& taken) {
        if (c.source != key_) return;
        taken_.push_back(taken());
        taken_.back().locator = c.locator;
        taken_.back().through = c.through;
        taken_.back().how_known = c.how_known;
    });
    return taken_;
}

} // namespace pourbook
