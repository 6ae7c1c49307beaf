#include "db/store/reference_rows.hpp"

namespace pourbook {
namespace {

Citation citation_from(Row& row) {
    Citation c;
    c.source = row.text();
    c.locator = row.text();
    c.how_known = row.how_known();
    return c;
}

void read_diagrams(SQLite::Database& db, AlloyData& a) {
    each(db, "SELECT a, b, solid, note FROM diagram ORDER BY position", [&](Row& row) {
        Diagram d;
        for (std::string* field : {&d.a, &d.b, &d.solid, &d.note}) *field = row.text();
        a.diagrams.push_back(std::move(d));
    });
    each(db,
         "SELECT diagram, left_phase, right_phase, note, source, locator, how_known FROM diagram_field ORDER BY "
         "diagram, position",
         [&](Row& row) {
             Diagram& d = a.diagrams.at(row.count());
             DiagramField f;
             for (std::string* field : {&f.left, &f.right, &f.note}) *field = row.text();
             f.citation = citation_from(row);
             d.fields.push_back(std::move(f));
         });
    each(db,
         "SELECT diagram, field, temperature_K, left_wt, right_wt FROM diagram_row ORDER BY diagram, field, position",
         [&](Row& row) {
             Diagram& d = a.diagrams.at(row.count());
             DiagramField& f = d.fields.at(row.count());
             DiagramRow r;
             for (double* field : {&r.temperature_K, &r.left_wt, &r.right_wt}) *field = row.number();
             f.rows.push_back(r);
         });
    each(db,
         "SELECT diagram, kind, temperature_K, source, locator, how_known FROM diagram_invariant ORDER BY diagram, "
         "position",
         [&](Row& row) {
             Diagram& d = a.diagrams.at(row.count());
             Invariant v;
             v.kind = row.text();
             v.temperature_K = row.number();
             v.citation = citation_from(row);
             d.invariants.push_back(std::move(v));
         });
    each(db, "SELECT diagram, invariant, phase, wt FROM diagram_phase ORDER BY diagram, invariant, position",
         [&](Row& row) {
             Diagram& d = a.diagrams.at(row.count());
             Invariant& v = d.invariants.at(row.count());
             PhaseContent p;
             p.phase = row.text();
             p.wt = row.number();
             v.phases.push_back(std::move(p));
         });
}

void read_solute_effects(SQLite::Database& db, AlloyData& a) {
    each(db,
         "SELECT host, solute, dissolved, per_atom, ohm_m_per_percent, use, source, locator, how_known FROM "
         "solute_effect ORDER BY position",
         [&](Row& row) {
             SoluteEffect e;
             e.host = row.text();
             e.solute = row.text();
             e.dissolved = row.flag();
             e.per_atom = row.flag();
             e.ohm_m_per_percent = row.number();
             e.use = row.use();
             e.citation = citation_from(row);
             a.effects.push_back(std::move(e));
         });
    each(db, "SELECT host, solute, percent, source, locator, how_known FROM volume_effect ORDER BY position",
         [&](Row& row) {
             VolumeEffect v;
             v.host = row.text();
             v.solute = row.text();
             v.percent = row.number();
             v.citation = citation_from(row);
             a.volumes.push_back(std::move(v));
         });
}

} // namespace

void read_alloy_data(SQLite::Database& db, AlloyData& a) {
    each(db, "SELECT element, g_per_mol, source, locator, how_known FROM atomic_mass ORDER BY element", [&](Row& row) {
        AtomicMass m;
        m.element = row.text();
        m.g_per_mol = row.number();
        m.citation = citation_from(row);
        a.masses.push_back(std::move(m));
    });
    read_solute_effects(db, a);
    each(db, "SELECT a, b, note, source, locator, how_known FROM resistivity_table ORDER BY position", [&](Row& row) {
        ResistivityTable t;
        for (std::string* field : {&t.a, &t.b, &t.note}) *field = row.text();
        t.citation = citation_from(row);
        a.tables.push_back(std::move(t));
    });
    each(db, "SELECT resistivity_table, wt, ohm_m FROM resistivity_point ORDER BY resistivity_table, position",
         [&](Row& row) {
             ResistivityTable& t = a.tables.at(row.count());
             TablePoint p;
             p.wt = row.number();
             p.ohm_m = row.number();
             t.points.push_back(p);
         });
    each(db,
         "SELECT host, treatment, temperature_K, share, source, locator, how_known FROM frozen_state ORDER BY position",
         [&](Row& row) {
             FrozenState s;
             s.host = row.text();
             s.treatment = row.text();
             s.temperature_K = row.number();
             s.share = row.number();
             s.citation = citation_from(row);
             a.frozen.push_back(std::move(s));
         });
    read_diagrams(db, a);
}

} // namespace pourbook
