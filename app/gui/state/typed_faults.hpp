// What was typed into a field, before it is committed.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// "a < 1; b > 2" and lines into conditions, blanks trimmed, empty ones left out.
std::vector<std::string> split_conditions(const std::string& text);

/// Why a text can't be committed; empty where it can.
std::string temperature_fault(const std::string& text);
std::string formula_fault(const Catalogue& catalogue, const std::string& text);
std::string conditions_fault(const Catalogue& catalogue, const std::string& text);

} // namespace pourbook
