// Everything known of one metal: each property resolved at the asked temperature, every record behind it, hazards,
// sources.
#pragma once

#include "core/evaluate/evaluate.hpp"

namespace pourbook {

struct SheetRequest {
    std::string metal;
    Conditions conditions;
};

struct SheetRow {
    const Property* property = nullptr;
    Result<Evaluated> value;
};

struct SheetResult {
    const Metal* metal = nullptr;
    Conditions conditions;
    std::vector<SheetRow> rows;               // one for each property of the dictionary, in its order
    std::vector<const Caution*> cautions;     // hazards, by content
    std::vector<const Reference*> references; // sources named anywhere on the sheet, by key
};

/// Errors: unknown metal.
Result<SheetResult> sheet(const Catalogue& catalogue, const SheetRequest& request);

} // namespace pourbook
