#include "questions/pour/pour_money.hpp"

#include "core/quantity/constants.hpp"
#include "core/quantity/format.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

std::optional<PourMoney> by_lots(const OwnPour& own, const casting::Charge& charge) {
    double kg = 0, usd = 0;
    PourMoney m;
    std::string names;
    for (const OwnPour::Lot& lot : own.lots) {
        if (std::isnan(lot.usd_per_kg)) continue;
        kg += lot.kg;
        usd += lot.kg * lot.usd_per_kg;
        names += (names.empty() ? "" : ", ") + lot.name;
        m.as_of = std::max(m.as_of, lot.bought);
    }
    if (!(kg > 0)) return std::nullopt;
    casting::Traced price;
    price.value_si = usd / kg;
    price.how_known = HowKnown::own;
    price.how = "what your lots cost: " + names;
    price.sources.push_back(
        {own.lots_source, names, "", "", "", trimmed(usd / kg, 5) + " USD/kg", usd / kg, HowKnown::own, true});
    m.by_lots = true;
    if (m.as_of.empty()) m.as_of = "an unstated day";
    m.value = m.low = m.high = price.value_si * charge.charge_kg;
    m.returns_value = price.value_si * charge.returns_kg;
    m.price = price;
    return m;
}

} // namespace

PourMoney pour_money(const Catalogue& catalogue, const Metal& metal, const PourRequest& request,
                     const casting::Charge& charge) {
    if (request.own_stock)
        if (auto m = by_lots(request.own, charge)) return *m;
    const Result<Evaluated> price = evaluate(catalogue, metal, "price", request.conditions);
    PourMoney m;
    if (!price) {
        m.price = price.problem();
        return m;
    }
    m.price = casting::traced(*price);
    m.value = price->value_si * charge.charge_kg;
    const double half = normal_90 * price->standard_uncertainty_si * charge.charge_kg;
    m.low = std::max(m.value - half, 0.0);
    m.high = m.value + half;
    m.returns_value = price->value_si * charge.returns_kg;
    for (const SourceValue& s : price->sources)
        for (const PriceSet& set : catalogue.price_sets)
            for (const Price& p : set.prices)
                if (s.record_id == "price." + p.metal && catalogue.price(p.metal) == &p &&
                    (m.as_of.empty() || p.as_of < m.as_of))
                    m.as_of = p.as_of;
    return m;
}

} // namespace pourbook
