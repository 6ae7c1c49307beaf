#include "importers/compile/read_diagrams.hpp"

#include "importers/compile/read_record.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

using Faults = std::vector<std::string>;

/// Calls take(fields) for each object of a list; a faulty one is noted and left out.
template <class Take> void each_of(Fields& top, const std::string& key, Faults& faults, Take take) {
    const JsonNode* list = top.node(key);
    if (!list) return;
    if (list->kind != JsonNode::Kind::list) top.fail(key, "a list [ ] is expected");
    for (std::size_t i = 0; i < list->items.size(); ++i) {
        try {
            Fields f(top.file(), key + "/" + std::to_string(i), list->items[i]);
            take(f);
            f.finish();
        } catch (const InputError& e) {
            faults.push_back(e.what());
        }
    }
}

double number(Fields& f, const std::string& key) {
    double value = 0;
    if (!whole_number(f.text(key), value)) f.fail(key, "'" + f.text(key) + "' is no number");
    return value;
}

double kelvin(Fields& f, const std::string& key, const std::string& text, const std::string& unit) {
    double value = 0;
    if (!whole_number(text, value)) f.fail(key, "'" + text + "' is no temperature");
    const Result<Unit> t = parse_unit(unit);
    if (!t || !(t->dimension == base_dimension(Dimension::kelvin))) f.fail(key, "K, degC or degF is expected");
    return t->to_si(value);
}

double percent(Fields& f, const std::string& key, const std::string& text) {
    double value = 0;
    if (!whole_number(text, value) || value < 0 || value > 100) f.fail(key, "'" + text + "' is no per cent");
    return value;
}

std::string element(Fields& f, const std::string& key, const Catalogue& c) {
    const std::string symbol = f.text(key);
    if (!c.alloys.mass(symbol)) f.fail(key, "'" + symbol + "' has no atomic mass in atomic_masses.json");
    return symbol;
}

/// The texts of a list of lists, each `width` long.
std::vector<std::vector<std::string>> rows(Fields& f, const std::string& key, std::size_t width) {
    std::vector<std::vector<std::string>> out;
    const JsonNode* list = f.node(key);
    if (!list || list->kind != JsonNode::Kind::list) f.fail(key, "a list of rows is expected");
    for (const JsonNode& row : list->items) {
        std::vector<std::string> texts;
        for (const JsonNode& item : row.items) texts.push_back(item.text);
        if (texts.size() != width) f.fail_at(row, key, std::to_string(width) + " figures a row are expected");
        out.push_back(std::move(texts));
    }
    if (out.empty()) f.fail(key, "is empty");
    return out;
}

DiagramField read_field(Fields& f, const std::string& unit, const Catalogue& c) {
    DiagramField field;
    field.left = f.text("left");
    field.right = f.text("right");
    for (const auto& row : rows(f, "rows", 3)) {
        DiagramRow r{kelvin(f, "rows", row[0], unit), percent(f, "rows", row[1]), percent(f, "rows", row[2])};
        if (r.left_wt > r.right_wt) f.fail("rows", "left is richer than right at " + row[0]);
        field.rows.push_back(r);
    }
    std::sort(field.rows.begin(), field.rows.end(),
              [](const DiagramRow& x, const DiagramRow& y) { return x.temperature_K < y.temperature_K; });
    for (std::size_t i = 1; i < field.rows.size(); ++i)
        if (!(field.rows[i].temperature_K > field.rows[i - 1].temperature_K))
            f.fail("rows", "a temperature stands twice");
    if (field.rows.size() < 2) f.fail("rows", "two rows at least are expected");
    field.note = f.text_or("note", "");
    field.citation = read_citation(f, c);
    return field;
}

Invariant read_invariant(Fields& f, const std::string& unit, const Catalogue& c) {
    Invariant v;
    v.kind = f.text("kind");
    v.temperature_K = kelvin(f, "temperature", f.text("temperature"), unit);
    const JsonNode* phases = f.node("phases");
    if (phases)
        for (const auto& [phase, wt] : phases->members) v.phases.push_back({phase, percent(f, "phases", wt.text)});
    v.citation = read_citation(f, c);
    return v;
}

