#include "usecases/shown_money.hpp"

#include "core/quantity/format.hpp"
#include "usecases/with_workshop.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr const char* rate_words = "; shown at ";

/// "USD/kg" -> "EUR/kg = 1.08 USD/kg".
void reprice(std::string& unit, const std::string& currency, double usd) {
    if (unit.starts_with("USD")) unit = currency + unit.substr(3) + " = " + trimmed(usd, 12) + " " + unit;
}

} // namespace

std::string show_money_of(Catalogue& catalogue, const WorkshopData& data) {
    const std::string& currency = data.profile.currency;
    if (currency.empty() || currency == "USD") return {};
    OwnPrice one;
    one.per_kg = 1;
    one.currency = currency;
    for (const ExchangeRate& r : data.rates)
        if (r.currency == currency) one.date = std::max(one.date, r.date);
    const Result<Converted> rate = in_dollars(one, data.rates);
    if (!rate) return "prices are shown in USD, not " + currency + ": " + rate.problem().text;
    for (Property& p : catalogue.properties) {
        if (!p.si_unit.starts_with("USD")) continue;
        reprice(p.shown_unit, currency, rate->usd_per_kg);
        reprice(p.workshop_unit, currency, rate->usd_per_kg);
        p.meaning += rate_words + rate->how;
    }
    return {};
}

std::string shown_money(const Catalogue& catalogue, double usd, int figures, UnitSystem units) {
    const Property* price = catalogue.property("price");
    if (!price || units == UnitSystem::base) return significant(usd, figures) + " USD";
    const std::string unit = shown_unit(*price, UnitSystem::shown); // per kilogram
    return significant(shown_number(*price, usd, UnitSystem::shown), figures) + " " + unit.substr(0, unit.find('/'));
}

std::string shown_rate(const Catalogue& catalogue) {
    const Property* price = catalogue.property("price");
    const std::size_t at = price ? price->meaning.rfind(rate_words) : std::string::npos;
    return at == std::string::npos ? "" : price->meaning.substr(at + std::string(rate_words).size());
}

} // namespace pourbook
