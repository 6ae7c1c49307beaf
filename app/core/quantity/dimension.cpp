#include "core/quantity/dimension.hpp"

#include <cmath>
#include <cstdio>

namespace pourbook {

Dimension Dimension::operator*(const Dimension& other) const {
    Dimension product = *this;
    for (std::size_t i = 0; i < count; ++i) product.exponent[i] += other.exponent[i];
    return product;
}

Dimension Dimension::operator/(const Dimension& other) const {
    return *this * other.power(-1);
}

Dimension Dimension::power(double p) const {
    Dimension result = *this;
    for (double& e : result.exponent) e *= p;
    return result;
}

bool Dimension::operator==(const Dimension& other) const {
    for (std::size_t i = 0; i < count; ++i)
        if (std::abs(exponent[i] - other.exponent[i]) > 1e-9) return false;
    return true;
}

std::string Dimension::text() const {
    static constexpr std::array<const char*, count> symbols = {"m", "kg", "s", "A", "K", "mol", "USD"};
    std::string out;
    for (std::size_t i = 0; i < count; ++i) {
        if (std::abs(exponent[i]) < 1e-9) continue;
        if (!out.empty()) out += ' ';
        out += symbols[i];
        if (std::abs(exponent[i] - 1) > 1e-9) {
            char digits[32];
            std::snprintf(digits, sizeof digits, "^%g", exponent[i]);
            out += digits;
        }
    }
    return out.empty() ? "1" : out;
}

Dimension base_dimension(Dimension::Base base) {
    Dimension d;
    d.exponent[base] = 1;
    return d;
}

} // namespace pourbook
