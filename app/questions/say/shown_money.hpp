// Money in the workshop's currency. Inside all money is US dollars; where the workshop's profile names another currency
// and its file holds a dated, cited rate, the units in which prices are shown are written "EUR/kg = 1.08 USD/kg". Every
// amount that is shown or typed is converted by that one rate, so that both agree.
#pragma once

#include "questions/say/in_dollars.hpp"
#include "questions/say/shown.hpp"

#include <vector>

namespace pourbook {

/// The newest rate kept for a currency. Errors: no_value (none, with how to enter one).
Result<Converted> newest_rate(const std::string& currency, const std::vector<ExchangeRate>& rates);

/// From now on the catalogue's prices are shown in the profile's currency, by its newest rate. Returns why not, or
/// nothing.
std::string show_money_of(Catalogue& catalogue, const WorkshopData& data);

struct ShownCurrency {
    std::string name = "USD";
    double usd = 1; // of one

    double shown(double from_usd) const { return from_usd / usd; }
};
/// For programs (base units) always US dollars.
ShownCurrency shown_currency(const Catalogue& catalogue, UnitSystem units = UnitSystem::shown);

/// "12.3 EUR"; for programs (base units) always US dollars.
std::string shown_money(const Catalogue& catalogue, double usd, int figures, UnitSystem units);

/// The rate that a property's figures are shown by: "1.08 USD/EUR, central bank, 2026-11-01"; empty for US dollars and
/// for what is no money.
std::string shown_rate(const Property& property);
/// The rate that prices are shown by.
std::string shown_rate(const Catalogue& catalogue);
/// The same in brackets behind an amount, " (at 1.08 USD/EUR, central bank, 2026-11-01)"; empty for US dollars.
std::string at_rate(const Catalogue& catalogue);
/// The same as a sentence, "Money at 1.08 USD/EUR, central bank, 2026-11-01."; empty for US dollars.
std::string rate_sentence(const Catalogue& catalogue);

/// An amount as typed, "20 EUR" or "20 USD", in US dollars. Errors: unreadable (what is expected; a bare number where
/// money is shown in another currency); no_value (a currency whose rate is not in use, with how to enter it).
Result<double> usd_from(const Catalogue& catalogue, const std::string& written, const std::string& what);

/// About that many dollars as a round amount in the currency shown: "20USD", "20 EUR", "3000JPY".
std::string round_amount(const Catalogue& catalogue, double usd, const char* gap = "");

} // namespace pourbook
