#include "questions/rank/scattering.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace pourbook {
namespace {

/// Solutes that lie beside the host as a phase of their own (oxide, sulphide, telluride, droplets), though an
/// increment is cited for the trace that dissolves. From memory: the binary diagrams, each below about 0.05 % at any
/// temperature of the solid.
constexpr std::array<std::pair<const char*, const char*>, 10> not_dissolving = {{{"Cu", "O"},
                                                                                 {"Cu", "S"},
                                                                                 {"Cu", "Se"},
                                                                                 {"Cu", "Te"},
                                                                                 {"Cu", "Pb"},
                                                                                 {"Cu", "Bi"},
                                                                                 {"Al", "Fe"},
                                                                                 {"Al", "Ni"},
                                                                                 {"Al", "Pb"},
                                                                                 {"Al", "Bi"}}};

const Portion* base_of(const Metal& m) {
    const auto most = std::max_element(m.composition.begin(), m.composition.end(),
                                       [](const auto& a, const auto& b) { return a.wt_percent < b.wt_percent; });
    return most == m.composition.end() ? nullptr : &*most;
}

bool scatters(const Catalogue& catalogue, const std::string& host, const std::string& solute) {
    for (const auto& [h, s] : not_dissolving)
        if (host == h && solute == s) return false;
    const auto& effects = catalogue.alloys.effects;
    return std::any_of(effects.begin(), effects.end(),
                       [&](const SoluteEffect& e) { return e.dissolved && e.host == host && e.solute == solute; });
}

/// "4 % silicon, 1 % manganese": what scatters of the additions.
std::string scattering_additions(const Catalogue& catalogue, const Metal& m, const Portion& base) {
    std::string out;
    for (const Portion& p : m.composition) {
        if (p.wt_percent <= 0 || &p == &base || !scatters(catalogue, base.element, p.element)) continue;
        const Metal* element = catalogue.element(p.element);
        out += (out.empty() ? "" : ", ") + trimmed(p.wt_percent, 3) + " % " + (element ? element->slug : p.element);
    }
    return out;
}

/// The pure base of the worse would conduct at least as well as the better one.
bool base_is_no_reason(const Catalogue& catalogue, const Metal& better, const Portion& base,
                       const Conditions& conditions) {
    const Portion* own = base_of(better);
    if (own && own->element == base.element) return true;
    const Metal* pure = catalogue.element(base.element);
    if (!pure) return false;
    const auto a = evaluate(catalogue, *pure, "conductivity", conditions),
               b = evaluate(catalogue, better, "conductivity", conditions);
    return a && b && a->value_si >= b->value_si;
}

} // namespace

bool carried_by_electrons(const std::string& property) {
    return property == "conductivity" || property == "resistivity" || property == "thermal_conductivity";
}

std::string why_it_conducts(const Catalogue& catalogue, const Metal& better, const Metal& worse,
                            const Conditions& conditions, bool over_range) {
    constexpr double cold_K = 150; // below it traces weigh as much as the metal's own resistance
    if (better.is_element() && worse.is_element()) {
        const std::string pure = conditions.temperature_K < cold_K ? ", as pure as those cited," : "";
        return "that is the nature of the two pure metals" + pure +
               (over_range ? " where each is worst" : " at this temperature");
    }
    const Portion *base = base_of(worse), *own = base_of(better);
    if (worse.is_element() || !base || (own && own->wt_percent < base->wt_percent)) return {};
    const std::string added = scattering_additions(catalogue, worse, *base);
    if (added.empty() || !base_is_no_reason(catalogue, better, *base, conditions)) return {};
    const bool several = added.find(',') != std::string::npos;
    return "the " + added + " in " + worse.name + (several ? " scatter" : " scatters") + " its electrons as far as " +
           (several ? "they stay" : "it stays") + " in solution (solid-solution scattering)";
}

} // namespace pourbook
