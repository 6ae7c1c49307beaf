// Quantities of a pour sheet in the units of its reader, to what a founder can measure; silver and gold in troy ounces.
#pragma once

#include "core/casting/practice.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

struct SheetUnits {
    UnitSystem units = UnitSystem::shown;
    bool precious = false;

    bool workshop() const { return units == UnitSystem::workshop; }
    std::string temperature(double kelvin) const; // to a degree
    std::string difference(double kelvin) const;
    std::string mass(double kg) const;
    /// In the unit in which all of it is told, for a sum in the workshop: "15 lb + 0.4 lb = 15.4 lb".
    std::string mass_of(double kg, double all_kg) const;
    std::string length(double metres) const;
    std::string volume(double m3) const;
    std::string about_volume(double m3) const; // two figures, rounded up
    /// Without their unit: as drawn; as the pattern is made, to 0.01 mm or 0.001 in.
    std::string drawn_size(double metres) const;
    std::string pattern_size(double metres) const;
};

std::string shown_percent(double share);
std::string shown_plus_minus(double share);                     // "+- 0.046 %"
std::string shown_between(double low_share, double high_share); // one figure where both are alike
std::string shown_scale(double times);                          // "1.0216"
std::string shown_seconds(double s);                            // 57 s, 4.2 min
/// "40 to 70", or one figure where both are the same.
std::string shown_range(const casting::Range& range, double factor, int figures);
/// " (estimated)", " (from memory)", " (common practice)".
std::string shown_mark(const casting::Traced& t);
/// "[a, b]", each key once.
std::string shown_keys(const std::vector<SourceValue>& sources);
/// How a figure came about and from where, in lines.
std::string shown_grounds(const casting::Traced& t, UnitSystem units);

} // namespace pourbook
