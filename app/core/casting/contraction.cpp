#include "core/casting/contraction.hpp"

#include "core/alloys/composition.hpp"
#include "core/alloys/expansion.hpp"
#include "core/casting/practice.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace pourbook::casting {
namespace {

constexpr double rise_of_the_mean_per_K = 2.3e-4;
constexpr double short_gap_K = 1;

/// Expansion from 20 degC up to a temperature.
struct Reach {
    double up_to_K = room_temperature_K;
    double mean = 0; // coefficient, 1/K
    Traced from;

    double strain() const { return mean * (up_to_K - room_temperature_K); }
};

/// Printed temperatures above 20 degC up to the solidus, highest first.
std::vector<double> tops(const Material& m, const std::string& property, double solidus_K) {
    std::vector<double> out;
    for (const Record& r : m.metal.records)
        if (r.property == property && r.usable())
            for (const Point& p : r.points)
                if (!p.is_bound() && p.temperature_K > room_temperature_K + 1 && p.temperature_K < solidus_K)
                    out.push_back(p.temperature_K);
    std::sort(out.rbegin(), out.rend());
    return out;
}

std::optional<Reach> mean_reach(const Material& m, double solidus_K) {
    std::vector<double> at = tops(m, "linear_expansion", solidus_K);
    at.insert(at.begin(), solidus_K);
    for (const double t : at)
        if (const Result<Traced> mean = cited(m, "linear_expansion", t)) return Reach{t, mean->value_si, *mean};
    return std::nullopt;
}

/// The instantaneous coefficient integrated by the trapezoidal rule from 20 degC to where it is cited.
std::optional<Reach> integrated_reach(const Material& m, double solidus_K) {
    constexpr int steps = 64;
    std::vector<double> at = tops(m, "linear_expansion_at", solidus_K);
    at.insert(at.begin(), solidus_K);
    for (const double top : at) {
        double sum = 0;
        std::optional<Traced> last;
        for (int i = 0; i <= steps; ++i) {
            const double t = room_temperature_K + (top - room_temperature_K) * i / steps;
            const Result<Traced> here = cited(m, "linear_expansion_at", t);
            if (!here) break;
            sum += here->value_si * (i == 0 || i == steps ? 0.5 : 1);
            if (i == steps) last = *here;
        }
        if (!last) continue;
        Reach r{top, sum / steps, *last};
        r.from.standard_uncertainty_si = last->relative() * r.mean;
        r.from.how = "integral of the cited coefficient from 293.15 K to " + trimmed(top, 6) + " K";
        return r;
    }
    return std::nullopt;
}

std::optional<Reach> cold_reach(const Material& m) {
    const Result<Traced> cold = cited(m, "linear_expansion", room_temperature_K);
    if (!cold) return std::nullopt;
    return Reach{room_temperature_K, cold->value_si, *cold};
}

std::optional<Reach> longest_reach(const Material& m, double solidus_K) {
    const auto mean = mean_reach(m, solidus_K), integral = integrated_reach(m, solidus_K);
    if (mean && (!integral || mean->up_to_K >= integral->up_to_K)) return mean;
    return integral ? integral : cold_reach(m);
}

/// Strain at the solidus along the principal element's curve, raised to the alloy's own level.
std::optional<double> along_principal(const Material& m, const Reach& own, double solidus_K, Traced& sources) {
    const Metal* element = principal_element(m);
    if (!element || element == &m.metal) return std::nullopt;
    const Material base{m.catalogue, *element, Conditions{}};
    const Result<Traced> melts = solidus(base);
    if (!melts || melts->value_si < solidus_K) return std::nullopt;
    const auto mean_at = [&](double t) -> std::optional<double> {
        if (t <= room_temperature_K + short_gap_K) {
            const auto cold = cited(base, "linear_expansion", room_temperature_K);
            return cold ? std::optional(cold->value_si) : std::nullopt;
        }
        const auto reach = longest_reach(base, t);
        if (!reach) return std::nullopt;
        add_sources(sources, reach->from);
        return reach->mean;
    };
    const auto hot = mean_at(solidus_K), cold = mean_at(own.up_to_K);
    if (!hot || !cold) return std::nullopt;
    return own.mean * *hot / *cold * (solidus_K - room_temperature_K);
}

void extend(Contraction& c, const Material& m, const Reach& reach) {
    c.extended = true;
    c.strain.estimated = true;
    const double span = c.solidus_K - room_temperature_K;
    const auto along = along_principal(m, reach, c.solidus_K, c.strain);
    c.strain.value_si = along.value_or(c.last_mean_strain);
    const double by_rise = rise_of_the_mean_per_K * (c.solidus_K - reach.up_to_K) * c.strain.value_si;
    const double by_ways = std::abs(c.strain.value_si - c.last_mean_strain) / 2;
    const double extension = along ? std::max(by_ways, by_rise / 2) : by_rise;
    c.strain.standard_uncertainty_si = std::hypot(reach.from.standard_uncertainty_si * span, extension);
    c.strain.how += "; cited data end at " + trimmed(reach.up_to_K, 5) + " K, " +
                    trimmed(c.solidus_K - reach.up_to_K, 3) + " K short of the solidus: extended " +
                    (along ? "along the curve of " + principal_element(m)->name : "with the last mean") +
                    ", uncertainty widened";
}

/// From the composition where no expansion is cited: the host's and the elements' own coefficients by volume.
std::optional<Reach> estimated_reach(const Material& m) {
    std::vector<Share> shares;
    for (const Portion& p : m.metal.composition)
        if (p.wt_percent > 0) shares.push_back({p.element, p.wt_percent, 0});
    const Result<Composition> composition = composition_of(m.catalogue.alloys, std::move(shares));
    if (!composition) return std::nullopt;
    const Result<Estimate> e = estimate_expansion(AlloySetting{m.catalogue, *composition});
    if (!e) return std::nullopt;
    Reach r{room_temperature_K, e->value_si, {}};
    r.from.value_si = e->value_si;
    r.from.standard_uncertainty_si = e->standard_uncertainty_si;
    r.from.estimated = true;
    r.from.how_known = HowKnown::computed;
    r.from.how = "no expansion cited, estimated from the composition: " + e->rule;
    for (const Citation& c : e->sources)
        r.from.sources.push_back(
            {c.source, c.locator, c.through, "expansion of an element", "", "", no_number, c.how_known, true});
    return r;
}

} // namespace

