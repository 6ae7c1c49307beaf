// Drop, drag, inference and sweep as text for a terminal.
#pragma once

#include "questions/drop/drag.hpp"
#include "questions/drop/drop.hpp"
#include "questions/drop/infer.hpp"
#include "questions/drop/sweep.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

std::string text_of(const DropResult& result, const Catalogue& catalogue, UnitSystem units);
std::string text_of(const DragResult& result, const Catalogue& catalogue, UnitSystem units);
std::string text_of(const InferResult& result, const Catalogue& catalogue, UnitSystem units);
std::string text_of(const SweepResult& result, const Catalogue& catalogue, UnitSystem units);

} // namespace pourbook
