// The words of a magnet and a tube taken apart and put together again, for fields that hold one length each.
#pragma once

#include "questions/drop/magnet_words.hpp"

namespace pourbook {

struct MagnetParts {
    std::string shape = "cylinder"; // sphere | cylinder | ring
    std::string diameter, hole, length;
};

struct TubeParts {
    std::string bore, outside, length;
};

/// Pieces that are not there stay empty.
MagnetParts parts_of_magnet(const std::string& words);
std::string magnet_words(const MagnetParts& parts);
TubeParts parts_of_tube(const std::string& words);
std::string tube_words(const TubeParts& parts);

/// Why a text is no length for a field; empty where it is one. A bare number is refused: nobody means metres here.
std::string length_fault(const std::string& text);
/// The same for a mass, a temperature, a whole number.
std::string mass_fault(const std::string& text);
std::string kelvin_fault(const std::string& text);

} // namespace pourbook
