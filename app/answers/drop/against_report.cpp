#include "answers/drop/against_report.hpp"

#include "answers/drop/eddy_json.hpp"
#include "answers/drop/eddy_words.hpp"
#include "answers/parts/json_parts.hpp"
#include "answers/parts/table.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/shown_money.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <sstream>

namespace pourbook {
namespace {

Table side_by_side(const AgainstResult& r, const Catalogue& catalogue, UnitSystem units) {
    Table t{{{""}, {"first", true}, {"second", true}}, {}};
    const auto add = [&](const char* name, auto words) { t.rows.push_back({name, words(r.first), words(r.second)}); };
    const auto finite = [](double x, auto words) { return std::isfinite(x) ? words(x) : std::string("no value"); };
    if (!r.same_magnet)
        add("magnet's moment", [](const DropResult& d) { return significant(d.moment_A_m2, 3) + " A·m²"; });
    add("metal", [](const DropResult& d) { return d.tube.metal ? d.tube.metal->name : std::string("as stated"); });
    add("bore", [&](const DropResult& d) { return length_text(2 * d.setup.inputs.bore_radius_m.value, units); });
    add("wall", [&](const DropResult& d) {
        return length_text(d.setup.inputs.outside_radius_m.value - d.setup.inputs.bore_radius_m.value, units);
    });
    add("length", [&](const DropResult& d) { return length_text(d.setup.inputs.tube_length_m.value, units); });
    add("fall time", [](const DropResult& d) { return significant(d.fall.time_s, 3) + " s"; });
    add("90 % interval", [](const DropResult& d) {
        return significant(d.fall_time_low90_s, 3) + " to " + significant(d.fall_time_high90_s, 3) + " s";
    });
    add("terminal speed", [&](const DropResult& d) {
        return d.settles ? speed_text(*d.fall.terminal_speed_m_s, units) : std::string("none");
    });
    add("tube's mass",
        [&](const DropResult& d) { return finite(d.tube_mass_kg, [&](double kg) { return mass_text(kg, units); }); });
    add("its metal costs", [&](const DropResult& d) {
        return finite(d.cost_usd, [&](double usd) { return shown_money(catalogue, usd, 3, units); });
    });
    return t;
}

} // namespace

std::string json_of(const AgainstResult& r, const Catalogue& catalogue) {
    Json out = Json::parse(json_of(r.first, catalogue));
    out["against"] = Json::parse(json_of(r.second, catalogue));
    const char* longer = r.tie ? nullptr : r.second_longer ? "second" : "first";
    out["comparison"] = {{"longer", longer ? Json(longer) : Json(nullptr)},
                         {"ratio_median", r.ratio_median},
                         {"ratio_low90", r.ratio_low90},
                         {"ratio_high90", r.ratio_high90},
                         {"p_longer", r.p_longer},
                         {"equal_wall_m", r.equal_wall_m ? Json(*r.equal_wall_m) : Json(nullptr)},
                         {"sentence", r.sentence}};
    return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string text_of(const AgainstResult& r, const Catalogue& catalogue, UnitSystem units) {
    std::ostringstream out;
    out << wrapped(r.sentence, page_width, "") << "\nmagnet  " << magnet_text(r.first.setup, units) << "\n";
    if (!r.same_magnet) out << "and     " << magnet_text(r.second.setup, units) << "\n";
    out << "\n" << as_text(side_by_side(r, catalogue, units));
    for (const DropResult* d : {&r.first, &r.second}) {
        out << "\n" << (d == &r.first ? "First set-up" : "Second set-up") << "\n";
        write_grounds(out, d->setup, &d->tube, catalogue);
    }
    out << "\nThe same magnet, the same tube and the same metal's figures move together in both.\nData version "
        << catalogue.data_version << "\n";
    return out.str();
}

} // namespace pourbook
