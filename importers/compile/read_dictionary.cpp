#include "importers/compile/read_dictionary.hpp"

#include "importers/compile/figure.hpp"
#include "importers/compile/read_record.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

/// Calls take(fields) for each object of a list; a faulty one is noted and left out.
template <class Take>
void each_of(const std::string& path, const JsonNode& list, const std::string& place, Faults& faults, Take take) {
    if (list.kind != JsonNode::Kind::list) {
        faults.push_back(InputError(path, list.line, place, "a list [ ] is expected").what());
        return;
    }
    for (std::size_t i = 0; i < list.items.size(); ++i) {
        try {
            Fields f(path, place + "/" + std::to_string(i), list.items[i]);
            take(f);
            f.finish();
        } catch (const InputError& e) {
            faults.push_back(e.what());
        }
    }
}

Unit unit_named(Fields& f, const std::string& key, const std::string& text) {
    if (text.empty() || text == "1") return Unit{};
    const Result<Unit> unit = parse_unit(text);
    if (!unit) f.fail(key, unit.problem().text + " in '" + text + "'");
    return *unit;
}

/// "3 %" is relative, "5 K" absolute.
void read_default_uncertainty(Property& p, Fields& f) {
    const std::string text = f.text_or("default_uncertainty", "");
    if (text.empty()) return;
    const Result<Quantity> q = parse_quantity(text);
    if (!q) f.fail("default_uncertainty", "\"3 %\" or \"5 K\" is expected");
    (q->dimension.dimensionless() ? p.default_uncertainty : p.default_uncertainty_si) = q->si;
}

Property read_property(Fields& f) {
    Property p;
    p.id = f.text("id");
    p.label = f.text("label");
    p.meaning = f.text("meaning");
    p.symbol = f.text_or("symbol", "");
    p.is_text = f.flag_or("text", false);
    if (p.is_text) return p;
    p.si_unit = f.text("si_unit");
    p.shown_unit = f.text("shown_unit");
    p.workshop_unit = f.text("workshop_unit");
    p.dimension = unit_named(f, "si_unit", p.si_unit).dimension;
    for (const char* key : {"shown_unit", "workshop_unit"}) {
        const Dimension d = unit_named(f, key, f.text(key)).dimension;
        const bool electrical = p.id == "resistivity" && d == p.dimension.power(-1);
        if (!(d == p.dimension) && !electrical) f.fail(key, "differs in kind from si_unit");
    }
    p.varies_with_temperature = f.flag_or("temperature", false);
    p.from = f.text_or("derived_from", "");
    const auto phase = phase_named(f.text_or("phase", "any"));
    if (!phase) f.fail("phase", "solid or liquid is expected");
    p.phase = *phase;
    const auto range = f.texts("plausible");
    if (range.size() == 2 &&
        !(whole_number(range[0], p.plausible_low_si) && whole_number(range[1], p.plausible_high_si)))
        f.fail("plausible", "two numbers in SI are expected");
    read_default_uncertainty(p, f);
    p.point_reach_K = f.number_or("point_reach_K", 0);
    const Result<Quantity> spread = parse_quantity(f.text_or("condition_spread", "0"));
    if (!spread) f.fail("condition_spread", "\"10 %\" is expected");
    p.condition_spread = spread->si;
    return p;
}

Price read_price(Fields& f, const PriceSet& set, const std::string& set_fresh_until, const Catalogue& catalogue) {
    static const Dimension per_mass = parse_unit("USD/kg")->dimension;
    Price p;
    p.metal = f.text("metal");
    const Metal* metal = catalogue.metal(p.metal);
    if (!metal || metal->slug != p.metal) f.fail("metal", "no metal file '" + p.metal + "'");
    p.unit = f.text("unit");
    const Unit unit = unit_named(f, "unit", p.unit);
    if (!(unit.dimension == per_mass)) f.fail("unit", "a price per mass in USD is expected");
    p.printed = f.text("value");
    const auto number = [&](const char* key) {
        const std::string text = f.text_or(key, "");
        if (text.empty()) return no_number;
        const Result<Point> figure = read_figure(text, unit);
        if (!figure || figure->is_bound() || !(figure->value_si > 0)) f.fail(key, "'" + text + "' is no price");
        return figure->value_si;
    };
    p.usd_per_kg = number("value");
    p.low_usd_per_kg = number("low");
    p.high_usd_per_kg = number("high");
    p.as_of = f.text_or("as_of", set.as_of);
    p.fresh_until = set_fresh_until;
    p.form = f.text_or("form", set.form);
    if (f.has("rule")) p.form += (p.form.empty() ? "" : "; ") + f.text("rule");
    p.grade = f.text_or("grade", "");
    f.text_or("note", "");
    p.citation = read_citation(f, catalogue);
    return p;
}

} // namespace

void read_properties(const std::string& path, Catalogue& catalogue, Faults& faults) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    each_of(path, root, "properties", faults, [&](Fields& f) { catalogue.properties.push_back(read_property(f)); });
}

