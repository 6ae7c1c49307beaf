#include "charts/shown.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace pourbook {
namespace {

const std::string& plain_unit(const Property& property, Units units) {
    return units == Units::workshop && !property.workshop_unit.empty() ? property.workshop_unit : property.shown_unit;
}

/// The dictionary is checked when it is compiled; a unit that can't be read leaves the SI value as it is.
Unit unit_for(const Property& property, Units units) {
    const Result<Unit> unit = parse_unit(plain_unit(property, units));
    return unit ? *unit : Unit{};
}

bool reciprocal(const Property& property, const Unit& unit) {
    return !(unit.dimension == property.dimension) && unit.dimension == Dimension{} / property.dimension;
}

/// One spelling and how it is shown; longer spellings first.
struct Sign {
    const char* plain;
    const char* pretty;
};
constexpr std::array signs = {Sign{"%IACS", "% IACS"}, Sign{"1e-6/", "10⁻⁶/"}, Sign{"uohm", "µΩ"}, Sign{"nohm", "nΩ"}, Sign{"ohm", "Ω"},
                              Sign{"degC", "°C"},      Sign{"degF", "°F"},     Sign{"^-1", "⁻¹"},  Sign{"^-2", "⁻²"},  Sign{"^-3", "⁻³"},
                              Sign{"^-4", "⁻⁴"},       Sign{"^2", "²"},        Sign{"^3", "³"},    Sign{"^4", "⁴"},    Sign{"m3", "m³"},
                              Sign{"in3", "in³"}};

std::string fixed(double value, int decimals) {
    char buffer[64];
    const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals);
    return error == std::errc{} ? std::string(buffer, end) : "?";
}

/// The uncertainty to two figures, but no finer than the value beside it.
std::string beside(double uncertainty, const std::string& value) {
    if (value.find('e') != std::string::npos) return significant(uncertainty, 2);
    const std::size_t point = value.find('.');
    const int decimals = point == std::string::npos ? 0 : static_cast<int>(value.size() - point - 1);
    const std::string text = fixed(uncertainty, decimals);
    return text.find_first_of("123456789") == std::string::npos ? significant(uncertainty, 2) : text;
}

/// "-3.2" -> "−3.2" and "1.2e-07" -> "1.2·10⁻⁷".
std::string as_print(const std::string& number) {
    const std::size_t e = number.find('e');
    std::string out = e == std::string::npos ? number : number.substr(0, e) + "·10";
    if (!out.empty() && out.front() == '-') out = "−" + out.substr(1);
    if (e == std::string::npos) return out;
    static constexpr const char* digits[] = {"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"};
    const int power = std::atoi(number.c_str() + e + 1);
    if (power < 0) out += "⁻";
    for (const char c : std::to_string(std::abs(power))) out += digits[c - '0'];
    return out;
}

} // namespace

std::string Shown::text() const {
    return unit.empty() ? value : value + " " + unit;
}

std::string Shown::full_text() const {
    const std::string number = plus_minus.empty() ? value : value + " ± " + plus_minus;
    return unit.empty() ? number : number + " " + unit;
}

std::string pretty_unit(const std::string& unit) {
    std::string out = unit == "1" ? "" : unit;
    for (const Sign& sign : signs)
        for (std::size_t at = 0; (at = out.find(sign.plain, at)) != std::string::npos; at += std::string(sign.pretty).size())
            out.replace(at, std::string(sign.plain).size(), sign.pretty);
    for (std::size_t at = 0; (at = out.find('.', at)) != std::string::npos; at += 2) out.replace(at, 1, "·");
    return out;
}

std::string unit_of(const Property& property, Units units) {
    return pretty_unit(plain_unit(property, units));
}

std::string label_of(const Property& property, Units units) {
    if (property.is_text || !reciprocal(property, unit_for(property, units))) return property.label;
    return property.label + ", as conductivity";
}

double in_shown_unit(const Property& property, double si, Units units) {
    const Unit unit = unit_for(property, units);
    return unit.from_si(reciprocal(property, unit) ? 1 / si : si);
}

Shown shown(const Property& property, double si, double standard_uncertainty_si, Units units) {
    const Unit unit = unit_for(property, units);
    const double value = in_shown_unit(property, si, units);
    const double share = standard_uncertainty_si / std::abs(si);
    const double uncertainty = reciprocal(property, unit) ? share * std::abs(value) : standard_uncertainty_si / unit.scale;
    const std::string number = rounded_to(value, uncertainty);
    const bool has_uncertainty = uncertainty > 0 && std::isfinite(uncertainty);
    return {as_print(number), has_uncertainty ? as_print(beside(uncertainty, number)) : "", unit_of(property, units)};
}

Shown shown(const Property& property, const Evaluated& value, Units units) {
    if (property.is_text) return {value.text, "", ""};
    return shown(property, value.value_si, value.standard_uncertainty_si, units);
}

std::string temperature_text(double kelvin) {
    constexpr double ice_point_K = 273.15;
    const auto plain = [](double t) { return as_print(fixed(t, std::abs(t - std::round(t)) < 0.05 ? 0 : 1)); };
    return plain(kelvin) + " K (" + plain(kelvin - ice_point_K) + " °C)";
}

} // namespace pourbook
