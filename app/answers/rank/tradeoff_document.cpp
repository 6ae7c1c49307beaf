#include "answers/writers/document_parts.hpp"
#include "charts/words.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/hazard_mark.hpp"

namespace pourbook {
namespace {

/// One of the two goals: its names, and its cells.
struct OneGoal {
    const char* id;
    const std::string &label, &formula, &unit;
    bool high;
    MeritCells merit;

    OneGoal(const char* name, const std::string& of_label, const std::string& of_formula, const std::string& of_unit,
            bool best_high, const DocumentSetting& setting)
        : id(name), label(of_label), formula(of_formula), unit(of_unit), high(best_high),
          merit(of_formula, of_unit, setting) {}

    const std::string& title() const { return label.empty() ? formula : label; }
    std::string key(const char* of) const { return std::string(id) + "." + of; }

    void add_asked(Document& out) const {
        const std::string words = id;
        out.figures.emplace_back(words + " formula", formula, in::file);
        out.figures.emplace_back(words + " best", high ? "high" : "low", in::file);
        out.figures.emplace_back(key("label"), label, in::program);
        out.figures.emplace_back(key("formula"), formula, in::program);
        out.figures.emplace_back(key("unit"), unit, in::program);
        out.figures.emplace_back(key("best"), high ? "high" : "low", in::program);
    }
    void add_columns(DataTable& table) const {
        const std::string under = std::string(id) + "_", in_unit = merit.unit();
        const auto add = [&](const char* of, const std::string& words, unsigned shown_in) {
            table.columns.push_back({under + of, words, in_unit, true, false, shown_in, key(of)});
        };
        add("median", title() + ", median", in::program | in::file);
        add("median", title(), in::text);
        add("low90", title() + ", 90 % low", in::program | in::file);
        add("high90", title() + ", 90 % high", in::program | in::file);
        table.columns.push_back({under + "interval", "90 %", "", true, false, in::text});
    }
    void add_cells(std::vector<DataCell>& row, const Place& p) const {
        const DataCell median = merit.cell(p, 0);
        row.insert(row.end(), {median, median, merit.cell(p, 1), merit.cell(p, 2), DataCell::words(merit.interval(p))});
    }
};

std::string mark_of(const TradeoffPoint& p, const Catalogue& catalogue) {
    const std::string hazard = hazard_mark(catalogue, *p.metal);
    return hazard + (hazard.empty() || !p.from_memory ? "" : ", ") + (p.from_memory ? "remembered" : "");
}

DataTable table_of(const TradeoffResult& r, const OneGoal& one, const OneGoal& two, const Catalogue& catalogue) {
    DataTable table{"Two goals", {}, {}, in::all, "results"};
    add_metal_columns(table);
    one.add_columns(table);
    two.add_columns(table);
    const auto add = [&](const char* id, const char* title, unsigned shown_in) {
        table.columns.push_back({id, title, "", false, false, shown_in});
    };
    add("on_front", "on the front", in::program | in::file);
    add("beaten_by", "beaten in both by", in::program | in::file);
    add("front", "front", in::text);
    add("from_memory", "remembered", in::program);
    add("mark", "mark", in::text);
    add("sources", "sources", in::file);
    for (const TradeoffPoint& p : r.points) {
        std::vector<DataCell>& row = table.rows.emplace_back();
        add_metal_cells(row, *p.metal);
        one.add_cells(row, p.first);
        two.add_cells(row, p.second);
        DataCell sources;
        sources.sources = p.sources;
        row.insert(row.end(), {DataCell::both(p.on_front ? "yes" : "no", p.on_front), DataCell::words(p.beaten_by),
                               DataCell::words(p.on_front ? "on the front" : "beaten by " + p.beaten_by),
                               DataCell::both("", p.from_memory), DataCell::words(mark_of(p, catalogue)), sources});
    }
    return table;
}

} // namespace

Document document_of(const TradeoffResult& r, const DocumentSetting& setting) {
    const OneGoal one("first", r.first_label, r.first_formula, r.first_unit, r.first_high, setting);
    const OneGoal two("second", r.second_label, r.second_formula, r.second_unit, r.second_high, setting);
    Document out = start_document(one.title() + " and " + two.title(), r.conditions, setting, r.to_K);
    add_state(out, r.conditions);
    one.add_asked(out);
    two.add_asked(out);
    out.say("No metal beats those on the front in both " + one.title() + " and " + two.title() + ", " +
                conditions_text(r.conditions, r.to_K) + ".",
            in::text);
    out.parts.push_back(table_of(r, one, two, setting.catalogue));
    add_left_out(out, "Left out", "excluded", r.excluded, in::program | in::file);
    add_left_out(out, "Can't be ranked", "unrankable", r.unrankable, in::program | in::file);
    if (Sentence* last =
            out.say(std::to_string(r.excluded.size()) + " left out, " + std::to_string(r.unrankable.size()) +
                        " can't be ranked (reasons: --json). Data version " + out.data_version,
                    in::text))
        last->apart = true;
    collect_sources(out, setting.catalogue);
    return out;
}

} // namespace pourbook
