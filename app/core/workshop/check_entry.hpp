// Whether an entry can be kept: every field of the form its type asks for, what is required present. Texts are kept as
// written, apart from blanks at the ends, names of metals (turned into slugs) and choices left empty.
#pragma once

#include "core/materials/catalogue.hpp"
#include "core/workshop/kinds.hpp"

namespace pourbook {

/// The catalogue must know the own metals too. Errors: unreadable or unknown; the column is the field's number in the
/// kind, from 1, and the text says what is wrong and what to write.
Result<Entry> checked(const Kind& kind, Entry entry, const Catalogue& catalogue);

/// A price as people write it: "8.50 EUR/kg", "8,50 €/kg", "12 USD/lb", "440 USc/lb", "$5/kg", "€8 per kg".
struct Money {
    double per_kg = 0;    // in its own currency
    std::string currency; // USD, EUR ...
};
/// Errors: unreadable.
Result<Money> money_from(const std::string& text);

/// Three capital letters, such as EUR (ISO 4217).
bool is_currency(std::string_view text);
/// Takes the currency's code off the front of a unit, with signs of the trade read, and leaves dollars: "€/kg" -> "EUR"
/// and "USD/kg"; empty for USD and USc.
std::string take_currency(std::string& unit);

/// A single amount in a quantity field, in SI. Errors: unreadable, without a unit or outside the field's bounds.
Result<double> quantity_si(const Field& field, const std::string& text);
/// "4.2 s, 4.3 s". Errors: unreadable.
Result<std::vector<double>> quantities_si(const Field& field, const std::string& text);

} // namespace pourbook
