#include "questions/pour/pour_money.hpp"

#include "core/quantity/constants.hpp"
#include "questions/say/oldest_price.hpp"

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
    m.as_of = oldest_price(*price, catalogue);
    return m;
}

} // namespace pourbook
