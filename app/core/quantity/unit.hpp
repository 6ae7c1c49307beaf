// Units of the trade and their exact factors to SI.
//
// Grammar: factors joined by '.', '*' or a blank, divided by '/', with powers written 'cm3', 'cm^3', 'm-2', and
// brackets. A '/' divides by the one factor (or bracket) behind it only; "W/m.K" is refused as ambiguous: write
// W/(m.K). A leading number is part of the unit ("1e-6/K"). degC and degF carry an offset when they stand alone and are
// differences inside a product. "%IACS" is 0.58 MS/m (IEC 60028; ASTM E1004). Pound 0.45359237 kg and inch 25.4 mm are
// exact; a troy ounce is 31.1034768 g; the calorie is thermochemical, 4.184 J; the Btu is the international table one,
// 1055.05585262 J.
#pragma once

#include "core/quantity/dimension.hpp"
#include "core/result.hpp"

#include <string>
#include <string_view>

namespace pourbook {

struct Unit {
    Dimension dimension;
    double scale = 1; // SI = value * scale + offset
    double offset = 0;

    double to_si(double value) const { return value * scale + offset; }
    double from_si(double si) const { return (si - offset) / scale; }
};

/// Errors: unreadable, with the column of the first character that can't be read.
Result<Unit> parse_unit(std::string_view text);

struct Quantity {
    double si = 0;
    Dimension dimension;
};

/// "25mm", "1500 degF", "1.7uohm.cm", "101%IACS", "0.1" (no unit: the caller decides, dimension is 1).
/// Errors: unreadable with the column; a number that is not finite is refused.
Result<Quantity> parse_quantity(std::string_view text);

/// Number at the front of text; on success moves text behind it. Locale-independent.
bool take_number(std::string_view& text, double& number);

/// The same as parse_quantity, but a bare number is read in SI and any other dimension than the wanted one is refused.
/// %IACS and S/m are accepted where a resistivity is wanted and ohm.m where a conductivity is.
Result<double> parse_si(std::string_view text, const Dimension& wanted, std::string_view what);

} // namespace pourbook
