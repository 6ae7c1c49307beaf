// One property of one metal, with its uncertainty, sources and trail.
#pragma once

#include "core/evaluate/evaluate.hpp"

namespace pourbook {

struct ValueRequest {
    std::string metal;
    std::string property;
    Conditions conditions;
};

struct ValueResult {
    const Metal* metal = nullptr;
    const Property* property = nullptr;
    Evaluated value;
    Conditions conditions; // asked
};

/// Errors: unknown, no_value, out_of_range, refused.
Result<ValueResult> value(const Catalogue& catalogue, const ValueRequest& request);

} // namespace pourbook
