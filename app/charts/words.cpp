#include "charts/words.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"

#include <algorithm>
#include <array>

namespace pourbook {
namespace {

struct Sign {
    const char* plain;
    const char* pretty;
};
constexpr std::array signs = {Sign{"1e-6/", "10⁻⁶/"}, Sign{"uohm", "µΩ"}, Sign{"nohm", "nΩ"}, Sign{"ohm", "Ω"},
                              Sign{"degC", "°C"},     Sign{"degF", "°F"}, Sign{"^-1", "⁻¹"},  Sign{"^-2", "⁻²"},
                              Sign{"^-3", "⁻³"},      Sign{"^-4", "⁻⁴"},  Sign{"^2", "²"},    Sign{"^3", "³"},
                              Sign{"^4", "⁴"},        Sign{"m3", "m³"},   Sign{"in3", "in³"}, Sign{".", "·"}};

} // namespace

std::string pretty_unit(const std::string& unit) {
    std::string out = unit == "1" ? "" : unit;
    for (const Sign& sign : signs)
        for (std::size_t at = 0; (at = out.find(sign.plain, at)) != std::string::npos;
             at += std::string(sign.pretty).size())
            out.replace(at, std::string(sign.plain).size(), sign.pretty);
    return out;
}

std::string pretty_number(const std::string& number) {
    static constexpr std::array raised = {"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"};
    const std::size_t e = number.find('e');
    if (e == std::string::npos || e == 0 || e + 2 >= number.size() ||
        number.find_first_not_of("0123456789", e + 2) != std::string::npos)
        return number;
    std::string out = number.substr(0, e) + "·10" + (number[e + 1] == '-' ? "⁻" : "");
    for (const char c : number.substr(std::min(number.find_first_not_of("0", e + 2), number.size() - 1)))
        out += raised[static_cast<std::size_t>(c - '0')];
    return out;
}

std::string shown_label(const Property& property, UnitSystem system) {
    const std::string& unit_text = system == UnitSystem::workshop ? property.workshop_unit : property.shown_unit;
    const Result<Unit> unit = parse_unit(unit_text);
    const bool reciprocal = unit && !property.is_text && !(unit->dimension == property.dimension);
    return reciprocal ? property.label + ", as conductivity" : property.label;
}

std::string label_with_unit(const Property& property, UnitSystem system) {
    const std::string unit = shown_unit(property, system);
    return shown_label(property, system) + (unit.empty() ? "" : ", " + unit);
}

std::string temperature_text(double kelvin) {
    constexpr double ice_point_K = 273.15;
    const auto plain = [](double t) {
        std::string text = significant(t, 8);
        text = text.substr(0, text.find('.') == std::string::npos ? text.size() : text.find('.') + 3);
        while (text.find('.') != std::string::npos && (text.back() == '0' || text.back() == '.')) text.pop_back();
        return text;
    };
    return plain(kelvin) + " K (" + plain(kelvin - ice_point_K) + " °C)";
}

} // namespace pourbook
