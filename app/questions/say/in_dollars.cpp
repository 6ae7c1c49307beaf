#include "questions/say/in_dollars.hpp"

#include "core/quantity/format.hpp"

#include <cmath>
#include <string>

namespace pourbook {
namespace {

double days_of(const std::string& date) { // good enough to tell which date is nearer
    if (date.size() < 7) return 0;
    const double day = date.size() >= 10 ? std::stod(date.substr(8, 2)) : 15;
    return std::stod(date.substr(0, 4)) * 365.25 + std::stod(date.substr(5, 2)) * 30.44 + day;
}

} // namespace

Result<Converted> in_dollars(const OwnPrice& price, const std::vector<ExchangeRate>& rates) {
    if (price.currency == "USD") return Converted{price.per_kg, ""};
    const ExchangeRate* nearest = nullptr;
    const auto distance = [&](const ExchangeRate& r) { return std::abs(days_of(r.date) - days_of(price.date)); };
    for (const ExchangeRate& r : rates)
        if (r.currency == price.currency && r.usd > 0 && (!nearest || distance(r) < distance(*nearest))) nearest = &r;
    if (!nearest)
        return Problem{Problem::Kind::no_value,
                       "no rate of exchange for " + price.currency + ": add one with `pourbook rate add " +
                           price.currency + " 1.08 --date 2026-11-25 --source ...`",
                       0};
    return Converted{price.per_kg * nearest->usd, trimmed(nearest->usd, 6) + " USD/" + price.currency + ", " +
                                                      nearest->source + ", " + nearest->date};
}

} // namespace pourbook
