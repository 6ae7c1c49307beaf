// Money in the workshop's currency. Inside all money is US dollars; where the workshop's profile names another currency
// and its file holds a dated, cited rate, the units in which prices are shown are written "EUR/kg = 1.08 USD/kg".
#pragma once

#include "core/workshop/data.hpp"
#include "usecases/shown.hpp"

namespace pourbook {

/// From now on the catalogue's prices are shown in the profile's currency, by its newest rate. Returns why not, or
/// nothing.
std::string show_money_of(Catalogue& catalogue, const WorkshopData& data);

/// "12.3 EUR"; for programs (base units) always US dollars.
std::string shown_money(const Catalogue& catalogue, double usd, int figures, UnitSystem units);

/// The rate that prices are shown by: "1.08 USD/EUR, central bank, 2026-11-01"; empty for US dollars.
std::string shown_rate(const Catalogue& catalogue);

} // namespace pourbook
