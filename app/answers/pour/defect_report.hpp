// The defect key as text and JSON.
#pragma once

#include "questions/pour/defects.hpp"

#include <string>
#include <vector>

namespace pourbook {

std::string text_of(const std::vector<Defect>& defects);
std::string json_of(const std::vector<Defect>& defects);

} // namespace pourbook
