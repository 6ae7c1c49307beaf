#include "core/laws/expansion.hpp"

#include "core/alloys/density.hpp"
#include "core/alloys/expansion.hpp"
#include "core/laws/anchor.hpp"
#include "core/laws/debye.hpp"
#include "core/laws/host.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

constexpr double growth = 0.55, shape_error = 0.08, least_shape_error = 0.04, usual_debye_K = 350, same_K = 1;

/// Shape of the coefficient along the temperature, 1 at 20 degC.
class ExpansionShape {
public:
    ExpansionShape(const Catalogue& catalogue, const Metal& metal) {
        const Metal* host = main_element(catalogue, metal);
        const double theta = host ? debye_temperature_K(symbol_of(*host)) : no_number;
        if (!std::isnan(theta)) theta_K_ = theta;
        share_at_room_ = debye_share(room_temperature_K / theta_K_);
        if (const auto melts = number_at(catalogue, metal, "solidus", room_temperature_K)) melts_K_ = *melts;
    }

    double at(double t) const {
        const double lattice = debye_share(t / theta_K_) / share_at_room_;
        return lattice * (1 + growth * std::max(0.0, t - room_temperature_K) / melts_K_);
    }

    /// Its mean from 20 degC (Simpson's rule).
    double mean_to(double t) const {
        if (std::abs(t - room_temperature_K) < same_K) return at(room_temperature_K);
        constexpr int steps = 16;
        double sum = at(room_temperature_K) + at(t);
        for (int i = 1; i < steps; ++i)
            sum += at(room_temperature_K + (t - room_temperature_K) * i / steps) * (i % 2 ? 4 : 2);
        return sum / (3 * steps);
    }

private:
    double theta_K_ = usual_debye_K, share_at_room_ = 1, melts_K_ = 1000;
};

bool is_mean(const Question& q) {
    return q.property.id == "linear_expansion";
}

/// The nearest cited figure of one kind, and the coefficient at 20 degC that the shape makes of it.
struct RoomCoefficient {
    Anchor anchor;
    double per_K = no_number;
    bool from_mean = false;
};

std::optional<RoomCoefficient> room_coefficient(const Question& q, const ExpansionShape& shape, bool mean) {
    const Property* property = q.catalogue.property(mean ? "linear_expansion" : "linear_expansion_at");
    const auto a = nearest_anchor({q.catalogue, q.metal, *property, q.phase, q.temperature_K, q.conditions});
    if (!a) return std::nullopt;
    const double there = mean ? shape.mean_to(a->temperature_K) : shape.at(a->temperature_K);
    return RoomCoefficient{*a, a->value.value_si / there, mean};
}

/// Whichever kind has a figure nearer to the temperature; of the same kind where both are as near.
std::optional<RoomCoefficient> best_coefficient(const Question& q, const ExpansionShape& shape) {
    const auto same = room_coefficient(q, shape, is_mean(q)), other = room_coefficient(q, shape, !is_mean(q));
    if (!same || !other) return same ? same : other;
    const auto away = [&](const RoomCoefficient& c) { return std::abs(c.anchor.temperature_K - q.temperature_K); };
    return away(*same) <= away(*other) ? same : other;
}

Result<Evaluated> estimated_coefficient(const Question& q) {
    const Result<Composition> composition = composition_of_metal(q.catalogue, q.metal);
    if (!composition) return composition.problem();
    const Result<Estimate> e = estimate_expansion({q.catalogue, *composition, treatment_of(q.metal, q.conditions)});
    if (!e) return e.problem();
    return estimated_from(q, *e, e->rule);
}

double strain(const Question& q, double temperature_K) {
    if (std::abs(temperature_K - room_temperature_K) < same_K) return 0;
    Conditions c = q.conditions;
    c.temperature_K = temperature_K;
    const Result<Evaluated> mean = evaluate(q.catalogue, q.metal, "linear_expansion", c);
    return mean ? mean->value_si * (temperature_K - room_temperature_K) : no_number;
}

} // namespace

Result<Evaluated> expansion_by_law(const Question& q) {
    const ExpansionShape shape(q.catalogue, q.metal);
    const double here = is_mean(q) ? shape.mean_to(q.temperature_K) : shape.at(q.temperature_K);
    if (const auto c = best_coefficient(q, shape)) {
        const double change = std::log(std::max(here, 1e-9) / (c->anchor.value.value_si / c->per_K));
        return carried_from(c->anchor, q, c->per_K * here,
                            std::hypot(std::min(shape_error * std::abs(change) * 2, 0.5), least_shape_error),
                            c->from_mean == is_mean(q) ? "Grueneisen's rule, the coefficient goes as the lattice's heat"
                                                       : "Grueneisen's rule, between mean and coefficient");
    }
    if (q.metal.is_element()) return no_law("nothing is cited");
    Result<Evaluated> e = estimated_coefficient(q);
    if (!e || std::abs(q.temperature_K - room_temperature_K) < same_K) return e;
    Evaluated out = carried_from({room_temperature_K, *e}, q, e->value_si * here, shape_error,
                                 e->law + ", along Grueneisen's rule");
    out.basis = Basis::estimated;
    return out;
}

Result<Evaluated> density_by_law(const Question& q) {
    constexpr double strain_error = 0.05, usual_strain_error = 0.005;
    std::optional<Anchor> a = nearest_anchor(q);
    const Basis basis = a ? Basis::carried : Basis::estimated;
    if (!a) {
        const Result<Composition> composition = composition_of_metal(q.catalogue, q.metal);
        if (!composition) return composition.problem();
        const Result<Estimate> e = estimate_density({q.catalogue, *composition, treatment_of(q.metal, q.conditions)});
        if (!e) return e.problem();
        Question room = q;
        room.temperature_K = room_temperature_K;
        a = Anchor{room_temperature_K, estimated_from(room, *e, e->rule)};
        if (std::abs(q.temperature_K - room_temperature_K) < same_K) return a->value;
    }
    const double there = strain(q, a->temperature_K), here = strain(q, q.temperature_K);
    if (std::isnan(there) || std::isnan(here)) {
        // No expansion is known: the density of the cited figure, within what metals usually shrink or grow.
        Evaluated e =
            carried_from(*a, q, a->value.value_si, usual_strain_error, "no expansion is known: taken as it is");
        e.basis = basis;
        return e;
    }
    const double ratio = std::pow((1 + there) / (1 + here), 3);
    Evaluated e = carried_from(*a, q, a->value.value_si * ratio, strain_error * std::abs(ratio - 1),
                               "linear expansion between the two temperatures, three times");
    e.basis = basis;
    return e;
}

} // namespace pourbook
