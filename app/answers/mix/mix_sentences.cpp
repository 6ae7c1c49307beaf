#include "answers/mix/mix_report.hpp"
#include "core/quantity/format.hpp"

namespace pourbook {
namespace {

constexpr double liquid_that_matters = 0.001; // share

std::string temperature(const Catalogue& catalogue, double kelvin, UnitSystem units) {
    const Property* p = catalogue.property("liquidus");
    return p ? trimmed(shown_number(*p, kelvin, units), 4) + " " + shown_unit(*p, units) : trimmed(kelvin, 4) + " K";
}

} // namespace

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

std::string addition_sentence(const MixResult& r) {
    if (!r.addition || !r.target) return {};
    const bool lost = r.blend && r.mass_kg < r.blend->mass_kg();
    return "Add " + trimmed(r.addition->mass_kg, 5) + " kg " + r.target->with + (r.blend ? "" : " to each kilogram") +
           " for " + trimmed(r.target->content.wt_percent, 6) + " % " + r.target->content.element + ": " +
           trimmed(r.addition->total_kg, 5) + " kg in all" + (lost ? " after melt loss." : ".");
}

} // namespace pourbook
