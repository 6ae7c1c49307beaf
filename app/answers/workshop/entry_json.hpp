// One entry of the workshop's file as JSON: every field as written, figures in SI beside them.
#pragma once

#include "answers/parts/json_parts.hpp"
#include "core/workshop/kinds.hpp"

namespace pourbook {

Json json_of_entry(const Kind& kind, const Entry& entry);

} // namespace pourbook
