// Drop, drag, inference and sweep as text for a terminal.
#pragma once

#include "usecases/drag.hpp"
#include "usecases/drop.hpp"
#include "usecases/infer.hpp"
#include "usecases/shown.hpp"
#include "usecases/sweep.hpp"

#include <string>

namespace pourbook {

std::string text_of(const DropResult& result, const Catalogue& catalogue, UnitSystem units);
std::string text_of(const DragResult& result, const Catalogue& catalogue, UnitSystem units);
std::string text_of(const InferResult& result, const Catalogue& catalogue, UnitSystem units);
std::string text_of(const SweepResult& result, const Catalogue& catalogue, UnitSystem units);

} // namespace pourbook
