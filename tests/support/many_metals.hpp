// As many invented metals as asked for, to see how the ranking grows with their number.
#pragma once

#include "core/materials/catalogue.hpp"

#include <cstdint>

namespace pourbook::testing {

/// Metals "m000000", "m000001" ... with resistivity, density, melting point and price spread over the range of real
/// ones (a ratio of 100, 20, 5 and 1000), each price its own. The dictionary is the real one.
Catalogue many_metals(std::size_t count, std::uint64_t seed = 1);

} // namespace pourbook::testing
