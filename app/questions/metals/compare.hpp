// Several properties of several metals under the same conditions.
#pragma once

#include "core/evaluate/evaluate.hpp"

#include <string>
#include <vector>

namespace pourbook {

struct CompareRequest {
    std::vector<std::string> metals; // slugs or names; empty: all
    std::vector<std::string> properties;
    Conditions conditions;
};

struct ComparedMetal {
    const Metal* metal = nullptr;
    std::vector<Result<Evaluated>> cells; // one for each property; a missing value says why
};

struct CompareResult {
    std::vector<const Property*> properties;
    Conditions conditions;
    std::vector<ComparedMetal> rows; // in the order asked, each metal once
};

/// Errors: unknown metal or property.
Result<CompareResult> compare(const Catalogue& catalogue, const CompareRequest& request);

} // namespace pourbook
