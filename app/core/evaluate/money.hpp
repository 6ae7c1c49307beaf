// Price of a metal and metal value of an alloy from its composition, with dated sources.
#pragma once

#include "core/evaluate/evaluate.hpp"

namespace pourbook {

/// The metal's own price, else its metal value (marked computed). USD/kg.
/// Errors: no_value, naming the elements without a price.
/// Another form than exchange multiplies by the cited factor of the metal's family, with its range as uncertainty; the
/// factor is one cause for all metals of the entry, so they move together.
Result<Evaluated> evaluate_price(const Catalogue& catalogue, const Metal& metal, const Conditions& conditions);

/// The exchange price of the metal itself, as pure as its figures; null: there is none.
const Price* own_price(const Catalogue& catalogue, const Metal& metal);
/// Standard, of the price; whether it is past its period on that day.
double relative_uncertainty(const Price& price);
bool is_stale(const Price& price, const std::string& today);

/// What the exchange price is multiplied by in a form, for metals of a family; NaN: nobody entered one.
double form_factor(const Catalogue& catalogue, const std::string& form, const std::string& family);

/// Sum of content times price of each pure metal, without forming premium or loss. Elements below 0.5 wt% without a
/// price are left out and named in the trail. Errors: no_value, naming the elements without a price.
Result<Evaluated> evaluate_metal_value(const Catalogue& catalogue, const Metal& metal);

} // namespace pourbook
