#include "questions/pour/pour_money.hpp"

#include "core/quantity/constants.hpp"

#include <algorithm>

namespace pourbook {
PourMoney pour_money(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions,
                     const casting::Charge& charge) {
    const Result<Evaluated> price = evaluate(catalogue, metal, "price", conditions);
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
