// Results as JSON text: UTF-8, SI unless a key names a unit, no NaN (null, with a reason beside it), keys in a fixed
// order.
#pragma once

#include "questions/metals/check.hpp"
#include "questions/metals/sheet.hpp"

#include <string>
#include <vector>

namespace pourbook {

std::string json_of_metals(const std::vector<const Metal*>& metals);
std::string json_of(const SheetResult& result, const Catalogue& catalogue);
std::string json_of_references(const std::vector<const Reference*>& references);
std::string json_of(const CheckResult& result, const Catalogue& catalogue, bool with_coverage, bool with_conflicts);

} // namespace pourbook
