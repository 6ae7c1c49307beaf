// A sweep for programs: its points by metal.
#pragma once

#include "questions/drop/sweep.hpp"

#include <string>

namespace pourbook {

std::string json_of(const SweepResult& result, const Catalogue& catalogue);

} // namespace pourbook
