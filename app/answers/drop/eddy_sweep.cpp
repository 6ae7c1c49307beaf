// The sweep as JSON and as text.
#include "answers/drop/eddy_json.hpp"
#include "answers/drop/eddy_text.hpp"

#include "answers/drop/eddy_words.hpp"
#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/shown_money.hpp"

#include <cmath>
#include <sstream>

namespace pourbook {
namespace {

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

const char* unit_of(SweepOver over) {
    return over == SweepOver::temperature ? "K" : over == SweepOver::budget ? "USD" : "m";
}

std::string x_text(const SweepResult& r, double x, const Catalogue& catalogue, UnitSystem units) {
    if (r.over == SweepOver::temperature) return temperature_words(x, units);
    if (r.over == SweepOver::budget) return shown_money(catalogue, x, 3, units);
    return length_text(std::round(x * 1e7) / 1e7, units);
}

std::string figure(double x, int figures) {
    return std::isfinite(x) ? significant(x, figures) : "";
}

Table table_of(const SweepResult& r, const Catalogue& catalogue, UnitSystem units) {
    const ShownCurrency money = shown_currency(catalogue, units);
    Table t{{{name_of(r.over), true},
             {"metal"},
             {"time, s", true},
             {"90 % low", true},
             {"90 % high", true},
             {"tube", true},
             {money.name, true},
             {"s/kg", true},
             {"s/" + money.name, true}},
            {}};
    for (const SweepLine& line : r.lines)
        for (const SweepPoint& p : line.points) {
            if (!p.problem.empty()) {
                t.rows.push_back(
                    {x_text(r, p.x_si, catalogue, units), line.name, "no value", "", "", p.problem, "", "", ""});
                continue;
            }
            t.rows.push_back({x_text(r, p.x_si, catalogue, units), line.name, figure(p.time_s, 3), figure(p.low90_s, 3),
                              figure(p.high90_s, 3),
                              std::isfinite(p.tube_mass_kg) ? mass_text(p.tube_mass_kg, units) : "",
                              figure(money.shown(p.cost_usd), 3), figure(p.time_s / p.tube_mass_kg, 3),
                              figure(p.time_s / money.shown(p.cost_usd), 3)});
        }
    return t;
}

} // namespace

std::string json_of(const SweepResult& r, const Catalogue& catalogue) {
    Json lines = Json::array();
    for (const SweepLine& line : r.lines) {
        Json points = Json::array();
        for (const SweepPoint& p : line.points) points.push_back(point_of(p));
        lines.push_back(
            {{"metal", line.metal ? Json(line.metal->slug) : Json(nullptr)}, {"name", line.name}, {"points", points}});
    }
    Json out = {{"over", name_of(r.over)},
                {"unit", unit_of(r.over)},
                {"rate_of_exchange", json_rate(catalogue)},
                {"lines", lines},
                {"wall_for_half_of_endless_m", json_number(r.wall_for_half_m)},
                {"wall_for_90_percent_of_endless_m", json_number(r.wall_for_90_percent_m)},
                {"magnet_mass_kg", json_number(r.magnet_mass_kg)},
                {"assumptions", r.setup.assumptions},
                {"data_version", catalogue.data_version}};
    return json_text(out);
}

std::string text_of(const SweepResult& r, const Catalogue& catalogue, UnitSystem units) {
    std::ostringstream out;
    out << "magnet  " << magnet_text(r.setup, units) << "\ntube    " << tube_text(r.setup.inputs, units)
        << (r.held.empty() ? " (but for what is swept)\n\n"
                           : " (but for what is swept, the wall of " + r.held + ")\n\n")
        << as_text(table_of(r, catalogue, units)) << "\n";
    if (const std::string rate = rate_sentence(catalogue); !rate.empty()) out << wrapped(rate, page_width, "    ");
    if (r.over == SweepOver::wall || r.over == SweepOver::budget)
        out << wrapped("How thick is thick enough: a wall of " + length_text(r.wall_for_half_m, units) +
                           " gives half, one of " + length_text(r.wall_for_90_percent_m, units) +
                           " nine tenths of the time that an endless wall would give.",
                       page_width, "    ");
    write_grounds(out, r.setup, nullptr, catalogue);
    out << "\nSources of each metal's figures: pourbook sheet METAL. Data version " << catalogue.data_version << "\n";
    return out.str();
}

} // namespace pourbook
