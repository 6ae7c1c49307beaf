#include "answers/drop/setup_document.hpp"

#include "questions/say/casting_words.hpp"
#include "questions/say/in_units_of.hpp"

#include <array>
#include <set>

namespace pourbook {
namespace {

void tell_uncertain(Document& out, const std::string& id, const eddy::Uncertain& u) {
    out.tell(id + ".value", number_or_null(u.value));
    out.tell(id + ".standard_uncertainty", number_or_null(u.standard()));
}

void tell_magnet(Document& out, const DropSetup& setup) {
    static constexpr std::array shapes = {"sphere", "cylinder", "ring", "cube"};
    const eddy::DropInputs& i = setup.inputs;
    out.tell("magnet.shape", shapes[static_cast<std::size_t>(i.shape)]);
    tell_uncertain(out, "magnet.outer_radius_m", i.outer_radius_m);
    if (i.shape == eddy::Shape::ring) tell_uncertain(out, "magnet.inner_radius_m", i.inner_radius_m);
    if (i.shape != eddy::Shape::sphere) tell_uncertain(out, "magnet.length_m", i.length_m);
    if (i.stack.pieces > 1) {
        out.tell("magnet.pieces", std::int64_t{i.stack.pieces});
        out.tell("magnet.arrangement", i.stack.alternating ? "opposed" : "parallel");
        out.tell("magnet.gap_m", i.stack.gap_m);
    }
    out.tell("magnet.grade", setup.grade.empty() ? Value() : Value(setup.grade));
    tell_uncertain(out, "magnet.remanence_T", i.remanence_T);
    out.tell("magnet.recoil_permeability", i.recoil_permeability);
    out.tell("magnet.temperature_K", setup.magnet_temperature_K);
}

void tell_tube(Document& out, const DropSetup& setup, const TubeMetal& tube, const Conditions& conditions) {
    const eddy::DropInputs& i = setup.inputs;
    tell_uncertain(out, "tube.bore_radius_m", i.bore_radius_m);
    tell_uncertain(out, "tube.outside_radius_m", i.outside_radius_m);
    tell_uncertain(out, "tube.length_m", i.tube_length_m);
    out.tell("tube.metal", tube.metal ? Value(tube.metal->slug) : Value());
    out.tell("tube.conductivity_S_m", number_or_null(tube.conductivity_S_m()));
    out.tell("tube.conductivity_relative_uncertainty", number_or_null(tube.log_uncertainty()));
    out.tell("tube.temperature_K", conditions.temperature_K);
    out.tell("tube.condition", tube.metal ? Value(tube.value.condition) : Value());
    const bool casting = tube.metal && of_casting(conditions);
    out.tell("state", casting ? Value(casting_words(*conditions.casting)) : tube.metal ? Value("handbook") : Value());
}

std::vector<const SourceValue*> chosen(const TubeMetal& tube) {
    std::vector<const SourceValue*> out;
    if (tube.metal)
        for (const SourceValue& s : tube.value.sources)
            if (s.chosen) out.push_back(&s);
    return out;
}

std::vector<std::string> source_lines(const DropSetup& setup, const TubeMetal* tube, const Catalogue& catalogue) {
    std::vector<std::string> out;
    std::set<std::string> keys;
    for (const CitedFigure& f : setup.sources) {
        const std::string how =
            f.citation.how_known == HowKnown::read ? "" : std::string(", ") + name_of(f.citation.how_known);
        out.push_back(f.what + " [" + f.citation.source + ", " + f.citation.locator + how + "]");
        keys.insert(f.citation.source);
    }
    if (tube)
        for (const SourceValue* s : chosen(*tube)) keys.insert(s->key);
    for (const std::string& key : keys)
        if (const Reference* r = catalogue.reference(key)) out.push_back("[" + key + "] " + r->full());
    return out;
}

} // namespace

void add_setup(Document& out, const DropSetup& setup, const TubeMetal& tube, const Conditions& conditions,
               UnitSystem units) {
    out.add_pairs("Set-up");
    out.pair("magnet", magnet_text(setup, units));
    out.pair("tube", tube_text(setup.inputs, units));
    out.pair("metal", metal_text(tube, conditions, units));
}

void tell_setup(Document& out, const DropSetup& setup, const TubeMetal& tube, const Conditions& conditions,
                const Catalogue& catalogue) {
    tell_magnet(out, setup);
    tell_tube(out, setup, tube, conditions);
    std::vector<std::string> notes = setup.assumptions, cautions;
    notes.insert(notes.end(), tube.notes.begin(), tube.notes.end());
    out.tell("assumptions", notes);
    for (const MagnetFigure* c : magnet_cautions(catalogue)) cautions.push_back(c->text);
    out.tell("cautions", cautions);
    tell_sources(out, setup, tube, catalogue);
}

void tell_sources(Document& out, const DropSetup& setup, const TubeMetal& tube, const Catalogue& catalogue) {
    DataTable table{"Sources",
                    {{"what", "what"}, {"key", "key"}, {"locator", "locator"}, {"how_known", "how known"}},
                    {},
                    in::program,
                    "sources"};
    const auto add = [&](const std::string& what, const std::string& key, const std::string& locator, HowKnown how) {
        table.rows.push_back(
            {DataCell::words(what), DataCell::words(key), DataCell::words(locator), DataCell::words(name_of(how))});
        add_source(out, catalogue, key);
    };
    for (const CitedFigure& f : setup.sources) add(f.what, f.citation.source, f.citation.locator, f.citation.how_known);
    for (const SourceValue* s : chosen(tube))
        add("resistivity of " + tube.metal->slug + ": " + s->printed, s->key, s->locator, s->how_known);
    out.parts.push_back(std::move(table));
}

std::string for_reader(UnitSystem units, const std::string& sentence) {
    return units == UnitSystem::workshop ? in_units_of(units, sentence) : sentence;
}

void add_list(Document& out, const std::string& title, const std::vector<std::string>& lines, UnitSystem units) {
    std::vector<std::string> said;
    for (const std::string& line : lines) said.push_back(for_reader(units, line));
    out.add_lines(title, said, in::text | in::file);
}

void add_grounds(Document& out, const DropSetup& setup, const TubeMetal* tube, const DocumentSetting& setting) {
    std::vector<std::string> notes = setup.assumptions, cautions;
    if (tube) {
        notes.insert(notes.end(), tube->notes.begin(), tube->notes.end());
        if (tube->metal) notes.insert(notes.end(), tube->value.trail.begin(), tube->value.trail.end());
    }
    add_list(out, "Assumed and taken", notes, setting.units);
    out.add_lines("Sources", source_lines(setup, tube, setting.catalogue), in::text);
    for (const MagnetFigure* c : magnet_cautions(setting.catalogue))
        cautions.push_back(c->text + " [" + c->citation.source + "]");
    add_list(out, "Strong magnets", cautions, setting.units);
}

void end_with_version(Document& out) {
    if (Sentence* last = out.say("Data version " + out.data_version, in::text)) last->apart = true;
}

} // namespace pourbook
