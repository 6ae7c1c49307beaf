#pragma once

#include <string>

namespace pourbook {

/// A temperature in a sentence: "20 °C", "-196 °C" to a tenth of a degree; below -200 °C, where cold is spoken of in
/// kelvin, "4.2 K". What a source prints keeps the source's unit.
std::string celsius_text(double kelvin);

} // namespace pourbook
