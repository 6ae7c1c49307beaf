#include "db/store/reference_file.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cmath>
#include <filesystem>
#include <sstream>

namespace pourbook {
namespace {

/// One prepared insert, filled left to right; NaN becomes NULL.
class Insert {
public:
    Insert(SQLite::Database& db, const std::string& table, int columns) : statement_(db, text(table, columns)) {}

    template <class... Values> void operator()(const Values&... values) {
        int column = 0;
        (bind(++column, values), ...);
        statement_.exec();
        statement_.reset();
        statement_.clearBindings();
    }

private:
    static std::string text(const std::string& table, int columns) {
        std::string marks = "?";
        for (int i = 1; i < columns; ++i) marks += ",?";
        return "INSERT INTO " + table + " VALUES (" + marks + ")";
    }
    void bind(int column, double value) {
        if (!std::isnan(value)) statement_.bind(column, value);
    }
    void bind(int column, const std::string& value) { statement_.bind(column, value); }
    void bind(int column, const char* value) { statement_.bind(column, std::string(value)); }
    void bind(int column, bool value) { statement_.bind(column, value ? 1 : 0); }
    void bind(int column, std::size_t value) { statement_.bind(column, static_cast<std::int64_t>(value)); }

    SQLite::Statement statement_;
};

void write_properties(SQLite::Database& db, const Catalogue& c) {
    Insert insert(db, "property", 18);
    for (std::size_t i = 0; i < c.properties.size(); ++i) {
        const Property& p = c.properties[i];
        insert(i, p.id, p.label, p.symbol, p.meaning, p.si_unit, p.shown_unit, p.workshop_unit, p.from,
               name_of(p.phase), p.varies_with_temperature, p.is_text, p.plausible_low_si, p.plausible_high_si,
               p.default_uncertainty, p.default_uncertainty_si, p.point_reach_K, p.condition_spread);
    }
}

void write_references(SQLite::Database& db, const Catalogue& c) {
    Insert insert(db, "reference", 12);
    for (const Reference& r : c.references)
        insert(r.key, r.kind, r.reliability, r.authors, r.title, r.where, r.year, r.doi, r.address, r.read_in, r.reuse,
               r.note);
}

std::string joined(const std::vector<double>& numbers) {
    std::ostringstream text;
    text.imbue(std::locale::classic());
    text.precision(17);
    for (std::size_t i = 0; i < numbers.size(); ++i) text << (i ? " " : "") << numbers[i];
    return text.str();
}

class MetalWriter {
public:
    explicit MetalWriter(SQLite::Database& db)
        : metal_(db, "metal", 10), name_(db, "other_name", 4), portion_(db, "portion", 5), record_(db, "record", 25),
          point_(db, "point", 8), equation_(db, "equation", 6) {}

    void write(const Metal& m) {
        if (m.composition_citation.source.empty()) // pure metals: a definition needs no source
            metal_(m.slug, m.name, m.kind, m.family, m.reference_condition, m.reference_temper, m.note, no_number,
                   no_number, no_number);
        else
            metal_(m.slug, m.name, m.kind, m.family, m.reference_condition, m.reference_temper, m.note,
                   m.composition_citation.source, m.composition_citation.locator,
                   name_of(m.composition_citation.how_known));
        for (std::size_t i = 0; i < m.designations.size(); ++i) name_(m.slug, i, "designation", m.designations[i]);
        for (std::size_t i = 0; i < m.aliases.size(); ++i) name_(m.slug, i, "alias", m.aliases[i]);
        for (std::size_t i = 0; i < m.composition.size(); ++i)
            portion_(m.slug, i, m.composition[i].element, m.composition[i].wt_percent, m.composition[i].limits);
        for (const Record& r : m.records) write(m, r);
    }

private:
    void write(const Metal& m, const Record& r) {
        const std::size_t number = next_++;
        record_(number, r.id, m.slug, r.property, name_of(r.phase), r.condition, r.temper, r.process, r.purity, r.unit,
                r.text, r.none, r.from_K, r.valid_low_K, r.valid_high_K, r.uncertainty_relative, r.uncertainty_si,
                r.uncertainty_printed, name_of(r.use), r.why, r.note, r.citation.source, r.citation.locator,
                name_of(r.citation.how_known), r.citation.through);
        for (std::size_t i = 0; i < r.points.size(); ++i) {
            const Point& p = r.points[i];
            point_(number, i, p.temperature_K, p.value_si, p.low_si, p.high_si, p.half_digit_si, p.printed);
        }
        if (r.equation)
            equation_(number, joined(r.equation->coefficient_si), r.equation->offset_K, r.equation->low_K,
                      r.equation->high_K, r.equation_printed);
    }

