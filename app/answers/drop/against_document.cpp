#include "answers/drop/drop_documents.hpp"
#include "answers/drop/setup_document.hpp"
#include "answers/writers/document_parts.hpp"
#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

/// What a drop tells programs, under a name of its own.
void tell_drop(Document& out, const DropResult& r, const DocumentSetting& setting, const std::string& under) {
    Document one = document_of(r, setting);
    one.tell("data_version", one.data_version);
    for (DataFigure& f : one.figures) {
        if (!(f.shown_in & in::program)) continue;
        f.id = under + f.id;
        out.figures.push_back(std::move(f));
    }
    for (DataTable& part : one.parts) {
        if (!(part.shown_in & in::program) || part.id.empty()) continue;
        part.id = under + part.id;
        part.shown_in = in::program;
        out.parts.push_back(std::move(part));
    }
    for (const Reference* source : one.sources) add_source(out, setting.catalogue, source->key);
}

DataTable side_by_side(const AgainstResult& r, const DocumentSetting& setting) {
    const UnitSystem units = setting.units;
    DataTable t{"Side by side",
                {{"what", ""}, {"first", "first", "", true}, {"second", "second", "", true}},
                {},
                in::text | in::file | in::window};
    const auto add = [&](const char* name, auto words) {
        t.rows.push_back({DataCell::words(name), DataCell::words(words(r.first)), DataCell::words(words(r.second))});
    };
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
        return finite(d.cost_usd, [&](double usd) { return shown_money(setting.catalogue, usd, 3, units); });
    });
    return t;
}

void tell_comparison(Document& out, const AgainstResult& r) {
    out.tell("comparison.longer", r.tie ? Value() : Value(r.second_longer ? "second" : "first"));
    out.tell("comparison.ratio_median", r.ratio_median);
    out.tell("comparison.ratio_low90", r.ratio_low90);
    out.tell("comparison.ratio_high90", r.ratio_high90);
    out.tell("comparison.p_longer", r.p_longer);
    out.tell("comparison.equal_wall_m", number_or_null(r.equal_wall_m));
    out.tell("comparison.sentence", r.sentence);
}

} // namespace

Document document_of(const AgainstResult& r, const DocumentSetting& setting) {
    const UnitSystem units = setting.units;
    Document out = start_document("Two tubes side by side", setting);
    out.say(for_reader(units, r.sentence), in::text | in::file);
    out.add_pairs("Set-up");
    out.pair("magnet", magnet_text(r.first.setup, units));
    if (!r.same_magnet) out.pair("and", magnet_text(r.second.setup, units));
    out.parts.push_back(side_by_side(r, setting));
    tell_drop(out, r.first, setting, "");
    tell_drop(out, r.second, setting, "against.");
    tell_comparison(out, r);
    for (const DropResult* d : {&r.first, &r.second}) {
        if (Sentence* s = out.say(d == &r.first ? "First set-up" : "Second set-up", in::text)) s->apart = true;
        add_grounds(out, d->setup, &d->tube, setting);
    }
    if (Sentence* s = out.say("The same magnet, the same tube and the same metal's figures move together in both.",
                              in::text | in::file))
        s->apart = true;
    out.say("Data version " + out.data_version, in::text);
    return out;
}

} // namespace pourbook
