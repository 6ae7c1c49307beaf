// Drop, drag, inference and sweep as JSON text; conventions as in answers/parts/json.hpp.
#pragma once

#include "questions/drop/drag.hpp"
#include "questions/drop/drop.hpp"
#include "questions/drop/infer.hpp"
#include "questions/drop/sweep.hpp"

#include <string>

namespace pourbook {

std::string json_of(const DropResult& result, const Catalogue& catalogue);
std::string json_of(const DragResult& result, const Catalogue& catalogue);
std::string json_of(const InferResult& result, const Catalogue& catalogue);
std::string json_of(const SweepResult& result, const Catalogue& catalogue);

} // namespace pourbook
