// What the workshop's own file holds, as one table of kinds and their fields. Adding, editing, listing, importing,
// exporting, checking and undoing all read this table, so a new field is one line here and one column in db/schema.
//
// Every field is kept as the person wrote it ("2 kg", "8.50 EUR/kg"), as a figure of the reference is kept as printed;
// core/workshop/data.hpp turns it into numbers.
#pragma once

#include "core/result.hpp"

#include <cstdint>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

namespace pourbook {

enum class FieldType {
    text,
    name,       // like a slug: lower case, hyphens
    metal,      // of the reference or an own one; kept as its slug
    property,   // id of the dictionary
    quantity,   // a number with a unit of the field's dimension, or without where `unit` is 1 or 1/s
    quantities, // several, separated by commas
    money,      // a price with its currency, "8.50 EUR/kg"
    currency,   // EUR
    date,       // 2026-11-25
    month,      // 2026-11
    choice
};

struct Field {
    std::string name; // as in columns, options (--furnace-maximum) and JSON keys
    FieldType type = FieldType::text;
    std::string meaning;
    std::string example; // of a quantity or price, for messages: "2 kg"
    std::string unit;    // SI unit of a quantity
    bool required = false;
    std::vector<std::string> choices;        // of a choice; the first stands where none is given
    std::vector<std::string> other_names;    // under which lists from elsewhere have it
    std::vector<std::string> types = {};     // of the entry, by its field "type", that have a use for it; empty: all
    std::vector<std::string> needed_by = {}; // the types of which an entry is nothing without it
    int since = 1;                           // the schema that brought it: an older file's entry is sealed without it
    double lowest_si = -std::numeric_limits<double>::infinity(); // of a quantity, in the trade's sense
    double highest_si = std::numeric_limits<double>::infinity();
    std::string range = {}; // the same in words: "100 degC to 3500 degC"
};

struct Kind {
    std::string name;    // stock, price ... also the table
    std::string meaning; // "a lot of metal on the shelf"
    std::vector<Field> fields;
    std::vector<std::string> key; // fields that tell two entries apart; one name field left empty is filled: stock-3
    bool single = false;          // at most one entry (the profile)

    std::size_t at(std::string_view field) const; // fields.size() where there is none
};

/// One entry: as many values as the kind has fields, in their order; empty: not said.
struct Entry {
    std::int64_t id = 0; // 0: not kept yet
    std::vector<std::string> values;
};

const std::vector<Kind>& workshop_kinds();

/// Errors: unreadable, with the names there are.
Result<const Kind*> kind_named(const std::string& name);

/// The kind of that name, which must exist.
const Kind& known_kind(std::string_view name);

/// An empty entry of the kind.
Entry new_entry(const Kind& kind);

/// The entry a form opens with: a choice that must be made stands at its first word, the commonest.
Entry form_entry(const Kind& kind);

/// Whether an entry of this type has a use for the field.
bool belongs(const Kind& kind, const Entry& entry, const Field& field);

/// The entry without what its type has no use for.
Entry of_its_type(const Kind& kind, Entry entry);

/// The fields without which an entry of this type is nothing and that are empty.
std::vector<const Field*> missing_fields(const Kind& kind, const Entry& entry);

/// The field's text. The field must exist.
const std::string& text_of(const Kind& kind, const Entry& entry, std::string_view field);
std::string& text_of(const Kind& kind, Entry& entry, std::string_view field);

/// "stock stock-3", "price copper 2026-11-01": how a message names an entry.
std::string title_of(const Kind& kind, const Entry& entry);

} // namespace pourbook
