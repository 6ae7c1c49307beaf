#include "importers/compile/read_casting.hpp"

#include "importers/compile/fields.hpp"
#include "importers/compile/figure.hpp"
#include "importers/compile/read_record.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace pourbook {
namespace {

/// Quantities that hold a figure, and the dimension it must have (as a unit).
struct CastingFigure {
    const char* quantity;
    const char* si_unit;
};

constexpr std::array casting_figures = {CastingFigure{"pouring_temperature", "K"},
                                        CastingFigure{"superheat", "K"},
                                        CastingFigure{"mould_preheat", "K"},
                                        CastingFigure{"mould_preheat_below_solidus", "K"},
                                        CastingFigure{"mould_preheat_share", "1"},
                                        CastingFigure{"mould_metal_limit", "K"},
                                        CastingFigure{"pouring_loss", "K"},
                                        CastingFigure{"greatest_superheat", "K"},
                                        CastingFigure{"mould_limit", "K"},
                                        CastingFigure{"crucible_limit", "K"},
                                        CastingFigure{"melt_loss", "1"},
                                        CastingFigure{"element_loss", "1"},
                                        CastingFigure{"scrap_content", "1"},
                                        CastingFigure{"burner_power", "W"},
                                        CastingFigure{"warm_up", "s"},
                                        CastingFigure{"kiln_energy", "J"},
                                        CastingFigure{"electricity_price", "USD/J"},
                                        CastingFigure{"pattern_strength", "Pa"},
                                        CastingFigure{"yield", "1"},
                                        CastingFigure{"gating_share", "1"},
                                        CastingFigure{"feeder_modulus_ratio", "1"},
                                        CastingFigure{"feeder_volume_ratio", "1"},
                                        CastingFigure{"feeder_height_ratio", "1"},
                                        CastingFigure{"feeder_efficiency", "1"},
                                        CastingFigure{"mould_conductivity", "W/(m.K)"},
                                        CastingFigure{"mould_density", "kg/m3"},
                                        CastingFigure{"mould_specific_heat", "J/(kg.K)"},
                                        CastingFigure{"freezing_correction", "1"},
                                        CastingFigure{"shell_wall", "m"},
                                        CastingFigure{"mould_wall", "m"},
                                        CastingFigure{"mould_emissivity", "1"},
                                        CastingFigure{"mould_convection", "W/(m2.K)"},
                                        CastingFigure{"mould_contact", "W/(m2.K)"},
                                        CastingFigure{"feeder_neck_ratio", "1"},
                                        CastingFigure{"feeder_least_modulus", "m"},
                                        CastingFigure{"feeding_distance", "1"},
                                        CastingFigure{"feeding_end_effect", "1"},
                                        CastingFigure{"sleeve_modulus_factor", "1"},
                                        CastingFigure{"sleeve_efficiency", "1"},
                                        CastingFigure{"gate_spacing", "1"},
                                        CastingFigure{"gate_speed", "m/s"},
                                        CastingFigure{"discharge", "1"},
                                        CastingFigure{"cup_depth", "m"},
                                        CastingFigure{"least_head", "m"},
                                        CastingFigure{"surface_tension", "N/m"},
                                        CastingFigure{"mould_growth", "1"},
                                        CastingFigure{"addition", "1"},
                                        CastingFigure{"consumable_price", "USD/kg"},
                                        CastingFigure{"pattern_wall", "m"},
                                        CastingFigure{"pattern_infill", "1"},
                                        CastingFigure{"pattern_density", "kg/m3"},
                                        CastingFigure{"least_section", "m"},
                                        CastingFigure{"section_class", "m"},
                                        CastingFigure{"tolerance", "m"},
                                        CastingFigure{"tolerance_finer", "1"},
                                        CastingFigure{"contraction_allowance", "1"},
                                        CastingFigure{"furnace_efficiency", "1"},
                                        CastingFigure{"fuel_heating_value", "J/kg"},
                                        CastingFigure{"casting_content", "1"},
                                        CastingFigure{"casting_oxide", "1"},
                                        CastingFigure{"casting_porosity", "1"},
                                        CastingFigure{"casting_scatter", "1"},
                                        CastingFigure{"porosity_scatter", "1"},
                                        CastingFigure{"contraction_scatter", "1"},
                                        CastingFigure{"casting_structure", "1"},
                                        CastingFigure{"one_person_mass", "kg"}};

/// Quantities that hold a sentence.
constexpr std::array sentences = {
    "refuse_melting", "acknowledge",    "process_caution", "crucible_attack", "mould_attack",   "deoxidation",
    "gas_risk",       "shell_step",     "burnout_step",    "checklist",       "draft",          "tolerance_grade",
    "defect",         "allowance_note", "after_pour",      "machining",       "heat_treatment", "joining"};
constexpr std::array processes = {"", "shell", "sand", "plaster", "permanent"};

const CastingFigure* kind_of(const std::string& quantity) {
    const auto at = std::find_if(casting_figures.begin(), casting_figures.end(),
                                 [&](const CastingFigure& k) { return quantity == k.quantity; });
    return at == casting_figures.end() ? nullptr : &*at;
}

double length_m(Fields& f, const char* key) {
    const std::string text = f.text_or(key, "");
    if (text.empty()) return no_number;
    const Result<double> metres = parse_si(text, base_dimension(Dimension::metre), "a length");
    if (!metres) f.fail(key, metres.problem().text);
    return *metres;
}

void read_figure_of(Practice& p, const CastingFigure& kind, Fields& f) {
    const Result<Unit> wanted = parse_unit(kind.si_unit);
    p.unit = f.text("unit");
    const Result<Unit> unit = parse_unit(p.unit);
    if (!unit) f.fail("unit", unit.problem().text);
    const Dimension dimension = std::string(kind.si_unit) == "1" ? Dimension{} : wanted->dimension;
    if (!(unit->dimension == dimension)) f.fail("unit", "'" + p.unit + "' is no unit of " + p.quantity);
    const Result<Point> figure = read_figure(f.text("value"), *unit);
    if (!figure) f.fail("value", figure.problem().text);
    p.figure = *figure;
}

Practice read_practice(Fields& f, const Catalogue& catalogue) {
    Practice p;
    p.quantity = f.text("quantity");
    p.metal = f.text_or("metal", "");
    if (!p.metal.empty()) {
        const Metal* metal = catalogue.metal(p.metal);
        if (!metal || metal->slug != p.metal) f.fail("metal", "no metal file '" + p.metal + "'");
    }
    for (const auto& [key, field] : {std::pair{"family", &p.family},
                                     {"element", &p.element},
                                     {"process", &p.process},
                                     {"material", &p.material},
                                     {"grade", &p.grade},
                                     {"text", &p.text},
                                     {"note", &p.note}})
        *field = f.text_or(key, "");
    if (std::find(processes.begin(), processes.end(), p.process) == processes.end())
        f.fail("process", "shell, sand, plaster or permanent is expected");
    p.from_wt_percent = f.number_or("from_wt_percent", 0);
    p.over_m = length_m(f, "over");
    p.up_to_m = length_m(f, "up_to");
    if (const CastingFigure* kind = kind_of(p.quantity))
        read_figure_of(p, *kind, f);
    else if (std::find(sentences.begin(), sentences.end(), p.quantity) == sentences.end())
        f.fail("quantity", "unknown quantity '" + p.quantity + "': see db/README.md");
    else if (p.text.empty())
        f.fail("text", "is missing");
    p.citation = read_citation(f, catalogue);
    if (p.citation.how_known == HowKnown::computed) {
        const std::string rule = "rule: " + f.text("rule");
        p.note += (p.note.empty() ? "" : "; ") + rule;
    }
    return p;
}

} // namespace

void read_practices(const std::string& path, Catalogue& catalogue, std::vector<std::string>& faults) {
    const JsonNode root = parse_located_json(path, read_text_file(path));
    if (root.kind != JsonNode::Kind::list) throw InputError(path, root.line, "", "a list [ ] is expected");
    for (std::size_t i = 0; i < root.items.size(); ++i) {
        try {
            Fields f(path, "casting/" + std::to_string(i), root.items[i]);
            Practice p = read_practice(f, catalogue);
            f.finish();
            catalogue.practices.push_back(std::move(p));
        } catch (const InputError& e) {
            faults.push_back(e.what());
        }
    }
}

} // namespace pourbook
