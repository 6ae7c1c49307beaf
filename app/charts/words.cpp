#include "charts/words.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"
#include "core/quantity/unit.hpp"
#include "questions/say/casting_words.hpp"
#include "questions/say/shown_money.hpp"

#include <algorithm>
#include <array>
#include <cmath>

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

/// The text before the first of these signs, without blanks at its end.
std::string up_to(const std::string& text, const char* stops) {
    const std::string part = text.substr(0, text.find_first_of(stops));
    return part.substr(0, part.find_last_not_of(' ') + 1);
}

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

std::string furnace_temperature(double kelvin, UnitSystem units) {
    const bool workshop = units == UnitSystem::workshop;
    return trimmed(std::round(workshop ? kelvin * 1.8 - 459.67 : kelvin - 273.15), 5) + (workshop ? " °F" : " °C");
}

const char* state_word(const Conditions& conditions) {
    return of_casting(conditions) ? "casting" : "handbook metal";
}

std::string state_words(const Conditions& conditions) {
    return std::string(state_word(conditions)) + "s";
}

std::string state_text(const Conditions& conditions) {
    const std::string state = of_casting(conditions)      ? casting_words(*conditions.casting)
                              : conditions.temper.empty() ? conditions.condition + " condition"
                                                          : "temper " + conditions.temper;
    std::string text = std::string(state_word(conditions)) + ", " + state;
    if (conditions.price_form != "exchange") text += ", " + conditions.price_form + " prices";
    return text;
}

std::string conditions_text(const Conditions& conditions, double to_K) {
    const std::string from = celsius_text(conditions.temperature_K);
    return (std::isnan(to_K) ? "at " + from : "the worst from " + from + " to " + celsius_text(to_K)) + ", " +
           state_text(conditions);
}

std::string rate_text(std::initializer_list<const Property*> shown) {
    for (const Property* p : shown)
        if (const std::string rate = p ? shown_rate(*p) : ""; !rate.empty()) return ", money at " + rate;
    return {};
}

namespace {

std::string author_and_year(const Reference& reference) {
    const std::string year = reference.year.empty() ? "" : " " + reference.year;
    if (reference.authors.empty()) return up_to(reference.title, ":;,(") + year;
    const std::string first_group = up_to(reference.authors, ";(");
    std::string first = up_to(first_group, ",");
    first = first.substr(0, first.find(" and "));
    if (first.find(". ") != 1) return first + year; // no initial in front: an organisation
    const std::string surname = first.substr(first.find_last_of(' ') + 1);
    return surname + (first == first_group ? "" : " et al.") + year;
}

} // namespace

std::string short_source(const Reference& reference) {
    return author_and_year(reference) + (reference.kind == "memory" ? " (remembered)" : "");
}

std::string short_source(const Catalogue& catalogue, const std::string& key) {
    const Reference* reference = catalogue.reference(key);
    return reference ? short_source(*reference) : key;
}

std::string caption_line(const Catalogue& catalogue, const Scene& scene, const std::string& date) {
    std::vector<std::string> names;
    for (const std::string& key : scene.origin.sources) {
        const std::string name = short_source(catalogue, key);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    std::string line =
        scene.title + (scene.origin.conditions.empty() ? "" : ", " + scene.origin.conditions) + ". Sources: ";
    constexpr std::size_t most = 6;
    for (std::size_t i = 0; i < std::min(most, names.size()); ++i) line += (i ? ", " : "") + names[i];
    if (names.empty()) line += "none";
    if (names.size() > most) line += " and " + std::to_string(names.size() - most) + " more";
    return line + ". Pourbook data " + scene.origin.data_version + (date.empty() ? "" : ", " + date) + ".";
}

} // namespace pourbook
