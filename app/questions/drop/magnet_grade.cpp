#include "questions/drop/magnet_grade.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/temperature_text.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace pourbook {
namespace {

using eddy::Uncertain;

const char* const neodymium = "sintered NdFeB";
const char* const samarium = "sintered SmCo";
constexpr double reference_K = 293.15;     // of the tables
constexpr double least_neodymium_T = 1.08; // ASTM A1101-16, overall range 1.08 to 1.5 T
constexpr double perhaps_ferrite_T = 0.6;
constexpr double deep_cold_low = 0.95, deep_cold_high = 1.15; // of the remanence at 20 degC; own judgement
constexpr double cold_share = 0.9, cold_doubt = 0.2;          // of the coefficient's change below 20 degC
constexpr double warm_K = 333.15, flat = 0.5; // above this temperature, demagnetising factor of a magnet at risk

/// The range over all figures of a quantity, its middle as value; value 0 if none is cited.
Uncertain range_of(const Catalogue& c, const std::string& subject, const std::string& quantity, DropSetup& setup) {
    double low = INFINITY, high = -INFINITY;
    for (const MagnetFigure& f : c.magnet_figures) {
        if (f.subject != subject || f.quantity != quantity) continue;
        low = std::min(low, std::isnan(f.low_si) ? f.value_si : f.low_si);
        high = std::max(high, std::isnan(f.high_si) ? f.value_si : f.high_si);
        std::string name = quantity;
        std::replace(name.begin(), name.end(), '_', ' ');
        setup.sources.push_back(
            {name + " of " + subject + ": " + f.printed + (f.unit == "1" ? "" : " " + f.unit), f.citation});
    }
    if (!(low <= high)) return {};
    return {(low + high) / 2, (high - low) / 2, true};
}

std::string upper(std::string text) {
    for (char& ch : text) ch = static_cast<char>(std::toupper(static_cast<unsigned char>(ch)));
    return text;
}

/// The row whose name is the word, or its front up to the last digit.
const MagnetFigure* grade_row(const Catalogue& c, const std::string& word) {
    const std::string whole = upper(word), front = whole.substr(0, whole.find_last_of("0123456789") + 1);
    for (const std::string& name : {whole, front})
        for (const MagnetFigure& f : c.magnet_figures)
            if (f.quantity == "remanence" && upper(f.subject) == name && !name.empty()) return &f;
    return nullptr;
}

/// Below the temperature where the easy axis becomes a cone: a wide range instead of a value.
DropSetup in_deep_cold(DropSetup setup, const std::string& material, double coldest_K) {
    Uncertain& br = setup.inputs.remanence_T;
    br = {br.value * (deep_cold_low + deep_cold_high) / 2, br.value * (deep_cold_high - deep_cold_low) / 2 + br.spread,
          true};
    setup.assumptions.push_back("below " + celsius_text(coldest_K) + " " + material +
                                " loses its simple axis: its remanence is taken as 0.95 to 1.15 of that at 20 degC "
                                "(assumed, wide; no figure is cited)");
    return setup;
}

/// Carries the remanence from 20 degC to the magnet's temperature.
Result<DropSetup> at_temperature(DropSetup setup, const Catalogue& c, const std::string& material, bool plain) {
    const double t = setup.magnet_temperature_K, warmer = t - reference_K;
    if (std::abs(warmer) < 0.01) return setup;
    const Uncertain coldest = range_of(c, material, "lowest_temperature", setup),
                    hottest = range_of(c, material, "highest_temperature", setup);
    const std::string where = "magnet at " + celsius_text(t) + ": ";
    if (coldest.value > 0 && t < coldest.value) return in_deep_cold(std::move(setup), material, coldest.value);
    if (plain && hottest.value > 0 && t > hottest.value)
        return Problem{Problem::Kind::out_of_range,
                       where + "above the highest working temperature, " + celsius_text(hottest.value) +
                           ", it loses magnetisation for good",
                       0};
    const Uncertain slope = range_of(c, material, "temperature_coefficient", setup);
    if (slope.value == 0) return no_value(where + "no temperature coefficient is cited for " + material);
    Uncertain& br = setup.inputs.remanence_T;
    // Cited for 20 to 100 degC. Below, cold magnets gain less than that: +12 to 13 % at 150 K (from memory, not seen).
    const double change = slope.value * warmer * (warmer < 0 ? cold_share : 1),
                 open = std::abs(warmer) * slope.spread + (warmer < 0 ? cold_doubt * std::abs(change) : 0);
    br.spread = br.spread * (1 + change) + br.value * open;
    br.value *= 1 + change;
    setup.assumptions.push_back("remanence carried from 20 degC by " + significant(100 * slope.value, 2) + " %/K" +
                                (warmer < 0 ? ", nine tenths of it below 20 degC, to a fifth (assumed)" : ""));
    if (t > warm_K && eddy::demagnetising_factor(setup.inputs.magnet()) > flat)
        setup.cautions.push_back("so flat a magnet stands far down its own demagnetising curve: at " + celsius_text(t) +
                                 " it may lose magnetisation for good, although a compact one of the "
                                 "same grade would not");
    return setup;
}

} // namespace

Result<DropSetup> with_grade(DropSetup setup, const Catalogue& c, const std::string& grade) {
    const MagnetFigure* row = grade_row(c, grade);
    if (!row) {
        std::string text = "unknown magnet grade '" + grade + "': one of";
        for (const std::string& name : magnet_grades(c)) text += " " + name;
        return Problem{Problem::Kind::unknown, text + ", or give --br", 0};
    }
    setup.grade = row->subject;
    setup.inputs.remanence_T = range_of(c, row->subject, "remanence", setup);
    setup.inputs.density_kg_m3 = range_of(c, row->material, "density", setup);
    const Uncertain recoil = range_of(c, row->material, "recoil_permeability", setup);
    if (recoil.value > 0) setup.inputs.recoil_permeability = recoil.value;
    return at_temperature(std::move(setup), c, row->material, upper(grade) == upper(row->subject));
}

Result<DropSetup> with_own_remanence(DropSetup setup, const Catalogue& c) {
    const double br = setup.inputs.remanence_T.value;
    if (br >= perhaps_ferrite_T) {
        Uncertain density = range_of(c, neodymium, "density", setup);
        density = {7500, std::max(std::abs(density.value - 7500) + density.spread, 0.0), true};
        if (br < least_neodymium_T) {
            const Uncertain other = range_of(c, samarium, "density", setup);
            density.spread = std::max(density.spread, other.value + other.spread - density.value);
            setup.assumptions.push_back(
                "a remanence below 1.08 T may mean samarium-cobalt, which is a tenth heavier: weigh the magnet");
        }
        setup.inputs.density_kg_m3 = density;
    }
    if (std::abs(setup.magnet_temperature_K - reference_K) > 0.01 && br < perhaps_ferrite_T)
        return no_value("no temperature coefficient is known for a magnet of " + significant(br, 3) +
                        " T: give --br at that temperature and leave out --magnet-at");
    return at_temperature(std::move(setup), c, neodymium, false);
}

std::vector<std::string> magnet_grades(const Catalogue& c) {
    std::vector<std::string> out;
    for (const MagnetFigure& f : c.magnet_figures)
        if (f.quantity == "remanence" && std::find(out.begin(), out.end(), f.subject) == out.end())
            out.push_back(f.subject);
    return out;
}

} // namespace pourbook
