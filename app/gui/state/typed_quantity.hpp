// A quantity as it is typed into a field that shows a unit beside it: a bare number is in that unit, sums are worked
// out, "ml" and "°C" are units like others. What is kept is a text that every reader of the program understands
// ("14mm").
#pragma once

#include <string>
#include <vector>

namespace pourbook {

/// The units offered for this one, itself among them: "mm" -> mm, cm, in.
std::vector<std::string> units_beside(const std::string& unit);
/// As people write it: "degC" -> "°C", "cm3" -> "cm³".
std::string unit_sign(const std::string& unit);

/// The text apart from its unit: {"15+-0.1", "mm"}; a text that is no number with a unit ("liquid nitrogen") stays
/// whole.
struct SplitQuantity {
    std::string number, unit;
};
SplitQuantity split_quantity(const std::string& text);

/// What is kept of a text typed while this unit is shown: "2*4" -> "8mm", "14,5" -> "14,5mm", "0.6in" as it is.
std::string kept_quantity(const std::string& typed, const std::string& unit);

/// How the text was read, in the unit shown: "= 700 °C"; empty where it can't be read or says just that.
std::string echo_of(const std::string& kept, const std::string& unit);

/// The same quantity in another unit; the text itself where that can't be said.
std::string in_unit(const std::string& kept, const std::string& unit);

/// One step up or down in the last figure written: "1.30" -> "1.31", "15" -> "16"; ten with `far`. What stands behind
/// the number stays.
std::string nudged(const std::string& typed, int steps, bool far);

} // namespace pourbook
