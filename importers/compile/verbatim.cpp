#include "importers/compile/verbatim.hpp"

#include "importers/compile/fields.hpp"
#include "importers/compile/figure.hpp"

#include <algorithm>
#include <cmath>

namespace pourbook {
namespace {

struct Printed {
    double si;
    double half_digit_si;
};

/// "1.678" or a fraction of an inch, "7/32"; false if text does not begin with a number.
bool take_figure(std::string_view& text, double& number, double& half_digit) {
    const std::string_view before = text;
    if (!take_number(text, number)) return false;
    half_digit = half_of_last_digit(std::string(before.substr(0, before.size() - text.size())));
    double below = 0;
    if (!text.starts_with('/')) return true;
    text.remove_prefix(1);
    if (!take_number(text, below) || !(below > 0)) return false;
    number /= below;
    half_digit = 0;
    return true;
}

bool take_word(std::string_view& text, std::string_view word) {
    if (!text.starts_with(word)) return false;
    text.remove_prefix(word.size());
    return true;
}

/// Numbers in front ("1400 to 1450", "13.8, 15.0"); the rest is the unit.
std::vector<Printed> take_figures(std::string_view& text) {
    std::vector<Printed> out;
    for (const char* sign : {"about ", "~", "<= ", ">= "}) take_word(text, sign);
    do {
        Printed p{};
        if (!take_figure(text, p.si, p.half_digit_si)) return {};
        out.push_back(p);
    } while (take_word(text, " to ") || take_word(text, ", "));
    if (text.starts_with(' ')) text.remove_prefix(1);
    return out;
}

/// The printed figure that x was converted from: it lies within the rounding of x.
const Printed* origin(const std::vector<Printed>& all, double x, double rounding) {
    const auto at = std::find_if(all.begin(), all.end(), [&](const Printed& p) {
        return std::abs(p.si - x) <= rounding * 1.001 + 1e-9 * std::abs(x);
    });
    return at == all.end() ? nullptr : &*at;
}

} // namespace

std::string check_verbatim(Record& record, const Unit& unit, const std::string& printed, double molar_mass_kg_mol) {
    std::string_view rest = printed;
    std::vector<Printed> figures = take_figures(rest);
    if (figures.empty()) return "'" + printed + "' does not begin with a figure";
    const Result<Unit> stated = parse_unit(rest);
    if (!stated) return "'" + std::string(rest) + "': " + stated.problem().text;
    Dimension wanted = unit.dimension;
    if (molar_mass_kg_mol > 0)
        wanted = unit.dimension * base_dimension(Dimension::kilogram) / base_dimension(Dimension::mole);
    if (!(stated->dimension == wanted)) return "'" + std::string(rest) + "' is no unit of " + record.property;
    const double per_kg = molar_mass_kg_mol > 0 ? 1 / molar_mass_kg_mol : 1;
    for (Printed& p : figures) p = {stated->to_si(p.si) * per_kg, p.half_digit_si * stated->scale * per_kg};
    for (Point& p : record.points)
        for (const double x : {p.value_si, p.low_si, p.high_si}) {
            const bool middle = x == p.value_si && !std::isnan(p.low_si);
            if (std::isnan(x) || middle) continue;
            const Printed* from = origin(figures, x, p.half_digit_si);
            if (!from) return "'" + printed + "' is not " + p.printed + " " + record.unit;
            p.half_digit_si = std::max(p.half_digit_si, from->half_digit_si);
        }
    return {};
}

} // namespace pourbook
