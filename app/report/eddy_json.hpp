// Drop, drag, inference and sweep as JSON text; conventions as in report/json.hpp.
#pragma once

#include "usecases/drag.hpp"
#include "usecases/drop.hpp"
#include "usecases/infer.hpp"
#include "usecases/sweep.hpp"

#include <string>

namespace pourbook {

std::string json_of(const DropResult& result, const Catalogue& catalogue);
std::string json_of(const DragResult& result, const Catalogue& catalogue);
std::string json_of(const InferResult& result, const Catalogue& catalogue);
std::string json_of(const SweepResult& result, const Catalogue& catalogue);

} // namespace pourbook
