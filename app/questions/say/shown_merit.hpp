// How a merit is written: in the unit of the property that is ranked, else as the formula gives it in SI, with money in
// the currency shown.
#pragma once

#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

class ShownMerit {
public:
    ShownMerit(const Catalogue& catalogue, const std::string& formula, const std::string& si_unit, UnitSystem units);

    double number(double si) const;
    const std::string& unit() const { return unit_; } // "kg s EUR^-1"; empty where there is none

private:
    const Property* property_;
    UnitSystem units_;
    std::string unit_;
    double scale_ = 1; // of what is no property: SI of one
};

} // namespace pourbook
