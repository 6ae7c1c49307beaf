#pragma once

#include <string>

namespace pourbook {

constexpr double spoken_in_kelvin_below_K = 150; // dry ice is at -78.5 °C, liquid nitrogen at 77 K

/// A temperature in a sentence: "20 °C" to a tenth of a degree, in the cold "77 K". What a source prints keeps its
/// unit.
std::string celsius_text(double kelvin);

} // namespace pourbook
