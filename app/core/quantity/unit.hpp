// Units of the trade and their exact factors to SI.
//
// Grammar: factors joined by '.', '*' or a blank, divided by '/', with powers written 'cm3', 'cm^3', 'm-2', and
// brackets. A '/' divides by the one factor (or bracket) behind it only; "W/m.K" is refused as ambiguous: write
// W/(m.K). A leading number is part of the unit ("1e-6/K"). degC (C) and degF (F) carry an offset when they
// stand alone and are differences inside a product. "%IACS" is 0.58 MS/m (IEC 60028; ASTM E1004). Pound 0.45359237 kg
// and inch 25.4 mm are exact; a troy ounce is 31.1034768 g, a pennyweight (dwt) a twentieth of it; the calorie is
// thermochemical, 4.184 J; the Btu is the international table one, 1055.05585262 J.
#pragma once

#include "core/quantity/dimension.hpp"
#include "core/result.hpp"

#include <string>
#include <string_view>
#include <vector>

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
    bool bare = false; // no unit was written
};

/// "25mm", "25,4 mm", "1 1/2in", "1500 degF", "20C", "1.7uohm.cm", "101%IACS", "0.1" (bare: the caller decides).
/// Errors: unreadable with the column; a number that is not finite is refused.
Result<Quantity> parse_quantity(std::string_view text);

/// Number at the front of text in plain decimal writing; on success moves text behind it. Locale-independent.
bool take_number(std::string_view& text, double& number);

/// A quantity of the wanted dimension in SI. A bare number is refused where a dimension is wanted, with what was
/// probably meant; only a count a second may be bare. %IACS and S/m are accepted where a resistivity is wanted and
/// ohm.m where a conductivity is. A temperature may be a name (see named_temperatures) and is never below 0 K. Errors:
/// unreadable.
Result<double> parse_si(std::string_view text, const Dimension& wanted, std::string_view what);

/// "4.2s, 4.3s" as list_parts() reads it, each part by parse_si(). Errors: unreadable.
Result<std::vector<double>> parse_si_list(const std::string& text, const Dimension& wanted, std::string_view what);

/// From here on parse_si() reads a bare number in SI: for scripts that ask for it on the command line. Entries that are
/// kept are checked without it.
void read_bare_numbers_as_si(bool on);
bool bare_numbers_are_si();

struct NamedTemperature {
    std::string_view name;
    double kelvin;
};
/// Baths and rooms at normal pressure: "room", "ice", "dry ice", "liquid nitrogen", "boiling water" ...
const std::vector<NamedTemperature>& named_temperatures();

} // namespace pourbook
