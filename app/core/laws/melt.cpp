#include "core/laws/melt.hpp"

#include "core/alloys/dissolved.hpp"
#include "core/alloys/melting.hpp"
#include "core/laws/anchor.hpp"
#include "core/laws/by_elements.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double usual_fall_per_K = 1.2e-4, slope_step_K = 20, most_volume_without_wt = 5;
constexpr double volumes_error = 0.015, left_out_error = 0.5, extended_error = 0.35, least_melt_error = 0.014,
                 entropy_error = 0.14;

Result<Evaluated> cited_at(const Catalogue& catalogue, const Metal& metal, const char* property, double t) {
    Conditions c;
    c.temperature_K = t;
    c.cited_only = true;
    return evaluate(catalogue, metal, property, c);
}

/// Density of an element's melt at any temperature: cited, else along the slope at the nearest cited end.
Result<Evaluated> element_melt(const Catalogue& catalogue, const Metal& element, double temperature_K) {
    const Result<Evaluated> melts = cited_at(catalogue, element, "liquidus", room_temperature_K);
    if (!melts) return melts.problem();
    if (temperature_K >= melts->value_si)
        if (Result<Evaluated> own = cited_at(catalogue, element, "density_liquid", temperature_K)) return own;
    const Property* property = catalogue.property("density_liquid");
    const Conditions none;
    const auto a = nearest_anchor({catalogue, element, *property, Phase::liquid, temperature_K, none});
    if (!a) return no_law("no density of the melt of " + element.slug + " is cited");
    const double inward = a->temperature_K + (temperature_K < a->temperature_K ? slope_step_K : -slope_step_K);
    const Result<Evaluated> next = cited_at(catalogue, element, "density_liquid", inward);
    const bool sloped = next && next->sources.front().record_id == a->value.sources.front().record_id &&
                        inward > melts->value_si && next->value_si != a->value.value_si;
    const double slope = sloped ? (next->value_si - a->value.value_si) / (inward - a->temperature_K)
                                : -usual_fall_per_K * a->value.value_si;
    const double away = temperature_K - a->temperature_K;
    const double value = a->value.value_si + slope * away;
    return carried_from(*a, {catalogue, element, *property, Phase::liquid, temperature_K, none}, value,
                        std::hypot(extended_error * slope * away / value, least_melt_error), "along its slope");
}

/// Molar mass, kg/mol; NaN for an unknown element.
double molar_mass(const Catalogue& catalogue, const std::string& symbol) {
    const AtomicMass* mass = catalogue.alloys.mass(symbol);
    return mass ? mass->g_per_mol * 1e-3 : no_number;
}

/// Heat of fusion of an element, J/mol, and its entropy, J/(mol K).
struct Fusion {
    double heat = no_number, entropy = no_number;
};

class HeatOfFusion {
public:
    HeatOfFusion(const Question& q, double middle_K) : q_(q), middle_K_(middle_K) {}

    Result<Evaluated> run() {
        const Result<Composition> composition = composition_of_metal(q_.catalogue, q_.metal);
        if (!composition) return composition.problem();
        const Result<SolidState> state =
            solid_state({q_.catalogue, *composition, treatment_of(q_.metal, q_.conditions)});
        const std::string host = composition->host();
        if (state) {
            add_like_host(host, state->host_wt, host);
            for (const SoluteState& s : state->solutes) {
                add_like_host(s.element, s.dissolved_wt, host);
                const bool alone = s.second_phase == "(" + s.element + ")";
                alone ? add_alone(s.element, s.out_wt) : add_like_host(s.element, s.out_wt, s.element);
            }
        } else {
            for (const Share& s : composition->shares()) add_like_host(s.element, s.wt_percent, s.element);
        }
        if (without_wt_ > most_volume_without_wt) return no_law("no heat of fusion is cited for most of its elements");
        return worked_out(q_, Basis::estimated, sum_ / mass_kg_, entropy_error, "entropies of fusion of its elements",
                          std::move(sources_));
    }

private:
    Fusion fusion_of(const std::string& symbol) {
        const Metal* element = q_.catalogue.element(symbol);
        if (!element) return {};
        const auto heat = cited_at(q_.catalogue, *element, "latent_heat", room_temperature_K),
                   melts = cited_at(q_.catalogue, *element, "liquidus", room_temperature_K);
        if (!heat || !melts) return {};
        sources_.push_back(heat->sources.front());
        const double molar = heat->value_si * molar_mass(q_.catalogue, symbol);
        return {molar, molar / melts->value_si};
    }