Result<Contraction> free_contraction(const Material& m) {
    const Result<Traced> melts = solidus(m);
    if (!melts) return melts.problem();
    Contraction c;
    c.solidus_K = melts->value_si;
    if (c.solidus_K <= room_temperature_K + short_gap_K)
        return Problem{Problem::Kind::refused, m.metal.slug + " is not solid at 20 degC: nothing to contract", 0};
    auto reach = longest_reach(m, c.solidus_K);
    if (!reach) reach = estimated_reach(m);
    if (!reach)
        return Problem{Problem::Kind::no_value, "free contraction of " + m.metal.slug + ": no expansion cited", 0};
    c.cited_up_to_K = reach->up_to_K;
    c.last_mean_strain = reach->mean * (c.solidus_K - room_temperature_K);
    c.strain = reach->from;
    c.strain.value_si = c.last_mean_strain;
    c.strain.standard_uncertainty_si =
        std::hypot(reach->from.standard_uncertainty_si * (c.solidus_K - room_temperature_K),
                   reach->mean * melts->standard_uncertainty_si);
    if (c.solidus_K - reach->up_to_K > short_gap_K) extend(c, m, *reach);
    add_sources(c.strain, *melts);
    return c;
}

Allowance allowances(const Material& m, const std::string& process) {
    Allowance a;
    const auto take = [&](double low, double high, SourceValue source) {
        a.low = std::isnan(a.low) ? low : std::min(a.low, low);
        a.high = std::isnan(a.high) ? high : std::max(a.high, high);
        a.sources.push_back(std::move(source));
    };
    const auto bounds = [&](const Point& p, SourceValue source) {
        take(std::isnan(p.low_si) ? p.value_si : p.low_si, std::isnan(p.high_si) ? p.value_si : p.high_si,
             std::move(source));
    };
    for (const Record& r : m.metal.records)
        if (r.property == "contraction_allowance" && r.usable() && (r.process != "die" || process == "permanent"))
            for (const Point& p : r.points)
                if (!p.is_bound())
                    bounds(p, {r.citation.source, r.citation.locator, r.citation.through, r.id, r.condition,
                               p.printed + " " + r.unit + (r.process.empty() ? "" : ", " + r.process), p.value_si,
                               r.citation.how_known, true});
    a.from = "printed for the metal";
    if (a.sources.empty()) {
        a.from = "practice of the family " + m.metal.family;
        for (const Practice* p : practices(m.catalogue, m.metal, "contraction_allowance", process))
            bounds(p->figure, source_of(*p));
    }
    if (a.sources.empty()) a.from = "no printed allowance for " + m.metal.slug + " or its family was found";
    for (const Practice* p : practices(m.catalogue, m.metal, "allowance_note", process)) a.notes.push_back(p->text);
    return a;
}

} // namespace pourbook::casting