    Insert metal_, name_, portion_, record_, point_, equation_;
    std::size_t next_ = 1;
};

void write_cautions(SQLite::Database& db, const Catalogue& c) {
    Insert insert(db, "caution", 9);
    for (std::size_t i = 0; i < c.cautions.size(); ++i) {
        const Caution& k = c.cautions[i];
        insert(i, k.element, k.from_wt_percent, k.text, k.excludes_home_casting, k.reason, k.citation.source,
               k.citation.locator, name_of(k.citation.how_known));
    }
}

void write_prices(SQLite::Database& db, const Catalogue& c) {
    Insert set(db, "price_set", 6), price(db, "price", 15);
    for (std::size_t i = 0; i < c.price_sets.size(); ++i) {
        const PriceSet& s = c.price_sets[i];
        set(i, s.id, s.name, s.as_of, s.form, s.note);
        for (std::size_t j = 0; j < s.prices.size(); ++j) {
            const Price& p = s.prices[j];
            price(i, j, p.metal, p.usd_per_kg, p.low_usd_per_kg, p.high_usd_per_kg, p.printed, p.unit, p.as_of,
                  p.fresh_until, p.form, p.grade, p.citation.source, p.citation.locator, name_of(p.citation.how_known));
        }
    }
}

void write_price_forms(SQLite::Database& db, const Catalogue& c) {
    Insert insert(db, "price_form", 9);
    for (std::size_t i = 0; i < c.price_forms.size(); ++i) {
        const PriceForm& f = c.price_forms[i];
        std::string families;
        for (const std::string& family : f.families) families += family + "\n";
        insert(i, f.form, families, f.low, f.high, f.note, f.citation.source, f.citation.locator,
               name_of(f.citation.how_known));
    }
}

void write_known_names(SQLite::Database& db, const Catalogue& c) {
    Insert insert(db, "known_name", 4);
    for (std::size_t i = 0; i < c.known_names.size(); ++i) {
        const KnownName& n = c.known_names[i];
        insert(i, n.name, n.metal, n.note);
    }
}

void write_goals(SQLite::Database& db, const Catalogue& c) {
    Insert goal(db, "goal", 9), condition(db, "goal_condition", 3);
    for (std::size_t i = 0; i < c.goals.size(); ++i) {
        const Goal& g = c.goals[i];
        goal(i, g.id, g.label, g.sentence, g.formula, g.best_high, g.only_home_casting, g.only_non_ferromagnetic,
             g.only_solid);
        for (std::size_t j = 0; j < g.where.size(); ++j) condition(i, j, g.where[j]);
    }
}

void write_practices(SQLite::Database& db, const Catalogue& c) {
    Insert insert(db, "practice", 23);
    for (std::size_t i = 0; i < c.practices.size(); ++i) {
        const Practice& p = c.practices[i];
        insert(i, p.quantity, p.metal, p.family, p.element, p.process, p.material, p.grade, p.from_wt_percent, p.over_m,
               p.up_to_m, p.figure.value_si, p.figure.low_si, p.figure.high_si, p.figure.half_digit_si,
               p.figure.printed, p.unit, p.text, p.note, p.citation.source, p.citation.locator,
               name_of(p.citation.how_known), p.citation.through);
    }
}

void write_magnet_figures(SQLite::Database& db, const Catalogue& c) {
    Insert insert(db, "magnet_figure", 14);
    for (std::size_t i = 0; i < c.magnet_figures.size(); ++i) {
        const MagnetFigure& f = c.magnet_figures[i];
        insert(i, f.subject, f.material, f.quantity, f.value_si, f.low_si, f.high_si, f.printed, f.unit, f.text, f.note,
               f.citation.source, f.citation.locator, name_of(f.citation.how_known));
    }
}

void write_diagrams(SQLite::Database& db, const AlloyData& a) {
    Insert diagram(db, "diagram", 5), field(db, "diagram_field", 8), row(db, "diagram_row", 6),
        invariant(db, "diagram_invariant", 7), phase(db, "diagram_phase", 5);
    for (std::size_t i = 0; i < a.diagrams.size(); ++i) {
        const Diagram& d = a.diagrams[i];
        diagram(i, d.a, d.b, d.solid, d.note);
        for (std::size_t j = 0; j < d.fields.size(); ++j) {
            const DiagramField& f = d.fields[j];
            field(i, j, f.left, f.right, f.note, f.citation.source, f.citation.locator, name_of(f.citation.how_known));
            for (std::size_t k = 0; k < f.rows.size(); ++k)
                row(i, j, k, f.rows[k].temperature_K, f.rows[k].left_wt, f.rows[k].right_wt);
        }
        for (std::size_t j = 0; j < d.invariants.size(); ++j) {
            const Invariant& v = d.invariants[j];
            invariant(i, j, v.kind, v.temperature_K, v.citation.source, v.citation.locator,
                      name_of(v.citation.how_known));
            for (std::size_t k = 0; k < v.phases.size(); ++k) phase(i, j, k, v.phases[k].phase, v.phases[k].wt);
        }
    }
}

void write_alloy_data(SQLite::Database& db, const AlloyData& a) {
    Insert mass(db, "atomic_mass", 5), effect(db, "solute_effect", 10), volume(db, "volume_effect", 7),
        table(db, "resistivity_table", 7), point(db, "resistivity_point", 4), frozen(db, "frozen_state", 8);
    const auto how = [](const Citation& c) { return name_of(c.how_known); };
    for (const AtomicMass& m : a.masses)
        mass(m.element, m.g_per_mol, m.citation.source, m.citation.locator, how(m.citation));
    for (std::size_t i = 0; i < a.effects.size(); ++i) {
        const SoluteEffect& e = a.effects[i];
        effect(i, e.host, e.solute, e.dissolved, e.per_atom, e.ohm_m_per_percent, name_of(e.use), e.citation.source,
               e.citation.locator, how(e.citation));
    }
    for (std::size_t i = 0; i < a.volumes.size(); ++i) {
        const VolumeEffect& v = a.volumes[i];
        volume(i, v.host, v.solute, v.percent, v.citation.source, v.citation.locator, how(v.citation));
    }
    for (std::size_t i = 0; i < a.tables.size(); ++i) {
        const ResistivityTable& t = a.tables[i];
        table(i, t.a, t.b, t.note, t.citation.source, t.citation.locator, how(t.citation));
        for (std::size_t k = 0; k < t.points.size(); ++k) point(i, k, t.points[k].wt, t.points[k].ohm_m);
    }
    for (std::size_t i = 0; i < a.frozen.size(); ++i) {
        const FrozenState& s = a.frozen[i];
        frozen(i, s.host, s.treatment, s.temperature_K, s.share, s.citation.source, s.citation.locator,
               how(s.citation));
    }
    write_diagrams(db, a);
}

void fill(const Catalogue& c, const std::string& path) {
    SQLite::Database db(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec("PRAGMA journal_mode = OFF");
    db.exec("PRAGMA foreign_keys = ON");
    SQLite::Transaction transaction(db);
    db.exec(reference_schema());
    db.exec("PRAGMA user_version = " + std::to_string(schema_number));
    Insert(db, "meta", 2)("data_version", c.data_version);
    write_properties(db, c);
    write_references(db, c);
    MetalWriter metals(db);
    for (const Metal& m : c.metals) metals.write(m);
    write_cautions(db, c);
    write_prices(db, c);
    write_price_forms(db, c);
    write_known_names(db, c);
    write_goals(db, c);
    write_alloy_data(db, c.alloys);
    write_magnet_figures(db, c);
    write_practices(db, c);
    transaction.commit();
}

} // namespace

void write_reference(const Catalogue& catalogue, const std::string& path) {
    namespace fs = std::filesystem;
    const std::string draft = path + ".draft";
    std::error_code ignored;
    fs::remove(draft, ignored);
    try {
        fill(catalogue, draft);
        fs::rename(draft, path);
    } catch (const std::exception& e) {
        fs::remove(draft, ignored);
        throw StoreError("can't write '" + path + "': " + e.what());
    }
}

} // namespace pourbook
