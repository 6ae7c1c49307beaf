// Quantities of a pour sheet in the units of its reader: SI for the bench, or inches, pounds, degF; precious metals in
// troy ounces there.
#pragma once

#include "core/casting/practice.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

struct SheetUnits {
    bool workshop = false;
    bool precious = false;

    std::string temperature(double kelvin) const;
    std::string difference(double kelvin) const;
    std::string mass(double kg) const;
    /// "0.7 to 1.4 g": two digits each, for what is weighed by the way.
    std::string mass_range(double low_kg, double high_kg) const;
    std::string length(double metres) const;
    std::string volume(double m3) const;
    std::string about_volume(double m3) const; // two figures, rounded up
};

std::string shown_percent(double share);
std::string shown_between(double low_share, double high_share); // one figure where both are alike
std::string shown_seconds(double s);                            // 57 s, 4.2 min
/// "40 to 70", or one figure where both are the same.
std::string shown_range(const casting::Range& range, double factor, int figures);
/// " (estimated)", " (from memory)", " (common practice)".
std::string shown_mark(const casting::Traced& t);
/// "[a, b]", each key once.
std::string shown_keys(const std::vector<SourceValue>& sources);
/// How a figure came about and from where, in lines.
std::string shown_grounds(const casting::Traced& t);

} // namespace pourbook
