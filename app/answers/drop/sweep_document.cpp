#include "answers/drop/setup_document.hpp"
#include "answers/drop/sweep_json.hpp"
#include "answers/parts/json_parts.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

std::string swept_text(double x, int count) {
    return std::isfinite(x) ? significant(x, count) : "";
}

DataCell swept_cell(double x) {
    return DataCell::figure(x, swept_text(x, 4));
}

void add_resistivity_source(Document& out, const SweepLine& line, const Conditions& conditions,
                            const Catalogue& catalogue) {
    if (!line.metal) return;
    const Result<Evaluated> value = evaluate(catalogue, *line.metal, "resistivity", conditions);
    if (value && !value->sources.empty()) add_source(out, catalogue, value->sources.front().key);
}

/// A row a point: on a terminal with units as they suit each figure, in a file in one unit a column.
class SweepTable {
public:
    SweepTable(const SweepResult& result, const DocumentSetting& setting)
        : r_(result), setting_(setting), money_(shown_currency(setting.catalogue, setting.units)),
          workshop_(setting.units == UnitSystem::workshop),
          length_(workshop_ ? length_unit(setting.units) : NamedUnit{"m", 1}),
          mass_(workshop_ ? mass_unit(setting.units) : NamedUnit{"kg", 1}) {}

    DataTable table() const {
        DataTable out{"Sweep", {}, {}, in::text | in::file | in::window};
        const std::string over = name_of(r_.over), name = money_.name;
        for (const auto& [id, title] : {std::pair{"at", over.c_str()},
                                        {"name", "metal"},
                                        {"time", "time, s"},
                                        {"low", "90 % low"},
                                        {"high", "90 % high"},
                                        {"tube", "tube"},
                                        {"money", name.c_str()}})
            out.columns.push_back({id, title, "", std::string(id) != "name", false, in::text});
        out.columns.push_back({"per_mass", "s/kg", "", true, false, in::text});
        out.columns.push_back({"per_money", "s/" + name, "", true, false, in::text});
        const std::vector<DataColumn> file = {{"metal", "metal"},
                                              {"x", "swept " + over, swept_unit().name, true},
                                              {"wall_m", "wall", length_.name, true},
                                              {"fall_time_s", "fall time", "s", true},
                                              {"fall_time_low90_s", "fall time, 90 % low", "s", true},
                                              {"fall_time_high90_s", "fall time, 90 % high", "s", true},
                                              {"terminal_speed_m_s", "terminal speed", length_.name + "/s", true},
                                              {"tube_mass_kg", "mass of the tube", mass_.name, true},
                                              money_column("cost_", "cost of the metal", money_),
                                              {"reason", "why no value"}};
        for (DataColumn c : file) {
            c.shown_in = in::file | in::window;
            out.columns.push_back(std::move(c));
        }
        for (const SweepLine& line : r_.lines)
            for (const SweepPoint& p : line.points) {
                out.rows.push_back(for_people(line, p));
                add_for_file(out.rows.back(), line, p);
            }
        return out;
    }

private:
    std::string at(double x) const {
        if (r_.over == SweepOver::temperature) // in one column, from deep cold on
            return setting_.units == UnitSystem::workshop ? temperature_text(x, setting_.units) : trimmed(x, 6) + " K";
        if (r_.over == SweepOver::budget) return shown_money(setting_.catalogue, x, 3, setting_.units);
        return length_text(std::round(x * 1e7) / 1e7, setting_.units);
    }

    NamedUnit swept_unit() const {
        if (r_.over == SweepOver::temperature) return {"K", 1};
        return r_.over == SweepOver::budget ? NamedUnit{money_.name, money_.usd} : length_;
    }

    std::vector<DataCell> for_people(const SweepLine& line, const SweepPoint& p) const {
        std::vector<std::string> out = {at(p.x_si), line.name};
        if (!p.problem.empty())
            out.insert(out.end(), {"no value", "", "", p.problem, "", "", ""});
        else
            out.insert(out.end(), {swept_text(p.time_s, 3), swept_text(p.low90_s, 3), swept_text(p.high90_s, 3),
                                   std::isfinite(p.tube_mass_kg) ? mass_text(p.tube_mass_kg, setting_.units) : "",
                                   swept_text(money_.shown(p.cost_usd), 3), swept_text(p.time_s / p.tube_mass_kg, 3),
                                   swept_text(p.time_s / money_.shown(p.cost_usd), 3)});
        std::vector<DataCell> cells;
        for (const std::string& words : out) cells.push_back(DataCell::words(words));
        return cells;
    }

