#include "core/quantity/number_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

namespace pourbook {
namespace {

bool is_figure(char c) {
    return c >= '0' && c <= '9';
}

/// What the text says before it is a number: sign, figures as a whole number, power of ten.
struct Decimal {
    bool negative = false;
    std::uint64_t figures = 0;
    int digits = 0; // that `figures` holds, without leading zeros
    long power = 0;
    bool any = false;       // a nonzero figure
    std::size_t length = 0; // of the text; 0: no number
};

/// Moves `at` past the figures and notes them.
std::size_t take_figures(std::string_view text, std::size_t& at, Decimal& out, bool after_point) {
    constexpr int most_digits = 19; // that an uint64 holds
    const std::size_t from = at;
    for (; at < text.size() && is_figure(text[at]); ++at) {
        if (out.digits < most_digits) out.figures = 10 * out.figures + static_cast<std::uint64_t>(text[at] - '0');
        out.any = out.any || text[at] != '0';
        if (out.any) ++out.digits;
        if (after_point) --out.power;
    }
    return at - from;
}

Decimal read_decimal(std::string_view text) {
    Decimal out;
    std::size_t at = text.starts_with('-') ? 1 : 0;
    out.negative = at == 1;
    std::size_t figures = take_figures(text, at, out, false);
    if (at < text.size() && text[at] == '.' && (figures > 0 || (at + 1 < text.size() && is_figure(text[at + 1])))) {
        ++at;
        figures += take_figures(text, at, out, true);
    }
    if (figures == 0) return {};
    out.length = at;
    if (at == text.size() || (text[at] != 'e' && text[at] != 'E')) return out;
    ++at;
    const bool down = at < text.size() && text[at] == '-';
    if (at < text.size() && (text[at] == '-' || text[at] == '+')) ++at;
    if (at == text.size() || !is_figure(text[at])) return out; // "1 eV": the letter is a unit's
    constexpr long far = 100000;                               // beyond every double, whatever the figures
    long power = 0;
    for (; at < text.size() && is_figure(text[at]); ++at) power = std::min(far, 10 * power + (text[at] - '0'));
    out.power += down ? -power : power;
    out.length = at;
    return out;
}

/// Exact where figures and power of ten are doubles themselves: one rounding (Clinger, How to read floating point
/// numbers accurately, PLDI 1990). False elsewhere.
bool quick_value(const Decimal& d, double& number) {
    constexpr std::array<double, 23> tens = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                                             1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
    constexpr std::uint64_t whole_doubles = std::uint64_t{1} << 53;
    if (d.digits > 19 || d.figures > whole_doubles || std::abs(d.power) > 22) return false;
    const double figures = static_cast<double>(d.figures);
    number = d.power < 0 ? figures / tens[static_cast<std::size_t>(-d.power)]
                         : figures * tens[static_cast<std::size_t>(d.power)];
    return true;
}

std::string printed(const char* form, int decimals, double value) {
    std::array<char, 400> few;
    const int length = std::snprintf(few.data(), few.size(), form, decimals, value);
    if (length < 0) return "?";
    if (static_cast<std::size_t>(length) < few.size()) return {few.data(), static_cast<std::size_t>(length)};
    std::string many(static_cast<std::size_t>(length) + 1, '\0');
    std::snprintf(many.data(), many.size(), form, decimals, value);
    many.pop_back();
    return many;
}

/// "1.500e+01" to "1.5e+01", "1.000e+01" to "1e+01"
std::string without_end_zeros(const std::string& scientific) {
    const std::size_t e = scientific.find('e');
    std::size_t end = scientific.find_last_not_of('0', e - 1) + 1;
    if (scientific[end - 1] == '.') --end;
    return scientific.substr(0, end) + scientific.substr(e);
}

} // namespace

bool take_decimal(std::string_view& text, double& number) {
    const Decimal d = read_decimal(text);
    if (d.length == 0) return false;
    double value = 0;
    if (!quick_value(d, value)) {
        const std::string own(text.substr(d.negative ? 1 : 0, d.length - (d.negative ? 1 : 0)));
        value = std::strtod(own.c_str(), nullptr);
    }
    if (!std::isfinite(value) || (value == 0 && d.any)) return false;
    number = d.negative ? -value : value;
    text.remove_prefix(d.length);
    return true;
}

std::string fixed_digits(double value, int decimals) {
    return printed("%.*f", decimals, value);
}

std::string scientific_digits(double value, int decimals) {
    return printed("%.*e", decimals, value);
}

std::string shortest_digits(double value) {
    if (!std::isfinite(value)) return std::isnan(value) ? "nan" : value > 0 ? "inf" : "-inf";
    std::string scientific;
    for (int digits = 15; digits <= 17; ++digits) { // 15 figures always come back from a double, 17 always suffice
        scientific = scientific_digits(value, digits - 1);
        if (std::strtod(scientific.c_str(), nullptr) == value) break;
    }
    scientific = without_end_zeros(scientific);
    const std::size_t e = scientific.find('e'), point = scientific.find('.');
    const int power = std::atoi(scientific.c_str() + e + 1);
    const int behind = point == std::string::npos ? 0 : static_cast<int>(e - point) - 1;
    const std::string fixed = fixed_digits(value, std::max(0, behind - power));
    return fixed.size() <= scientific.size() ? fixed : scientific;
}

} // namespace pourbook