void read_references(const std::string& path, Catalogue& catalogue, Faults& faults) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    each_of(path, root, "references", faults, [&](Fields& f) {
        Reference r;
        r.key = f.text("key");
        if (std::any_of(catalogue.references.begin(), catalogue.references.end(),
                        [&](const Reference& o) { return o.key == r.key; }))
            f.fail("key", "'" + r.key + "' stands twice");
        r.kind = f.text("kind");
        r.reliability = f.text("reliability");
        r.title = f.text("title");
        r.authors = f.text_or("authors", "");
        r.where = f.text_or("where", "");
        r.year = f.text_or("year", "");
        r.doi = f.text_or("doi", "");
        r.address = f.text_or("address", "");
        r.read_in = f.text_or("read_in", "");
        r.reuse = f.text_or("reuse", "");
        r.note = f.text_or("note", "");
        catalogue.references.push_back(std::move(r));
    });
    std::sort(catalogue.references.begin(), catalogue.references.end(),
              [](const Reference& a, const Reference& b) { return a.key < b.key; });
}

void read_cautions(const std::string& path, Catalogue& catalogue, Faults& faults) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    Fields top(path, "", root);
    const JsonNode* list = top.node("cautions");
    each_of(path, list ? *list : root, "cautions", faults, [&](Fields& f) {
        Caution c;
        c.element = f.text("element");
        c.from_wt_percent = f.number_or("from_wt_percent", 0);
        c.text = f.text("text");
        const std::string home = f.text("home_casting");
        if (home != "caution" && home != "excluded") f.fail("home_casting", "caution or excluded is expected");
        c.excludes_home_casting = home == "excluded";
        c.reason = c.excludes_home_casting ? f.text("reason") : f.text_or("reason", "");
        c.citation = read_citation(f, catalogue);
        catalogue.cautions.push_back(std::move(c));
    });
}

void read_price_set(const std::string& path, Catalogue& catalogue, Faults& faults) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    Fields top(path, "", root);
    PriceSet set;
    set.id = top.text("id");
    set.name = top.text("name");
    set.as_of = top.text("as_of");
    set.form = top.text_or("form", "");
    set.note = top.text_or("note", "");
    const std::string fresh_until = top.text("fresh_until"); // year and month
    if (top.text("currency") != "USD")
        top.fail("currency", "only USD is read: another currency needs a dated, cited rate");
    const JsonNode* entries = top.node("entries");
    each_of(path, entries ? *entries : root, "entries", faults,
            [&](Fields& f) { set.prices.push_back(read_price(f, set, fresh_until, catalogue)); });
    top.finish();
    catalogue.price_sets.push_back(std::move(set));
}

void read_price_forms(const std::string& path, Catalogue& catalogue, Faults& faults) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    Fields top(path, "", root);
    const JsonNode* list = top.node("forms");
    each_of(path, list ? *list : root, "forms", faults, [&](Fields& f) {
        PriceForm form;
        form.form = f.text("form");
        if (form.form != "retail" && form.form != "scrap") f.fail("form", "retail or scrap is expected");
        form.families = f.texts("families");
        form.low = f.number_or("low", 0);
        form.high = f.number_or("high", 0);
        if (!(form.low > 0 && form.high >= form.low)) f.fail("low", "two rising factors, low and high, are expected");
        form.note = f.text_or("note", "");
        form.citation = read_citation(f, catalogue);
        catalogue.price_forms.push_back(std::move(form));
    });
}

void read_goal(const std::string& path, Catalogue& catalogue, Faults&) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    Fields f(path, "", root);
    Goal g;
    g.id = f.text("id");
    g.label = f.text("label");
    g.sentence = f.text("sentence");
    g.formula = f.text("formula");
    g.where = f.texts("where");
    const std::string best = f.text("best");
    if (best != "high" && best != "low") f.fail("best", "high or low is expected");
    g.best_high = best == "high";
    for (const std::string& only : f.texts("only")) {
        if (only == "solid")
            g.only_solid = true;
        else if (only == "non-ferromagnetic")
            g.only_non_ferromagnetic = true;
        else if (only == "home casting")
            g.only_home_casting = true;
        else
            f.fail("only", "solid, non-ferromagnetic or home casting is expected");
    }
    f.finish();
    catalogue.goals.push_back(std::move(g));
}

void read_known_names(const std::string& path, Catalogue& catalogue, Faults& faults) {
    each_of(path, parse_located_json(path, read_text_file(path)), "", faults, [&](Fields& f) {
        KnownName n{f.text("name"), f.text_or("metal", ""), f.text("note")};
        if (catalogue.metal(n.name)) f.fail("name", "'" + n.name + "' is a name of " + catalogue.metal(n.name)->slug);
        const Metal* near = catalogue.metal(n.metal);
        if (!n.metal.empty() && (!near || near->slug != n.metal)) f.fail("metal", "'" + n.metal + "' is no slug");
        catalogue.known_names.push_back(std::move(n));
    });
}

} // namespace pourbook
