#include "db/store/reference_file.hpp"

#include "core/quantity/unit.hpp"
#include "db/store/reference_rows.hpp"

#include <filesystem>
#include <sstream>
#include <unordered_map>

namespace pourbook {
namespace {

Dimension dimension_of(const std::string& unit) {
    if (unit.empty() || unit == "1") return {};
    const Result<Unit> parsed = parse_unit(unit);
    if (!parsed) throw StoreError("unit '" + unit + "' of the reference can't be read");
    return parsed->dimension;
}

void read_properties(SQLite::Database& db, Catalogue& c) {
    each(db, "SELECT * FROM property ORDER BY position", [&](Row& row) {
        Property p;
        row.count();
        p.id = row.text();
        p.label = row.text();
        p.symbol = row.text();
        p.meaning = row.text();
        p.si_unit = row.text();
        p.shown_unit = row.text();
        p.workshop_unit = row.text();
        p.from = row.text();
        p.phase = row.phase();
        p.varies_with_temperature = row.flag();
        p.is_text = row.flag();
        p.plausible_low_si = row.number();
        p.plausible_high_si = row.number();
        p.default_uncertainty = row.number();
        p.default_uncertainty_si = row.number();
        p.point_reach_K = row.number();
        p.condition_spread = row.number();
        p.dimension = dimension_of(p.si_unit);
        c.properties.push_back(std::move(p));
    });
}

void read_references(SQLite::Database& db, Catalogue& c) {
    each(db, "SELECT * FROM reference ORDER BY key", [&](Row& row) {
        Reference r;
        for (std::string* field : {&r.key, &r.kind, &r.reliability, &r.authors, &r.title, &r.where, &r.year, &r.doi,
                                   &r.address, &r.read_in, &r.reuse, &r.note})
            *field = row.text();
        c.references.push_back(std::move(r));
    });
}

using MetalAt = std::unordered_map<std::string, std::size_t>;

MetalAt read_metals(SQLite::Database& db, Catalogue& c) {
    MetalAt at;
    each(db, "SELECT * FROM metal ORDER BY slug", [&](Row& row) {
        Metal m;
        for (std::string* field :
             {&m.slug, &m.name, &m.kind, &m.family, &m.reference_condition, &m.reference_temper, &m.note})
            *field = row.text();
        m.composition_citation.source = row.text();
        m.composition_citation.locator = row.text();
        const std::string how = row.text();
        m.composition_citation.how_known = how_known_named(how).value_or(HowKnown::read);
        at[m.slug] = c.metals.size();
        c.metals.push_back(std::move(m));
    });
    each(db, "SELECT metal, kind, name FROM other_name ORDER BY metal, kind, position", [&](Row& row) {
        Metal& m = c.metals[at.at(row.text())];
        auto& names = row.text() == "alias" ? m.aliases : m.designations;
        names.push_back(row.text());
    });
    each(db, "SELECT metal, element, wt_percent, limits FROM portion ORDER BY metal, position", [&](Row& row) {
        Metal& m = c.metals[at.at(row.text())];
        Portion p;
        p.element = row.text();
        p.wt_percent = row.number();
        p.limits = row.text();
        m.composition.push_back(std::move(p));
    });
    return at;
}

Record record_from(Row& row) {
    Record r;
    r.property = row.text();
    r.phase = row.phase();
    for (std::string* field : {&r.condition, &r.temper, &r.process, &r.purity, &r.unit, &r.text, &r.none})
        *field = row.text();
    for (double* field : {&r.from_K, &r.valid_low_K, &r.valid_high_K, &r.uncertainty_relative, &r.uncertainty_si})
        *field = row.number();
    r.uncertainty_printed = row.text();
    r.use = row.use();
    r.why = row.text();
    r.note = row.text();
    r.citation.source = row.text();
    r.citation.locator = row.text();
    r.citation.how_known = row.how_known();
    r.citation.through = row.text();
    return r;
}

void read_records(SQLite::Database& db, Catalogue& c, const MetalAt& at) {
    std::unordered_map<std::size_t, std::pair<std::size_t, std::size_t>> place; // record number -> metal, index
    each(db, "SELECT * FROM record ORDER BY number", [&](Row& row) {
        const std::size_t number = row.count();
        const std::string id = row.text();
        const std::size_t metal = at.at(row.text());
        Record r = record_from(row);
        r.id = id;
        place[number] = {metal, c.metals[metal].records.size()};
        c.metals[metal].records.push_back(std::move(r));
    });
    const auto record_at = [&](std::size_t number) -> Record& {
        const auto& [metal, index] = place.at(number);
        return c.metals[metal].records[index];
    };
    each(db, "SELECT record, temperature_K, value, low, high, half_digit, printed FROM point ORDER BY record, position",
         [&](Row& row) {
             Record& r = record_at(row.count());
             Point p;
             for (double* field : {&p.temperature_K, &p.value_si, &p.low_si, &p.high_si, &p.half_digit_si})
                 *field = row.number();
             p.printed = row.text();
             r.points.push_back(std::move(p));
         });
    each(db, "SELECT record, coefficients, offset_K, low_K, high_K, printed FROM equation ORDER BY record",
         [&](Row& row) {
             Record& r = record_at(row.count());
             Polynomial e;
             std::istringstream numbers(row.text());
             numbers.imbue(std::locale::classic());
             for (double x = 0; numbers >> x;) e.coefficient_si.push_back(x);
             for (double* field : {&e.offset_K, &e.low_K, &e.high_K}) *field = row.number();
             r.equation = std::move(e);
             r.equation_printed = row.text();
         });
}

void read_cautions(SQLite::Database& db, Catalogue& c) {
    each(db, "SELECT * FROM caution ORDER BY position", [&](Row& row) {
        Caution k;
        row.count();
        k.element = row.text();
        k.from_wt_percent = row.number();
        k.text = row.text();
        k.excludes_home_casting = row.flag();
        k.reason = row.text();
        k.citation.source = row.text();
        k.citation.locator = row.text();
        k.citation.how_known = row.how_known();
        c.cautions.push_back(std::move(k));
    });
}

void read_prices(SQLite::Database& db, Catalogue& c) {
    each(db, "SELECT * FROM price_set ORDER BY position", [&](Row& row) {
        PriceSet s;
        row.count();
        for (std::string* field : {&s.id, &s.name, &s.as_of, &s.form, &s.note}) *field = row.text();
        c.price_sets.push_back(std::move(s));
    });
    each(db, "SELECT * FROM price ORDER BY price_set, position", [&](Row& row) {
        PriceSet& set = c.price_sets.at(row.count());
        row.count();
        Price p;
        p.metal = row.text();
        for (double* field : {&p.usd_per_kg, &p.low_usd_per_kg, &p.high_usd_per_kg}) *field = row.number();
        for (std::string* field : {&p.printed, &p.unit, &p.as_of, &p.fresh_until, &p.form, &p.grade, &p.citation.source,
                                   &p.citation.locator})
            *field = row.text();
        p.citation.how_known = row.how_known();
        set.prices.push_back(std::move(p));
    });
}

void read_known_names(SQLite::Database& db, Catalogue& c) {
    each(db, "SELECT * FROM known_name ORDER BY position", [&](Row& row) {
        KnownName n;
        row.count();
        for (std::string* field : {&n.name, &n.metal, &n.note}) *field = row.text();
        c.known_names.push_back(std::move(n));
    });
}

void read_price_forms(SQLite::Database& db, Catalogue& c) {
    each(db, "SELECT * FROM price_form ORDER BY position", [&](Row& row) {
        PriceForm f;
        row.count();
        f.form = row.text();
        std::istringstream families(row.text());
        for (std::string family; std::getline(families, family);) f.families.push_back(family);
        f.low = row.number();
        f.high = row.number();
        f.note = row.text();
        f.citation.source = row.text();
        f.citation.locator = row.text();
        f.citation.how_known = row.how_known();
        c.price_forms.push_back(std::move(f));
    });
}

void read_goals(SQLite::Database& db, Catalogue& c) {
    each(db, "SELECT * FROM goal ORDER BY position", [&](Row& row) {
        Goal g;
        row.count();
        for (std::string* field : {&g.id, &g.label, &g.sentence, &g.formula}) *field = row.text();
        g.best_high = row.flag();
        g.only_home_casting = row.flag();
        g.only_non_ferromagnetic = row.flag();
        g.only_solid = row.flag();
        c.goals.push_back(std::move(g));
    });
    each(db, "SELECT goal, text FROM goal_condition ORDER BY goal, position", [&](Row& row) {
        Goal& g = c.goals.at(row.count());
        g.where.push_back(row.text());
    });
}

void read_practices(SQLite::Database& db, Catalogue& c) {
    each(db, "SELECT * FROM practice ORDER BY position", [&](Row& row) {
        Practice p;
        row.count();
        for (std::string* field : {&p.quantity, &p.metal, &p.family, &p.element, &p.process, &p.material, &p.grade})
            *field = row.text();
        for (double* field : {&p.from_wt_percent, &p.over_m, &p.up_to_m, &p.figure.value_si, &p.figure.low_si,
                              &p.figure.high_si, &p.figure.half_digit_si})
            *field = row.number();
        for (std::string* field :
             {&p.figure.printed, &p.unit, &p.text, &p.note, &p.citation.source, &p.citation.locator})
            *field = row.text();
        p.citation.how_known = row.how_known();
        p.citation.through = row.text();
        c.practices.push_back(std::move(p));
    });
}

void read_magnet_figures(SQLite::Database& db, Catalogue& c) {
    each(db, "SELECT * FROM magnet_figure ORDER BY position", [&](Row& row) {
        MagnetFigure f;
        row.count();
        for (std::string* field : {&f.subject, &f.material, &f.quantity}) *field = row.text();
        for (double* field : {&f.value_si, &f.low_si, &f.high_si}) *field = row.number();
        for (std::string* field : {&f.printed, &f.unit, &f.text, &f.note, &f.citation.source, &f.citation.locator})
            *field = row.text();
        f.citation.how_known = row.how_known();
        c.magnet_figures.push_back(std::move(f));
    });
}

void check_schema(SQLite::Database& db, const std::string& path) {
    const int number = db.execAndGet("PRAGMA user_version").getInt();
    if (number > schema_number)
        throw StoreError("'" + path + "' was made by a newer version (schema " + std::to_string(number) +
                         ", this program reads " + std::to_string(schema_number) + "): update the program");
    if (number < schema_number) throw StoreError("'" + path + "' is no reference of this program: build it again");
}

} // namespace

Catalogue read_reference(const std::string& path) {
    if (!std::filesystem::is_regular_file(path))
        throw StoreError("no reference database at '" + path + "': build it, or name one with --reference");
    try {
        SQLite::Database db(path, SQLite::OPEN_READONLY);
        check_schema(db, path);
        Catalogue c;
        c.data_version = db.execAndGet("SELECT value FROM meta WHERE key = 'data_version'").getString();
        read_properties(db, c);
        read_references(db, c);
        const MetalAt at = read_metals(db, c);
        read_records(db, c, at);
        read_cautions(db, c);
        read_prices(db, c);
        read_price_forms(db, c);
        read_known_names(db, c);
        read_goals(db, c);
        read_alloy_data(db, c.alloys);
        read_magnet_figures(db, c);
        read_practices(db, c);
        c.index();
        return c;
    } catch (const StoreError&) {
        throw;
    } catch (const std::bad_alloc&) {
        throw StoreError("there is not enough memory for the reference");
    } catch (const std::exception& e) {
        throw StoreError("'" + path + "' is damaged: " + e.what() + ": build it again");
    }
}

} // namespace pourbook
