#include "answers/mix/mix_report.hpp"
#include "core/quantity/format.hpp"
#include "questions/say/amounts.hpp"
#include "questions/say/in_units_of.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr double liquid_that_matters = 0.001; // share
constexpr double too_much_to_add = 2;         // times the melt

std::string temperature(const Catalogue& catalogue, double kelvin, UnitSystem units) {
    const Property* p = catalogue.property("liquidus");
    return p ? trimmed(shown_number(*p, kelvin, units), 4) + " " + shown_unit(*p, units) : trimmed(kelvin, 4) + " K";
}

} // namespace

NamedUnit melt_unit(const MixResult& r, UnitSystem units) {
    if (units == UnitSystem::workshop) return metal_mass_unit_for(1, !r.precious.empty(), units);
    return {"kg", 1};
}

std::string phases_sentence(const MixResult& r, const Catalogue& catalogue, UnitSystem units) {
    if (!r.phases) return {};
    std::string words = "At " + temperature(catalogue, r.phases_at_K, units) + ": ";
    if (!*r.phases) return words + r.phases->problem().text;
    const char* joint = "";
    for (const PhaseShare& p : **r.phases) {
        words += joint + significant(100 * p.share, 3) + " % " + p.phase + " with " + significant(p.wt, 3) + " wt% " +
                 r.melting->diagram->b;
        joint = ", ";
    }
    return words;
}

std::string freezing_sentence(const MixResult& r, const Catalogue& catalogue, UnitSystem units) {
    if (!r.melting || !r.melting->freezing || !(r.melting->freezing->last_liquid_share > liquid_that_matters))
        return {};
    const auto& last = *r.melting->freezing;
    return "Frozen without diffusion, " + significant(100 * last.last_liquid_share, 2) +
           " % of the metal is still liquid at " + temperature(catalogue, last.last_K, units) + ".";
}

std::string addition_sentence(const MixResult& r, UnitSystem units) {
    if (!r.addition || !r.target) return {};
    const double start_kg = r.blend ? r.blend->mass_kg() : 1;
    const std::string wanted = trimmed(r.target->content.wt_percent, 6) + " % " + r.target->content.element;
    if (r.addition->mass_kg > too_much_to_add * start_kg)
        return "Adding " + r.target->with + " does not get there sensibly: " + wanted + " would take " +
               significant(r.addition->mass_kg / start_kg, 2) +
               " times the melt. Have it refined, or start from purer metal.";
    const bool lost = r.blend && r.mass_kg < r.blend->mass_kg();
    const NamedUnit unit = r.blend ? melt_unit(r, units) : NamedUnit{price_mass_unit(units).name, 1}; // of each such
    const std::string each = units == UnitSystem::workshop ? " to each pound" : " to each kilogram";
    const auto mass = [&](double kg) { return trimmed(kg / unit.si, 5) + " " + unit.name; };
    return "Add " + mass(r.addition->mass_kg) + " " + r.target->with + (r.blend ? "" : each) + " for " + wanted + ": " +
           mass(r.addition->total_kg) + " in all" + (lost ? " after melt loss." : ".");
}

std::string scrap_sentence(const MixResult& r) {
    if (r.scrap_contents.empty()) return {};
    std::string out = "Scrap is a guess until it is assayed: nine in ten such melts hold";
    const char* joint = " ";
    for (const ScrapContent& c : r.scrap_contents) {
        out += joint + c.element + " " + significant(c.low_wt, 2) + " to " + significant(c.high_wt, 2) + " %";
        joint = ", ";
    }
    return out + ". The intervals above count that.";
}

std::vector<std::string> loss_sentences(const MixResult& r, const Catalogue& catalogue, UnitSystem units) {
    std::vector<std::string> out;
    for (const UnevenLoss& l : r.losses) {
        const bool pounds = units == UnitSystem::workshop;
        const double share = r.blend ? 1 : price_mass_unit(units).si;
        std::string line = "A melt usually loses " + mass_range_text(share * l.low_kg, share * l.high_kg, units) +
                           " of " + l.element +
                           (r.blend  ? ""
                            : pounds ? " from each pound"
                                     : " from each kilogram") +
                           ": " + in_units_of(units, l.text) + ".";
        if (!std::isnan(l.wt_if_all))
            line += " If the stated loss is all " + l.element + ", " + significant(l.wt_if_all, 3) +
                    " % of it is left" +
                    (std::isnan(l.liquidus_if_all_K)
                         ? "."
                         : " and the melt is liquid from " + temperature(catalogue, l.liquidus_if_all_K, units) + ".");
        out.push_back(std::move(line));
    }
    return out;
}

} // namespace pourbook
