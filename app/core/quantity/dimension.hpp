// Physical dimension: exponents of metre, kilogram, second, ampere, kelvin, mole and money.
// Exponents are real numbers because formulas may take roots; equality is to 1e-9.
#pragma once

#include <array>
#include <string>

namespace pourbook {

struct Dimension {
    enum Base { metre, kilogram, second, ampere, kelvin, mole, money, count };
    std::array<double, count> exponent{};

    Dimension operator*(const Dimension& other) const;
    Dimension operator/(const Dimension& other) const;
    Dimension power(double p) const;
    bool operator==(const Dimension& other) const;
    bool dimensionless() const { return *this == Dimension{}; }

    /// In SI base units, for example "kg^-1 m^-2"; "1" without a dimension. Money is written USD.
    std::string text() const;
};

Dimension base_dimension(Dimension::Base base);

} // namespace pourbook