    void add_for_file(std::vector<DataCell>& row, const SweepLine& line, const SweepPoint& p) const {
        row.push_back(DataCell::words(line.name));
        for (const double x : {p.x_si / swept_unit().si, p.wall_m / length_.si, p.time_s, p.low90_s, p.high90_s,
                               p.terminal_speed_m_s / length_.si, p.tube_mass_kg / mass_.si, money_.shown(p.cost_usd)})
            row.push_back(swept_cell(x));
        row.push_back(DataCell::words(p.problem));
    }

    const SweepResult& r_;
    const DocumentSetting& setting_;
    ShownCurrency money_;
    bool workshop_;
    NamedUnit length_, mass_;
};

Json point_of(const SweepPoint& p) {
    Json out = {{"x", json_number(p.x_si)},
                {"wall_m", json_number(p.wall_m)},
                {"fall_time_s", json_number(p.time_s)},
                {"fall_time_low90_s", json_number(p.low90_s)},
                {"fall_time_high90_s", json_number(p.high90_s)},
                {"terminal_speed_m_s", json_number(p.terminal_speed_m_s)},
                {"tube_mass_kg", json_number(p.tube_mass_kg)},
                {"cost_usd", json_number(p.cost_usd)}};
    if (!p.problem.empty()) out["reason"] = p.problem;
    return out;
}

} // namespace

Document document_of(const SweepResult& r, const DocumentSetting& setting) {
    const UnitSystem units = setting.units;
    Document out = start_document(std::string("Fall time against ") + name_of(r.over), r.conditions, setting);
    for (const std::string& assumption : r.setup.assumptions) out.say(assumption, in::file);
    if (of_casting(r.conditions)) out.say("For a part " + state_line(*r.conditions.casting) + ".", in::file);
    if (!r.held.empty()) out.say("The wall is what " + r.held + " of metal leaves.", in::file);
    out.add_pairs("Set-up");
    out.parts.back().shown_in = in::text;
    out.pair("magnet", magnet_text(r.setup, units));
    out.pair("tube", tube_text(r.setup.inputs, units) + " (but for what is swept" +
                         (r.held.empty() ? "" : ", the wall of " + r.held) + ")");
    out.parts.push_back(SweepTable(r, setting).table());
    if (Sentence* rate = out.say(rate_sentence(setting.catalogue), in::text, "    ")) rate->apart = true;
    if (r.over == SweepOver::wall || r.over == SweepOver::budget)
        out.say("How thick is thick enough: a wall of " + length_text(r.wall_for_half_m, units) +
                    " gives half, one of " + length_text(r.wall_for_90_percent_m, units) +
                    " nine tenths of the time that an endless wall would give.",
                in::text | in::file, "    ")
            ->apart = true;
    add_grounds(out, r.setup, nullptr, setting);
    for (DataTable& part : out.parts)
        if (part.look == TableLook::lines) part.shown_in = in::text;
    if (Sentence* last = out.say(
            "Sources of each metal's figures: pourbook sheet METAL. Data version " + out.data_version, in::text))
        last->apart = true;
    for (const CitedFigure& f : r.setup.sources) add_source(out, setting.catalogue, f.citation.source);
    for (const SweepLine& line : r.lines) add_resistivity_source(out, line, r.conditions, setting.catalogue);
    return out;
}

std::string json_of(const SweepResult& r, const Catalogue& catalogue) {
    Json lines = Json::array();
    for (const SweepLine& line : r.lines) {
        Json points = Json::array();
        for (const SweepPoint& p : line.points) points.push_back(point_of(p));
        lines.push_back(
            {{"metal", line.metal ? Json(line.metal->slug) : Json(nullptr)}, {"name", line.name}, {"points", points}});
    }
    return json_text({{"over", name_of(r.over)},
                      {"unit", r.over == SweepOver::temperature ? "K"
                               : r.over == SweepOver::budget    ? "USD"
                                                                : "m"},
                      {"rate_of_exchange", json_rate(catalogue)},
                      {"lines", lines},
                      {"wall_for_half_of_endless_m", json_number(r.wall_for_half_m)},
                      {"wall_for_90_percent_of_endless_m", json_number(r.wall_for_90_percent_m)},
                      {"magnet_mass_kg", json_number(r.magnet_mass_kg)},
                      {"assumptions", r.setup.assumptions},
                      {"data_version", catalogue.data_version}});
}

} // namespace pourbook