    /// So much of an element, melting with the entropy of `like`.
    void add_like_host(const std::string& symbol, double wt, const std::string& like) {
        add(symbol, wt, fusion_of(like).entropy * middle_K_);
    }
    void add_alone(const std::string& symbol, double wt) { add(symbol, wt, fusion_of(symbol).heat); }

    void add(const std::string& symbol, double wt, double per_mol) {
        if (wt <= 0) return;
        const double molar = molar_mass(q_.catalogue, symbol);
        if (std::isnan(per_mol) || std::isnan(molar)) {
            without_wt_ += wt;
            return;
        }
        mass_kg_ += wt;
        sum_ += wt / molar * per_mol;
    }

    const Question& q_;
    double middle_K_, sum_ = 0, mass_kg_ = 0, without_wt_ = 0;
    std::vector<SourceValue> sources_;
};

/// How much denser the solid is at 20 degC than the sum of its elements: atoms that attract each other do so in the
/// melt too. 1 where that is not known.
double denser_than_its_elements(const Question& q) {
    const auto room = [&](const Metal& m) { return cited_at(q.catalogue, m, "density", room_temperature_K); };
    if (phase_at(q.catalogue, q.metal, room_temperature_K) != Phase::solid) return 1;
    const Result<Evaluated> own = room(q.metal);
    const Result<ElementSum> sum = sum_over_elements(q.catalogue, q.metal, room, true, most_volume_without_wt);
    return own && sum ? own->value_si / sum->value_si : 1;
}

} // namespace

Result<Evaluated> melt_density_by_law(const Question& q) {
    if (q.metal.is_element()) return element_melt(q.catalogue, q.metal, q.temperature_K);
    if (const auto a = nearest_anchor(q)) {
        const double value = a->value.value_si * (1 - usual_fall_per_K * (q.temperature_K - a->temperature_K));
        return carried_from(*a, q, value, std::abs(value / a->value.value_si - 1), "usual fall, 1.2e-4 per kelvin");
    }
    const Result<ElementSum> sum = sum_over_elements(
        q.catalogue, q.metal, [&](const Metal& e) { return element_melt(q.catalogue, e, q.temperature_K); }, true,
        most_volume_without_wt);
    if (!sum) return sum.problem();
    const double denser = denser_than_its_elements(q);
    const double error = std::hypot(std::hypot(volumes_error, (denser - 1) / 2), sum->relative,
                                    left_out_error * sum->without_data_wt / 100);
    return worked_out(q, Basis::estimated, sum->value_si * denser, error,
                      "additive volumes of its elements' melts, as much denser as the solid is", sum->sources);
}

Result<Evaluated> latent_heat_by_law(const Question& q) {
    if (q.metal.is_element()) return no_law("nothing is cited");
    const auto solidus = number_at(q.catalogue, q.metal, "solidus", room_temperature_K),
               liquidus = number_at(q.catalogue, q.metal, "liquidus", room_temperature_K);
    if (!solidus) return solidus.problem();
    if (!liquidus) return liquidus.problem();
    return HeatOfFusion(q, (*solidus + *liquidus) / 2).run();
}

Result<Evaluated> solidification_contraction_by_law(const Question& q) {
    const auto solidus = number_at(q.catalogue, q.metal, "solidus", room_temperature_K),
               liquidus = number_at(q.catalogue, q.metal, "liquidus", room_temperature_K);
    if (!solidus) return solidus.problem();
    if (!liquidus) return liquidus.problem();
    const auto solid = value_at(q.catalogue, q.metal, "density", *solidus),
               melt = value_at(q.catalogue, q.metal, "density_liquid", *liquidus);
    if (!solid) return solid.problem();
    if (!melt) return melt.problem();
    const double ratio = melt->value_si / solid->value_si;
    const double u = ratio * std::hypot(solid->standard_uncertainty_si / solid->value_si,
                                        melt->standard_uncertainty_si / melt->value_si);
    const Basis basis = std::max(solid->basis, melt->basis) == Basis::estimated ? Basis::estimated : Basis::carried;
    return worked_out(q, basis, 1 - ratio, u / std::abs(1 - ratio), "from the densities of solid and melt",
                      {solid->sources.front(), melt->sources.front()});
}

Result<Evaluated> melting_range_by_law(const Question& q) {
    const Result<Composition> composition = composition_of_metal(q.catalogue, q.metal);
    if (!composition) return composition.problem();
    const Result<MeltingEstimate> e =
        estimate_melting({q.catalogue, *composition, treatment_of(q.metal, q.conditions)});
    if (!e) return e.problem();
    const Estimate& end = q.property.id == "solidus" ? e->solidus : e->liquidus;
    return estimated_from(q, end, end.rule);
}

} // namespace pourbook
