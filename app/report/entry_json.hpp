// One entry of the workshop's file as JSON: every field as written, figures in SI beside them.
#pragma once

#include "core/workshop/kinds.hpp"
#include "report/json_parts.hpp"

namespace pourbook {

Json json_of_entry(const Kind& kind, const Entry& entry);

} // namespace pourbook
