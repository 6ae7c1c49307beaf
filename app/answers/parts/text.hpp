// Results as text for a terminal, in the units a person chose.
#pragma once

#include "questions/metals/check.hpp"
#include "questions/say/shown.hpp"

#include <string>
#include <vector>

namespace pourbook {

/// "Ag 92.5, Cu 7.5", limits as printed.
std::string composition_text(const Metal& metal);

std::string text_of_metals(const std::vector<const Metal*>& metals);
std::string text_of_references(const std::vector<const Reference*>& references);
std::string text_of(const CheckResult& result, const Catalogue& catalogue, bool with_coverage, bool with_conflicts);

} // namespace pourbook
