#include "questions/say/shown_merit.hpp"

#include "core/quantity/unit.hpp"
#include "questions/say/shown_money.hpp"

#include <cmath>

namespace pourbook {

ShownMerit::ShownMerit(const Catalogue& catalogue, const std::string& formula, const std::string& si_unit,
                       UnitSystem units)
    : property_(catalogue.property(formula)), units_(units), unit_(si_unit == "1" ? "" : si_unit) {
    if (property_) {
        unit_ = property_->is_text ? "" : shown_unit(*property_, units);
        return;
    }
    const ShownCurrency money = shown_currency(catalogue, units);
    const std::size_t at = unit_.find("USD");
    const Result<Unit> unit = at == std::string::npos ? Problem{} : parse_unit(unit_);
    if (!unit) return;
    scale_ = std::pow(money.usd, unit->dimension.exponent[Dimension::money]);
    unit_.replace(at, 3, money.name);
}

double ShownMerit::number(double si) const {
    return property_ ? shown_number(*property_, si, units_) : si / scale_;
}

} // namespace pourbook
