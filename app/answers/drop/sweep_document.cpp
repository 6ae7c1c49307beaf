#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

DataCell figure(double x) {
    return DataCell::figure(x, std::isfinite(x) ? significant(x, 4) : "");
}

std::string unit_of(SweepOver over, const ShownCurrency& money) {
    return over == SweepOver::temperature ? "K" : over == SweepOver::budget ? money.name : "m";
}

void add_resistivity_source(Document& out, const SweepLine& line, const Conditions& conditions,
                            const Catalogue& catalogue) {
    if (!line.metal) return;
    const Result<Evaluated> value = evaluate(catalogue, *line.metal, "resistivity", conditions);
    if (value && !value->sources.empty()) add_source(out, catalogue, value->sources.front().key);
}

} // namespace

Document document_of(const SweepResult& r, const DocumentSetting& setting) {
    Document out = start_document(std::string("Fall time against ") + name_of(r.over), r.conditions, setting);
    add_state(out, r.conditions);
    for (const std::string& assumption : r.setup.assumptions) out.say(assumption);
    if (!r.held.empty()) out.say("The wall is what " + r.held + " of metal leaves.");
    const ShownCurrency money = shown_currency(setting.catalogue, setting.units);
    const auto x = [&](double si) { return r.over == SweepOver::budget ? money.shown(si) : si; };
    DataTable table{"Sweep",
                    {{"metal", "metal"},
                     {"x", std::string("swept ") + name_of(r.over), unit_of(r.over, money), true},
                     {"wall_m", "wall", "m", true},
                     {"fall_time_s", "fall time", "s", true},
                     {"fall_time_low90_s", "fall time, 90 % low", "s", true},
                     {"fall_time_high90_s", "fall time, 90 % high", "s", true},
                     {"terminal_speed_m_s", "terminal speed", "m/s", true},
                     {"tube_mass_kg", "mass of the tube", "kg", true},
                     money_column("cost_", "cost of the metal", money),
                     {"reason", "why no value"}},
                    {}};
    for (const SweepLine& line : r.lines)
        for (const SweepPoint& p : line.points)
            table.rows.push_back({DataCell::words(line.name), figure(x(p.x_si)), figure(p.wall_m), figure(p.time_s),
                                  figure(p.low90_s), figure(p.high90_s), figure(p.terminal_speed_m_s),
                                  figure(p.tube_mass_kg), figure(money.shown(p.cost_usd)), DataCell::words(p.problem)});
    out.parts.push_back(std::move(table));
    for (const CitedFigure& f : r.setup.sources) add_source(out, setting.catalogue, f.citation.source);
    for (const SweepLine& line : r.lines) add_resistivity_source(out, line, r.conditions, setting.catalogue);
    return out;
}

} // namespace pourbook
