// Catalogues for tests: the real one, and a small one of invented metals where the arithmetic must be seen through.
#pragma once

#include "core/materials/catalogue.hpp"

#include <string>
#include <utility>
#include <vector>

namespace pourbook::testing {

/// The compiled reference of this build.
const Catalogue& real_catalogue();

/// Invented metals "aa" (pure), "bb" (pure) and "ab" (alloy, 60 % Aa, 40 % Bb) with round figures; dictionary as in
/// db/properties.json.
Catalogue small_catalogue();

Record series(const std::string& property, std::vector<std::pair<double, double>> points_K_si,
              const std::string& source = "handbook-1");
Record single(const std::string& property, double value_si, const std::string& source = "handbook-1");

/// A price in USD/kg, give or take a tenth.
Price price(const std::string& slug, double usd_per_kg);

} // namespace pourbook::testing
