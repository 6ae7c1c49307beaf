#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace pourbook {
namespace {

bool bare_is_si = false; // set once, before anything is read

const Dimension kelvin_dimension = base_dimension(Dimension::kelvin);

struct Usual {
    const char* unit; // fixes the dimension
    std::vector<const char*> meant;
};

/// In which units people mean a number of this dimension, likeliest first.
const std::vector<Usual>& usual_units() {
    static const std::vector<Usual> all = {{"m", {"mm", "in"}},
                                           {"K", {"C", "F", "K"}},
                                           {"kg", {"kg", "g", "lb"}},
                                           {"s", {"s", "min"}},
                                           {"m3", {"ml", "cm3"}},
                                           {"W", {"kW", "W"}},
                                           {"T", {"T", "mT"}},
                                           {"ohm.m", {"uohm.cm"}},
                                           {"S/m", {"MS/m", "%IACS"}},
                                           {"ohm", {"mohm", "uohm"}},
                                           {"m/s", {"m/s", "mm/s"}},
                                           {"V", {"mV", "V"}},
                                           {"A", {"A"}},
                                           {"USD", {"USD"}},
                                           {"USD/kg", {"USD/kg"}},
                                           {"kg/m3", {"g/cm3"}},
                                           {"J/kg", {"kJ/kg"}},
                                           {"Pa", {"MPa", "GPa"}},
                                           {"W/(m.K)", {"W/(m.K)"}}};
    return all;
}

std::string_view bare_text(std::string_view text) {
    while (text.starts_with(' ')) text.remove_prefix(1);
    while (text.ends_with(' ')) text.remove_suffix(1);
    return text;
}

Problem missing_unit(std::string_view text, const Dimension& wanted) {
    const std::string number(bare_text(text));
    for (const Usual& usual : usual_units()) {
        if (!(parse_unit(usual.unit)->dimension == wanted)) continue;
        std::string meant;
        for (std::size_t i = 0; i < usual.meant.size(); ++i)
            meant += (i == 0 ? "" : i + 1 == usual.meant.size() ? " or " : ", ") + number + usual.meant[i];
        return unreadable(number + " what? " + meant, 1);
    }
    return unreadable(number + " what? its unit is missing (a kind of " + wanted.text() + ")", 1);
}

std::string plain_name(std::string_view text) {
    std::string out(bare_text(text));
    for (char& c : out) c = c == '-' || c == '_' ? ' ' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return out;
}

/// "1 200 g" is no product of two numbers.
bool second_number(std::string_view unit) {
    double ignored = 0;
    if (!take_number(unit, ignored)) return false;
    return !unit.starts_with('/');
}

} // namespace

Result<Quantity> parse_quantity(std::string_view text) {
    std::string_view rest = text;
    while (rest.starts_with(' ')) rest.remove_prefix(1);
    const int before = static_cast<int>(text.size() - rest.size());
    const Result<double> number = take_written_number(rest);
    if (!number) return unreadable(number.problem().text, before + number.problem().column);
    std::string unit_text(rest);
    const std::size_t first = unit_text.find_first_not_of(' ');
    if (first == std::string::npos) return Quantity{*number, {}, true};
    int column = static_cast<int>(text.size() - rest.size());
    if (second_number(std::string_view(unit_text).substr(first)))
        return unreadable("two numbers in a row", column + static_cast<int>(first) + 1);
    if (unit_text[first] == '/') { // "60/s"
        unit_text.insert(first, "1");
        --column;
    }
    const Result<Unit> unit = parse_unit(unit_text);
    if (!unit) return unreadable(unit.problem().text, column + unit.problem().column);
    const double si = unit->to_si(*number);
    if (!std::isfinite(si)) return unreadable("the number is too large", before + 1);
    return Quantity{si, unit->dimension, false};
}

Result<double> parse_si(std::string_view text, const Dimension& wanted, std::string_view what) {
    static const Dimension per_second = base_dimension(Dimension::second).power(-1);
    if (wanted == kelvin_dimension)
        for (const NamedTemperature& named : named_temperatures())
            if (named.name == plain_name(text)) return named.kelvin;
    const Result<Quantity> quantity = parse_quantity(text);
    if (!quantity) return quantity.problem();
    const bool bare_serves = wanted.dimensionless() || wanted == per_second || bare_numbers_are_si();
    if (quantity->bare && !bare_serves) return missing_unit(text, wanted);
    if (wanted == kelvin_dimension && quantity->si < 0) return unreadable("nothing is colder than 0 K", 1);
    if (quantity->bare || quantity->dimension == wanted) return quantity->si;
    static const Dimension resistivity = parse_unit("ohm.m")->dimension;
    const bool electrical = wanted == resistivity || wanted == resistivity.power(-1);
    if (electrical && quantity->dimension == wanted.power(-1) && quantity->si > 0) return 1 / quantity->si;
    return unreadable(std::string(what) + " can't have the unit of '" + std::string(text) + "' (" +
                          quantity->dimension.text() + ")",
                      1);
}

Result<std::vector<double>> parse_si_list(const std::string& text, const Dimension& wanted, std::string_view what) {
    const Result<std::vector<std::string>> parts = list_parts(text, wanted.dimensionless());
    if (!parts) return parts.problem();
    std::vector<double> out;
    for (const std::string& part : *parts) {
        const Result<double> one = parse_si(part, wanted, what);
        if (!one) return one.problem();
        out.push_back(*one);
    }
    return out;
}

void read_bare_numbers_as_si(bool on) {
    bare_is_si = on;
}

bool bare_numbers_are_si() {
    return bare_is_si;
}

// Room is the 20 degC of the trade's tables (IEC 60028). Ice 273.15 K; water boils at 373.124 K (ITS-90); dry ice
// sublimes at -78.5 degC; nitrogen boils at 77.355 K, oxygen at 90.188 K, helium at 4.222 K: from memory, at 101.325
// kPa.
const std::vector<NamedTemperature>& named_temperatures() {
    static const std::vector<NamedTemperature> all = {{"room", 293.15},
                                                      {"room temperature", 293.15},
                                                      {"ice", 273.15},
                                                      {"ice water", 273.15},
                                                      {"melting ice", 273.15},
                                                      {"dry ice", 194.65},
                                                      {"liquid nitrogen", 77.355},
                                                      {"ln2", 77.355},
                                                      {"liquid oxygen", 90.188},
                                                      {"liquid helium", 4.222},
                                                      {"boiling water", 373.124}};
    return all;
}

} // namespace pourbook
