#include "core/laws/plain_figures.hpp"

#include "core/evaluate/cited.hpp"
#include "core/evaluate/money.hpp"
#include "core/laws/draw_parts.hpp"

#include <cmath>

namespace pourbook {

PlainFigures::PlainFigures(const Catalogue& catalogue, const std::vector<std::string>& properties,
                           const Conditions& conditions)
    : catalogue_(catalogue), conditions_(conditions), solidus_(catalogue.property("solidus")),
      price_(catalogue.property("price")), usual_(conditions.condition == "reference" && conditions.temper.empty()),
      any_may_(!conditions.rrr) {
    for (const std::string& id : properties) {
        const bool price = id == "price", reciprocal = id == "conductivity";
        const Property* p = catalogue.property(reciprocal ? "resistivity" : id);
        any_may_ = any_may_ && p && !p->is_text && p->phase != Phase::liquid && id != "metal_value" &&
                   (!price || conditions.price_form == "exchange");
        wanted_.push_back({price ? nullptr : p, reciprocal});
    }
}

bool PlainFigures::may_read(const Metal& metal) const {
    const bool as_casting =
        conditions_.casting && conditions_.condition == "reference" && conditions_.temper.empty() && !metal.own;
    return any_may_ && !as_casting;
}

bool PlainFigures::is_solid(const Metal& metal) const {
    if (!solidus_) return false;
    if (const FlatFigure* melts = flat(metal, *solidus_); melts && conditions_.temperature_K <= melts->value_si)
        return true;
    const auto melts = lone_candidate({catalogue_, metal, *solidus_, solidus_->phase, room_temperature_K, conditions_});
    if (melts && conditions_.temperature_K <= melts->value_si) return true;
    return phase_at(catalogue_, metal, conditions_.temperature_K) == Phase::solid;
}

/// Where it holds at the temperature and in the condition asked.
const FlatFigure* PlainFigures::flat(const Metal& metal, const Property& property) const {
    const FlatFigure* f = usual_ ? catalogue_.flat(metal, property) : nullptr;
    return f && !(std::abs(conditions_.temperature_K - f->temperature_K) > scale_slack_K) ? f : nullptr;
}

bool PlainFigures::add_price(const Metal& metal, std::vector<PlainFigure>& out) const {
    if (const FlatFigure* f = price_ ? catalogue_.flat(metal, *price_) : nullptr) {
        out.push_back({f->value_si, f->relative, f->how_known, f->stale});
        return true;
    }
    const Price* p = own_price(catalogue_, metal);
    if (!p) return false;
    out.push_back({p->usd_per_kg, relative_uncertainty(*p), p->citation.how_known, is_stale(*p, catalogue_.today)});
    return true;
}

void PlainFigures::add(double value_si, double relative, HowKnown how_known, const Wanted& wanted,
                       std::vector<PlainFigure>& out) {
    out.push_back({wanted.reciprocal ? 1 / value_si : value_si, wanted.reciprocal ? -relative : relative, how_known});
}

bool PlainFigures::add_recorded(const Metal& metal, const Wanted& wanted, std::vector<PlainFigure>& out) const {
    const Property& p = *wanted.recorded;
    const bool drawn_in_parts =
        p.id == "resistivity" && (!metal.is_element() || conditions_.temperature_K < residual_below_K);
    if (drawn_in_parts) return false;
    if (const FlatFigure* f = flat(metal, p)) {
        add(f->value_si, f->relative, f->how_known, wanted, out);
        return true;
    }
    const Question q{catalogue_, metal, p, phase_of_solid(p), conditions_.temperature_K, conditions_};
    const auto c = lone_candidate(q);
    if (!c || c->cover != Cover::direct || c->fit == ConditionFit::other) return false;
    bool assumed = false;
    const double relative = own_uncertainty(*c, q, assumed) / std::abs(c->value_si);
    add(c->value_si, relative, c->record->citation.how_known, wanted, out);
    return true;
}

bool PlainFigures::read(const Metal& metal, std::vector<PlainFigure>& out) const {
    out.clear();
    if (!may_read(metal) || !is_solid(metal)) return false;
    for (const Wanted& w : wanted_)
        if (!(w.recorded ? add_recorded(metal, w, out) : add_price(metal, out))) return false;
    return true;
}

Evaluated PlainFigures::with_cause(const Metal& metal, std::size_t property, const PlainFigure& figure) const {
    const Property* recorded = wanted_[property].recorded;
    Evaluated e;
    e.value_si = figure.value_si;
    e.standard_uncertainty_si = std::abs(figure.value_si * figure.relative);
    e.how_known = figure.how_known;
    e.stale = figure.stale;
    e.causes.push_back({recorded ? metal.slug + "." + recorded->id : "price." + metal.slug, figure.relative});
    return e;
}

} // namespace pourbook
