#include "core/evaluate/money.hpp"

#include "core/quantity/format.hpp"

#include <cmath>

namespace pourbook {
namespace {

constexpr double negligible_wt_percent = 0.5;
constexpr double unstated_price_spread =
    0.10; // our estimate: an annual average or a day's price against another seller's

SourceValue source_of(const Price& p) {
    SourceValue s;
    s.key = p.citation.source;
    s.locator = p.citation.locator;
    s.through = p.citation.through;
    s.record_id = "price." + p.metal;
    s.printed = p.printed + " " + p.unit;
    s.value_si = p.usd_per_kg;
    s.how_known = p.citation.how_known;
    s.chosen = true;
    return s;
}

Evaluated from_price(const Price& p, const std::string& today) {
    Evaluated e;
    e.value_si = p.usd_per_kg;
    e.standard_uncertainty_si = p.usd_per_kg * relative_uncertainty(p);
    e.uncertainty_assumed = std::isnan(p.low_usd_per_kg);
    e.how_known = p.citation.how_known;
    e.sources.push_back(source_of(p));
    e.causes.push_back({"price." + p.metal, relative_uncertainty(p)});
    e.trail.push_back("price of " + p.metal + ": " + p.printed + " " + p.unit + ", " + p.form + ", " + p.as_of);
    e.stale = is_stale(p, today);
    if (e.stale) e.trail.push_back("stale: the price of " + p.metal + " was good until " + p.fresh_until);
    return e;
}

} // namespace

double relative_uncertainty(const Price& p) {
    if (std::isnan(p.low_usd_per_kg) || std::isnan(p.high_usd_per_kg)) return unstated_price_spread;
    return (p.high_usd_per_kg - p.low_usd_per_kg) / 2 / std::sqrt(3.0) / p.usd_per_kg;
}

bool is_stale(const Price& p, const std::string& today) {
    return !today.empty() && !p.fresh_until.empty() && today > p.fresh_until;
}

double form_factor(const Catalogue& catalogue, const std::string& form, const std::string& family) {
    if (form == "exchange") return 1;
    const PriceForm* f = catalogue.price_form(form, family);
    return f ? std::sqrt(f->low * f->high) : no_number;
}

const Price* own_price(const Catalogue& catalogue, const Metal& metal) {
    const Price* own = catalogue.price(metal.slug);
    return own && own->grade.empty() ? own : nullptr;
}

Result<Evaluated> evaluate_metal_value(const Catalogue& catalogue, const Metal& metal) {
    if (metal.composition.empty()) return Problem{Problem::Kind::no_value, "composition of " + metal.slug, 0};
    Evaluated sum;
    sum.value_si = 0;
    sum.how_known = HowKnown::computed;
    double variance = 0;
    std::string missing;
    for (const Portion& part : metal.composition) {
        if (part.wt_percent <= 0) continue; // a limit only
        const Metal* element = catalogue.element(part.element);
        const Price* price = element ? catalogue.price(element->slug) : nullptr;
        if (!price && part.wt_percent < negligible_wt_percent) {
            sum.trail.push_back(part.element + " " + trimmed(part.wt_percent, 3) + " % has no price and is left out");
            continue;
        }
        if (!price) {
            missing +=
                (missing.empty() ? "" : ", ") + std::string("price of ") + (element ? element->slug : part.element);
            continue;
        }
        const Evaluated one = from_price(*price, catalogue.today);
        const double share = part.wt_percent / 100 * one.value_si;
        sum.value_si += share;
        variance += std::pow(share * one.causes.front().relative, 2);
        sum.causes.push_back({one.causes.front().key, share * one.causes.front().relative});
        sum.sources.push_back(one.sources.front());
        sum.stale = sum.stale || one.stale;
        sum.uncertainty_assumed = sum.uncertainty_assumed || one.uncertainty_assumed;
        sum.trail.push_back(trimmed(part.wt_percent, 4) + " % " + part.element + ", " + one.trail.front());
        if (one.stale) sum.trail.push_back(one.trail.back());
    }
    if (!missing.empty()) return Problem{Problem::Kind::no_value, missing, 0};
    for (Cause& c : sum.causes) c.relative /= sum.value_si;
    sum.standard_uncertainty_si = std::sqrt(variance);
    sum.trail.push_back("metal value by composition, without premium, making or loss");
    return sum;
}

namespace {

Result<Evaluated> exchange_price(const Catalogue& catalogue, const Metal& metal) {
    const Price* own = catalogue.price(metal.slug);
    if (own && own->grade.empty()) return from_price(*own, catalogue.today);
    if (own)
        return Problem{
            Problem::Kind::no_value,
            "price of " + metal.slug + " as pure as its figures: what is cited is the price of " + own->grade, 0};
    if (metal.is_element()) return Problem{Problem::Kind::no_value, "price of " + metal.slug, 0};
    return evaluate_metal_value(catalogue, metal);
}

} // namespace

Result<Evaluated> evaluate_price(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions) {
    const std::string& form = conditions.price_form;
    Result<Evaluated> e = exchange_price(catalogue, metal);
    if (!e || form == "exchange") return e;
    const PriceForm* f = catalogue.price_form(form, metal.family);
    if (!f) return Problem{Problem::Kind::no_value, "price of " + metal.slug + " as " + form, 0};
    const double factor = form_factor(catalogue, form, metal.family);
    const double relative = std::log(f->high / f->low) / 2 / std::sqrt(3.0); // limits of the factor, on a ratio scale
    e->value_si *= factor;
    e->causes.push_back({"form." + form + "." + (f->families.empty() ? "others" : f->families.front()), relative});
    e->standard_uncertainty_si = e->value_si * std::hypot(e->standard_uncertainty_si * factor / e->value_si, relative);
    e->trail.push_back(form + ": " + trimmed(f->low, 3) + " to " + trimmed(f->high, 3) + " times the exchange price [" +
                       f->citation.source + ", " + f->citation.locator + "]");
    return e;
}

} // namespace pourbook
