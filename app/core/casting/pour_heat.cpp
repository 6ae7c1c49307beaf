#include "core/casting/pour_heat.hpp"

#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook::casting {
namespace {

constexpr double least_superheat_K = 10; // a printed range that starts lower starts here
constexpr double greatest_superheat_K = 600;

Range printed_for(const Material& m, double liquidus_K) {
    Range r;
    for (const Record& record : m.metal.records) {
        if (record.property != "pouring_temperature" || !record.usable()) continue;
        for (const Point& p : record.points) {
            if (p.is_bound()) continue;
            const double low = std::isnan(p.low_si) ? p.value_si : p.low_si;
            const double high = std::isnan(p.high_si) ? p.value_si : p.high_si;
            if (high < liquidus_K) continue;
            r.low_si = std::isnan(r.low_si) ? low : std::min(r.low_si, low);
            r.high_si = std::isnan(r.high_si) ? high : std::max(r.high_si, high);
            r.sources.push_back({record.citation.source, record.citation.locator, record.citation.through, record.id,
                                 "", p.printed + " " + record.unit, p.value_si, record.citation.how_known, true});
        }
    }
    return r;
}

/// Share of the way from the hot end (thin) to the cool end (heavy).
double section_share(const Material& m, double wall_m, std::string& section) {
    const auto classes = practices(m.catalogue, m.metal, "section_class", "");
    const Range thin = range_of(of_grade(classes, "thin")), heavy = range_of(of_grade(classes, "heavy"));
    section = "medium";
    if (thin.empty() || heavy.empty()) return 0.5;
    const double share = std::clamp((wall_m - thin.middle()) / (heavy.middle() - thin.middle()), 0.0, 1.0);
    if (share <= 0) section = "thin";
    if (share >= 1) section = "heavy";
    return share;
}

void from_printed(PourHeat& h, const Range& range, double liquidus_K, double share) {
    const double low = std::max(range.low_si, liquidus_K + least_superheat_K);
    const double high = std::max(range.high_si, low);
    h.pour = traced(range, "printed pouring temperatures " + trimmed(range.low_si - 273.15, 4) + " to " +
                               trimmed(range.high_si - 273.15, 4) + " degC, " + h.section + " section");
    h.pour.value_si = high - share * (high - low);
    h.printed = range;
}

void by_superheat(PourHeat& h, const Material& m, const Traced& melts, double share) {
    const Range range = range_of(practices(m.catalogue, m.metal, "superheat", ""));
    const Traced over = traced(range, "");
    h.pour = melts;
    h.pour.value_si += range.empty() ? 0 : range.high_si - share * (range.high_si - range.low_si);
    h.pour.standard_uncertainty_si = std::hypot(melts.standard_uncertainty_si, over.standard_uncertainty_si);
    h.pour.how = "no pouring temperature printed for the metal or its family: liquidus plus common superheat, " +
                 h.section + " section";
    h.pour.estimated = true;
    add_sources(h.pour, over);
}

void add_mould(PourHeat& h, const Material& m, const std::string& process, double solidus_K) {
    auto entries = practices(m.catalogue, m.metal, "mould_preheat", process);
    std::vector<const Practice*> same;
    for (const Practice* p : entries)
        if (p->process == process &&
            (p->grade.empty() || p->grade == h.section || (p->grade == "light" && h.section == "thin")))
            same.push_back(p);
    h.mould = range_of(same);
    h.mould_how = "printed for " + m.metal.family + " in this mould";
    const Range below = range_of(practices(m.catalogue, m.metal, "mould_preheat_below_solidus", process));
    if (h.mould.empty() && !below.empty()) {
        h.mould = below;
        h.mould.low_si = h.mould.high_si = std::max(solidus_K - below.middle(), room_temperature_K);
        h.mould_how = "flask " + trimmed(below.middle(), 3) + " K below the solidus, a rule of jewellers";
    }
    if (h.mould.empty()) h.mould_how = "no figure was found for this metal and mould";
    const Range cooling = range_of(practices(m.catalogue, m.metal, "mould_cooling_rate", process));
    if (!cooling.empty()) h.mould_cooling_K_s = cooling.middle();
}

} // namespace

Result<PourHeat> pour_heat(const Material& m, const std::string& process, double wall_m,
                           std::optional<double> superheat_K) {
    const Result<Traced> melts = liquidus(m), freezes = solidus(m);
    if (!melts) return melts.problem();
    if (!freezes) return freezes.problem();
    if (superheat_K && !(*superheat_K >= 0 && *superheat_K <= greatest_superheat_K))
        return Problem{Problem::Kind::unreadable, "the superheat must be from 0 K to 600 K", 0};
    PourHeat h;
    const double share = section_share(m, wall_m, h.section);
    Range printed = printed_for(m, melts->value_si);
    if (printed.empty()) printed = range_of(practices(m.catalogue, m.metal, "pouring_temperature", process));
    if (!printed.empty() && printed.high_si < melts->value_si + least_superheat_K) printed = {};
    if (superheat_K) {
        h.pour = *melts;
        h.pour.value_si += *superheat_K;
        h.pour.how = "liquidus plus the superheat asked for";
        h.printed = printed;
    } else if (!printed.empty()) {
        from_printed(h, printed, melts->value_si, share);
        add_sources(h.pour, *melts);
    } else {
        by_superheat(h, m, *melts, share);
    }
    h.superheat_K = h.pour.value_si - melts->value_si;
    add_mould(h, m, process, freezes->value_si);
    return h;
}

} // namespace pourbook::casting