SoluteEffect read_effect(Fields& f, const Catalogue& c) {
    SoluteEffect e;
    e.host = element(f, "host", c);
    e.solute = element(f, "solute", c);
    const std::string state = f.text("state"), per = f.text("per");
    if (state != "dissolved" && state != "precipitated") f.fail("state", "dissolved or precipitated is expected");
    if (per != "at%" && per != "wt%") f.fail("per", "at% or wt% is expected");
    e.dissolved = state == "dissolved";
    e.per_atom = per == "at%";
    e.ohm_m_per_percent = number(f, "value") * 1e-8; // printed in microohm cm
    const auto use = use_named(f.text_or("use", "alternate"));
    if (!use) f.fail("use", "preferred, disputed or superseded is expected");
    e.use = *use;
    e.citation = read_citation(f, c);
    return e;
}

ResistivityTable read_table(Fields& f, const Catalogue& c) {
    ResistivityTable t;
    t.a = element(f, "a", c);
    t.b = element(f, "b", c);
    if (f.text("composition") != "wt% of b") f.fail("composition", "'wt% of b' is expected");
    if (f.text("unit") != "uohm.cm") f.fail("unit", "uohm.cm is expected");
    f.text("temperature");
    for (const auto& row : rows(f, "points", 2)) {
        double rho = 0;
        if (!whole_number(row[1], rho) || !(rho > 0)) f.fail("points", "'" + row[1] + "' is no resistivity");
        t.points.push_back({percent(f, "points", row[0]), rho * 1e-8});
    }
    t.note = f.text_or("note", "");
    t.citation = read_citation(f, c);
    return t;
}

FrozenState read_frozen(Fields& f, const Catalogue& c) {
    FrozenState s;
    s.host = element(f, "host", c);
    s.treatment = f.text("treatment");
    if (f.has("temperature"))
        s.temperature_K = kelvin(f, "temperature", f.text("temperature"), f.text("temperature_unit"));
    s.share = f.number_or("share", no_number);
    if (std::isnan(s.temperature_K) == std::isnan(s.share)) f.fail("", "temperature or share is expected, one of them");
    s.citation = read_citation(f, c);
    return s;
}

} // namespace

void read_atomic_masses(const std::string& path, Catalogue& catalogue, Faults&) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    Fields f(path, "", root);
    if (f.text("unit") != "g/mol") f.fail("unit", "g/mol is expected");
    const Citation citation = read_citation(f, catalogue);
    const JsonNode* masses = f.node("masses");
    if (!masses) f.fail("masses", "is missing");
    for (const auto& [symbol, printed] : masses->members) {
        double mass = 0;
        if (!whole_number(printed.text, mass) || !(mass > 0)) f.fail_at(printed, "masses", "is no mass");
        catalogue.alloys.masses.push_back({symbol, mass, citation});
    }
    f.finish();
}

void read_increments(const std::string& path, Catalogue& catalogue, Faults& faults) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    Fields top(path, "", root);
    AlloyData& a = catalogue.alloys;
    each_of(top, "resistivity", faults, [&](Fields& f) { a.effects.push_back(read_effect(f, catalogue)); });
    each_of(top, "volume", faults, [&](Fields& f) {
        VolumeEffect v{element(f, "host", catalogue), element(f, "solute", catalogue), number(f, "percent"), {}};
        v.citation = read_citation(f, catalogue);
        a.volumes.push_back(std::move(v));
    });
    each_of(top, "tables", faults, [&](Fields& f) { a.tables.push_back(read_table(f, catalogue)); });
    each_of(top, "treatments", faults, [&](Fields& f) { a.frozen.push_back(read_frozen(f, catalogue)); });
    top.finish();
}

void read_diagram(const std::string& path, Catalogue& catalogue, Faults& faults) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    Fields f(path, "", root);
    Diagram d;
    d.a = element(f, "a", catalogue);
    d.b = element(f, "b", catalogue);
    if (f.text("composition") != "wt% of b") f.fail("composition", "'wt% of b' is expected");
    const std::string unit = f.text("temperature_unit");
    d.solid = f.text_or("solid", "");
    d.note = f.text_or("note", "");
    each_of(f, "fields", faults, [&](Fields& x) { d.fields.push_back(read_field(x, unit, catalogue)); });
    each_of(f, "invariants", faults, [&](Fields& x) { d.invariants.push_back(read_invariant(x, unit, catalogue)); });
    f.finish();
    catalogue.alloys.diagrams.push_back(std::move(d));
}

} // namespace pourbook
