#include "questions/say/shown_money.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"
#include "core/workshop/check_entry.hpp"

#include <algorithm>

namespace pourbook {
namespace {

constexpr const char* rate_words = "; shown at ";

/// "USD/kg" -> "EUR/kg = 1.08 USD/kg".
void reprice(std::string& unit, const std::string& currency, double usd) {
    if (unit.starts_with("USD")) unit = currency + unit.substr(3) + " = " + trimmed(usd, 12) + " " + unit;
}

bool take_front(std::string_view& text, std::string_view sign) {
    if (!text.starts_with(sign)) return false;
    text.remove_prefix(sign.size());
    return true;
}

} // namespace

Result<Converted> newest_rate(const std::string& currency, const std::vector<ExchangeRate>& rates) {
    OwnPrice one;
    one.per_kg = 1;
    one.currency = currency;
    for (const ExchangeRate& r : rates)
        if (r.currency == currency) one.date = std::max(one.date, r.date);
    return in_dollars(one, rates);
}

std::string show_money_of(Catalogue& catalogue, const WorkshopData& data) {
    const std::string& currency = data.profile.currency;
    if (currency.empty() || currency == "USD") return {};
    const Result<Converted> rate = newest_rate(currency, data.rates);
    if (!rate) return "prices are shown in USD, not " + currency + ": " + rate.problem().text;
    for (Property& p : catalogue.properties) {
        if (!p.si_unit.starts_with("USD")) continue;
        reprice(p.shown_unit, currency, rate->usd_per_kg);
        reprice(p.workshop_unit, currency, rate->usd_per_kg);
        p.meaning += rate_words + rate->how;
    }
    return {};
}

ShownCurrency shown_currency(const Catalogue& catalogue, UnitSystem units) {
    const Property* price = catalogue.property("price");
    if (!price || units == UnitSystem::base) return {};
    const std::string unit = shown_unit(*price, UnitSystem::shown); // per kilogram
    return {unit.substr(0, unit.find('/')), 1 / shown_number(*price, 1, UnitSystem::shown)};
}

std::string shown_money(const Catalogue& catalogue, double usd, int figures, UnitSystem units) {
    const ShownCurrency currency = shown_currency(catalogue, units);
    return significant(currency.shown(usd), figures) + " " + currency.name;
}

std::string shown_rate(const Property& property) {
    const std::size_t at = property.meaning.rfind(rate_words);
    return at == std::string::npos ? "" : property.meaning.substr(at + std::string(rate_words).size());
}

std::string shown_rate(const Catalogue& catalogue) {
    const Property* price = catalogue.property("price");
    return price ? shown_rate(*price) : "";
}

std::string at_rate(const Catalogue& catalogue) {
    const std::string rate = shown_rate(catalogue);
    return rate.empty() ? "" : " (at " + rate + ")";
}

std::string rate_sentence(const Catalogue& catalogue) {
    const std::string rate = shown_rate(catalogue);
    return rate.empty() ? "" : "Money at " + rate + ".";
}

Result<double> usd_from(const Catalogue& catalogue, const std::string& written, const std::string& what) {
    const ShownCurrency shown = shown_currency(catalogue);
    const std::string said = what + " '" + written + "': ";
    const Problem expected{Problem::Kind::unreadable,
                           said + "an amount of money is expected, such as " + round_amount(catalogue, 20), 0};
    std::string_view rest = written;
    if (take_front(rest, "$")) return usd_from(catalogue, std::string(rest) + "USD", what);
    if (take_front(rest, "€")) return usd_from(catalogue, std::string(rest) + "EUR", what);
    const Result<double> read = take_written_number(rest);
    if (!read) return expected;
    const double number = *read;
    std::string unit(rest.substr(std::min(rest.find_first_not_of(' '), rest.size())));
    if (unit.empty() && !bare_numbers_are_si())
        return Problem{Problem::Kind::unreadable,
                       said + trimmed(number, 12) + " what? " + trimmed(number, 12) + shown.name +
                           (shown.name == "USD" ? "" : " or " + trimmed(number, 12) + "USD"),
                       0};
    const std::string currency = take_currency(unit); // what is left of the unit is in USD
    if (!currency.empty() && currency != shown.name)
        return Problem{Problem::Kind::no_value,
                       said + "no rate of exchange for " + currency + " is in use: enter one with `pourbook rate add " +
                           currency + " 1.08 --date 2026-11-25 --source ...` and choose it with --currency " +
                           currency + " or `pourbook profile set --currency " + currency + "`",
                       0};
    const Result<double> usd =
        parse_si(written.substr(0, written.size() - rest.size()) + unit, base_dimension(Dimension::money), what);
    if (!usd) return expected;
    return currency.empty() ? *usd : *usd * shown.usd;
}

std::string round_amount(const Catalogue& catalogue, double usd, const char* gap) {
    const ShownCurrency currency = shown_currency(catalogue);
    return trimmed(currency.shown(usd), 1) + gap + currency.name;
}

} // namespace pourbook
