#include "support/small_catalogue.hpp"

#include "db/store/reference_file.hpp"

namespace pourbook::testing {
namespace {

Reference reference(const std::string& key, const std::string& kind) {
    Reference r;
    r.key = key;
    r.kind = kind;
    r.reliability = "B";
    r.title = "Invented source " + key;
    return r;
}

Metal metal(const std::string& slug, const std::string& kind, std::vector<Portion> composition) {
    Metal m;
    m.slug = slug;
    m.name = slug + " metal";
    m.kind = kind;
    m.family = "copper";
    m.reference_condition = "annealed";
    m.composition = std::move(composition);
    if (kind == "alloy") m.composition_citation = {"handbook-1", "table 1", HowKnown::read, ""};
    return m;
}

} // namespace

const Catalogue& real_catalogue() {
    static const Catalogue catalogue = read_reference(POURBOOK_REFERENCE);
    return catalogue;
}

Price price(const std::string& slug, double usd_per_kg) {
    Price p;
    p.metal = slug;
    p.usd_per_kg = usd_per_kg;
    p.low_usd_per_kg = usd_per_kg * 0.9;
    p.high_usd_per_kg = usd_per_kg * 1.1;
    p.printed = "10";
    p.unit = "USD/kg";
    p.as_of = "2024";
    p.citation = {"handbook-1", "row", HowKnown::read, ""};
    return p;
}

Record series(const std::string& property, std::vector<std::pair<double, double>> points_K_si,
              const std::string& source) {
    Record r;
    r.id = "test." + property + "." + source;
    r.property = property;
    r.phase = Phase::solid;
    r.citation = {source, "table 1", HowKnown::read, ""};
    for (const auto& [t, v] : points_K_si) {
        Point p;
        p.temperature_K = t;
        p.value_si = v;
        p.printed = "printed";
        r.points.push_back(p);
    }
    return r;
}

Record single(const std::string& property, double value_si, const std::string& source) {
    Record r = series(property, {{no_number, value_si}}, source);
    r.phase = Phase::any;
    return r;
}

Catalogue small_catalogue() {
    Catalogue c;
    c.properties = real_catalogue().properties;
    c.references = {reference("handbook-1", "handbook"), reference("handbook-2", "handbook"),
                    reference("memory-1", "memory"), reference("review-1", "evaluated review")};
    Metal aa = metal("aa", "element", {{"Aa", 100, ""}});
    aa.records = {series("resistivity", {{100, 1e-8}, {200, 2e-8}, {300, 3e-8}, {400, 4e-8}}),
                  single("melting_point", 1000), series("density", {{293.15, 8000}})};
    Metal bb = metal("bb", "element", {{"Bb", 100, ""}});
    bb.records = {series("resistivity", {{293.15, 6e-8}}), single("melting_point", 800),
                  series("density", {{293.15, 4000}})};
    Metal ab = metal("ab", "alloy", {{"Aa", 60, ""}, {"Bb", 40, ""}});
    ab.records = {series("resistivity", {{293.15, 8e-8}}), single("solidus", 700), single("liquidus", 750),
                  series("density", {{293.15, 6000}})};
    c.metals = {aa, ab, bb};
    c.price_sets = {{"set", "set", "2024", "bar", "", {price("aa", 10), price("bb", 2)}}};
    c.index();
    return c;
}

} // namespace pourbook::testing
