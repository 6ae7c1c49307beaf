// Metals and values of the user's own, in the form of the reference's: every figure cites "own-values" and is known as
// `own`, so that tables, charts and sources name it as the user's.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/result.hpp"
#include "core/workshop/data.hpp"

namespace pourbook {

constexpr const char* own_values_key = "own-values";
constexpr const char* own_prices_key = "own-prices";
constexpr const char* own_stock_key = "own-stock";

/// The metal without its own values: composition as stated or as of the metal it is like, whose records it starts with.
/// Errors: unknown (like), unreadable (composition), refused (a metal of the reference has this name).
Result<Metal> own_metal(const Catalogue& catalogue, const OwnMetal& metal);
/// The same where the metal it is like is known already, and may not be in the catalogue yet.
Result<Metal> own_metal(const Catalogue& catalogue, const OwnMetal& metal, const Metal* like);

/// Errors: unreadable (figure, unit, uncertainty), out_of_range (outside the dictionary's plausible range), refused
/// (the property is derived or is a price).
Result<Record> own_record(const Catalogue& catalogue, const OwnValue& value);

/// Adds the value; what the metal had of this property from the metal it is like steps back.
void add_own_value(Metal& metal, Record record);

} // namespace pourbook
