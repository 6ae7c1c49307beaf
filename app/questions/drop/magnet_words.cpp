#include "questions/drop/magnet_words.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "core/quantity/written_number.hpp"
#include "questions/drop/magnet_grade.hpp"
#include "questions/drop/meter_words.hpp"
#include "questions/drop/motion_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace pourbook {
namespace {

using eddy::Shape;
using eddy::Uncertain;

constexpr double tape_m = 0.5e-3;
constexpr double remanence_doubt = 0.01;
constexpr double mass_doubt = 0.005;
constexpr double usual_recoil = 1.05;
constexpr double recoil_doubt = 0.25; // of the recoil permeability's effect on the moment

const Dimension metre = base_dimension(Dimension::metre);
const Dimension kilogram = base_dimension(Dimension::kilogram);

std::vector<std::string> split(const std::string& text, const std::string& sign) {
    std::vector<std::string> out;
    std::size_t from = 0;
    for (std::size_t at; (at = text.find(sign, from)) != std::string::npos; from = at + sign.size())
        out.push_back(text.substr(from, at - from));
    out.push_back(text.substr(from));
    return out;
}

/// Lengths behind the shape's name; `sign` parts them.
Result<std::vector<Uncertain>> lengths(const std::vector<std::string>& written, const std::string& sign,
                                       const std::string& option, double assumed) {
    const auto pieces =
        bare_numbers_are_si() ? Result<std::vector<std::string>>(written) : with_shared_unit(written, sign);
    if (!pieces) return unreadable(option + ": " + pieces.problem().text);
    std::vector<Uncertain> out;
    for (const std::string& piece : *pieces) {
        Result<Uncertain> length = uncertain_from(piece, metre, option);
        if (!length) return length.problem();
        if (!(length->value > 0)) return unreadable(option + ": '" + piece + "' is no length above zero");
        if (length->spread == 0) *length = {length->value, assumed, true};
        out.push_back(*length);
    }
    return out;
}

Uncertain half(Uncertain diameter) {
    diameter.value /= 2;
    diameter.spread /= 2;
    return diameter;
}

/// "2 x " before a magnet, "opposed gap 5mm" behind it; `text` is left with the magnet alone.
Result<eddy::Stack> stack_from(std::string& text, const std::string& option) {
    eddy::Stack stack;
    std::string_view rest = text;
    double pieces = 1;
    if (take_number(rest, pieces)) {
        rest.remove_prefix(std::min(rest.find_first_not_of(' '), rest.size()));
        if (!rest.starts_with("x ") || pieces != std::floor(pieces) || !(pieces >= 1 && pieces <= 20))
            return unreadable(option +
                              ": a stack is written as '2 x cylinder:12mmx10mm opposed gap 5mm', 1 to 20 magnets");
        stack.pieces = static_cast<int>(pieces);
        text = std::string(rest.substr(2));
    }
    if (const std::size_t at = text.find(" gap "); at != std::string::npos) {
        const Result<double> gap = parse_si(text.substr(at + 5), metre, option);
        if (!gap || !(*gap >= 0)) return unreadable(option + ": a gap such as 'gap 5mm' is expected at the end");
        stack.gap_m = *gap;
        text.resize(at);
    }
    for (const char* word : {" parallel", " opposed", " alternating"})
        if (text.ends_with(word)) {
            stack.alternating = std::string_view(word) != " parallel";
            text.resize(text.size() - std::string_view(word).size());
            break;
        }
    if (stack.pieces == 1 && (stack.gap_m > 0 || stack.alternating))
        return unreadable(option + ": gaps and opposed magnets need more than one: '2 x ...'");
    return stack;
}

Result<DropSetup> with_magnet(DropSetup setup, const std::string& words) {
    const std::string option = "--magnet '" + words + "'";
    std::string text = words;
    const Result<eddy::Stack> stack = stack_from(text, option);
    if (!stack) return stack.problem();
    setup.inputs.stack = *stack;
    if (stack->alternating)
        setup.cautions.push_back("opposed magnets spring apart and turn: glue each to a rod or into a sleeve before "
                                 "letting go, fingers clear");
    const std::size_t colon = text.find(':');
    const std::string name = text.substr(0, colon);
    const std::string rest = colon == std::string::npos ? "" : text.substr(colon + 1);
    auto pieces = split(rest, rest.find("×") == std::string::npos ? "x" : "×");
    constexpr std::array names = {"sphere", "cylinder", "ring", "cube"}; // as Shape has them
    constexpr std::array<std::size_t, 4> sizes_of = {1, 2, 3, 1};
    const auto shape = static_cast<std::size_t>(std::find(names.begin(), names.end(), name) - names.begin());
    if (shape == names.size() || pieces.size() != sizes_of[shape])
        return unreadable(option + ": sphere:D, cylinder:DxL, ring:ODxIDxL or cube:SIDE is expected, such as "
                                   "cylinder:12mmx10mm");
    const auto sizes = lengths(pieces, "x", option, caliper_m);
    if (!sizes) return sizes.problem();
    eddy::DropInputs& i = setup.inputs;
    i.shape = static_cast<Shape>(shape);
    i.outer_radius_m = half((*sizes)[0]);
    i.length_m = sizes->back();
    if (i.shape == Shape::ring) i.inner_radius_m = half((*sizes)[1]);
    if (i.shape == Shape::cube) { // half the diagonal of a face
        i.outer_radius_m.value *= std::numbers::sqrt2;
        i.outer_radius_m.spread *= std::numbers::sqrt2;
    }
    return setup;
}

Result<DropSetup> with_tube(DropSetup setup, const std::string& text) {
    const std::string option = "--tube '" + text + "'";
    const auto pieces = split(text, ":");
    if (pieces.size() != 3) return unreadable(option + ": ID:OD:LENGTH is expected, such as 13mm:15mm:1m");
    const auto sizes = lengths(pieces, ":", option, caliper_m);
    if (!sizes) return sizes.problem();
    setup.inputs.bore_radius_m = half((*sizes)[0]);
    setup.inputs.outside_radius_m = half((*sizes)[1]);
    setup.inputs.tube_length_m = (*sizes)[2];
    if (pieces[2].find("+-") == std::string::npos && pieces[2].find("±") == std::string::npos)
        setup.inputs.tube_length_m.spread = tape_m;
    return setup;
}

/// Slits and off-axis travel; the drag they leave is worked out with the model.
Result<DropSetup> with_path(DropSetup setup, const SetupWords& words) {
    if (!words.slits.empty()) {
        const Result<double> slits = parse_si(words.slits, {}, "--slits");
        if (!slits || *slits != std::floor(*slits) || !(*slits >= 0 && *slits <= 100))
            return unreadable("--slits '" + words.slits + "': a whole number from 0 to 100 is expected");
        setup.inputs.slits.count = static_cast<int>(*slits);
    }
    if (words.off_axis.empty()) return setup;
    const Result<double> off = parse_si(words.off_axis, metre, "--off-axis");
    if (!off) return unreadable("--off-axis '" + words.off_axis + "': " + off.problem().text);
    if (*off < 0)
        return unreadable("--off-axis '" + words.off_axis + "': a distance from the axis such as 0.5mm is expected");
    setup.inputs.off_axis_m = *off;
    return setup;
}

/// What a person should see before trusting the drop.
DropSetup with_cautions(DropSetup setup) {
    const eddy::DropInputs& i = setup.inputs;
    if (const double wide = eddy::chance_too_wide(i); wide > 0)
        setup.cautions.push_back("within the sizes' tolerances the magnet does not fit the bore with a chance of " +
                                 significant(100 * wide, 2) + " %: try it, or measure more closely");
    const double across = std::hypot(2 * i.outer_radius_m.value, i.magnet().whole_length_m());
    if (i.shape != Shape::sphere && across < 2 * i.bore_radius_m.value)
        setup.cautions.push_back(
            "this magnet can turn over: its diagonal, " + trimmed(across * 1000, 3) +
            " mm, passes through the bore. On edge it brakes otherwise and the time given does not "
            "hold: take a longer one, or film it");
    return setup;
}

Result<double> plain_number(const std::string& text, const std::string& option, double low, double high) {
    const Result<double> number = parse_si(text, {}, option);
    if (!number || !(*number >= low && *number <= high))
        return unreadable(option + " '" + text + "': a number from " + trimmed(low, 3) + " to " + trimmed(high, 3) +
                          " is expected");
    return *number;
}

/// A remanence in tesla (or a magnetisation in A/m).
Result<Uncertain> remanence_from(const std::string& text, const std::string& option) {
    static const Dimension tesla = parse_unit("T")->dimension, magnetisation = parse_unit("A/m")->dimension;
    if (auto pull = pull_fault(text, option)) return *pull;
    const Result<Quantity> q = parse_quantity(text.substr(0, text.find("+-")));
    const bool amperes = q && q->dimension == magnetisation;
    Result<Uncertain> br = uncertain_from(text, amperes ? magnetisation : tesla, option);
    if (!br) return br;
    if (amperes) *br = {br->value * eddy::vacuum_permeability, br->spread * eddy::vacuum_permeability, br->limits};
    if (!(br->value > 0 && br->value <= 2.5))
        return unreadable(option + " '" + text + "': a magnet has between 0 and 2.5 T");
    return br;
}

/// As measure has it: reading, place of the sensor and the meter's scale in one standard uncertainty.
Result<DropSetup> with_surface_field(DropSetup setup, const std::string& words) {
    const std::string text = words.find('@') == std::string::npos ? words + "@0mm" : words;
    const Result<eddy::FieldReading> reading = field_reading(text, "--surface-field");
    if (!reading) return reading.problem();
    if (!(eddy::axial_field_over_remanence(setup.inputs.magnet(), reading->distance_m) > 0))
        return Problem{
            Problem::Kind::refused,
            "--surface-field: this ring's field on the axis is not opposed to its poles there: measure further out", 0};
    const Result<eddy::FieldFit> fit = eddy::fitted_remanence(setup.inputs.magnet(), {*reading});
    if (!fit) return fit.problem();
    if (!(fit->remanence_T > 0 && fit->remanence_T <= 2.5))
        return unreadable("--surface-field '" + words + "': a magnet has between 0 and 2.5 T");
    setup.inputs.remanence_T = {fit->remanence_T,
                                std::hypot(fit->standard_uncertainty_T, meter_doubt * fit->remanence_T), false};
    setup.assumptions.push_back("field read to " +
                                significant(100 * setup.inputs.remanence_T.spread / fit->remanence_T, 2) +
                                " % (standard uncertainty): the meter's scale to 2 %, its sensor's place as stated or "
                                "to 0.2 mm (assumed): measure takes several readings");
    return setup;
}

Result<DropSetup> with_strength(DropSetup setup, const Catalogue& catalogue, const SetupWords& words) {
    const int given = !words.grade.empty() + !words.br.empty() + !words.surface_field.empty();
    if (given != 1)
        return unreadable("the magnet's strength is needed once: --grade N42, --br 1.3T or --surface-field 0.45T@1mm");
    if (!words.grade.empty()) return with_grade(std::move(setup), catalogue, words.grade);
    if (!words.surface_field.empty()) {
        Result<DropSetup> measured = with_surface_field(std::move(setup), words.surface_field);
        if (!measured) return measured;
        return with_own_remanence(std::move(*measured), catalogue);
    }
    const Result<Uncertain> br = remanence_from(words.br, "--br");
    if (!br) return br.problem();
    setup.inputs.remanence_T = *br;
    if (br->spread == 0) {
        setup.inputs.remanence_T.spread = remanence_doubt * br->value;
        setup.assumptions.push_back("remanence given without a tolerance: 1 % assumed");
    }
    return with_own_remanence(std::move(setup), catalogue);
}

Result<DropSetup> with_recoil(DropSetup setup, const std::string& text) {
    eddy::DropInputs& i = setup.inputs;
    const double share = eddy::demagnetising_factor(i.magnet());
    if (!text.empty()) {
        const Result<double> recoil = plain_number(text, "--recoil-permeability", 1, 2);
        if (!recoil) return recoil.problem();
        i.recoil_permeability = *recoil;
    } else if (setup.grade.empty()) {
        setup.recoil_effect = share * (usual_recoil - 1);
        i.moment_doubt = {1, setup.recoil_effect / std::sqrt(3.0), false};
        setup.assumptions.push_back(
            "recoil permeability taken as 1; 1.05 (usual for sintered magnets) would lower the moment by " +
            significant(100 * setup.recoil_effect, 2) + " % and is in the interval");
        return setup;
    }
    // First order in mu_r - 1: what the uneven magnetisation leaves open was measured against finite elements
    // (tests/eddy).
    if (i.recoil_permeability != 1) i.moment_doubt = {1, recoil_doubt * share * (i.recoil_permeability - 1), false};
    return setup;
}

Result<DropSetup> with_mass(DropSetup setup, const std::string& text) {
    if (!text.empty()) {
        Result<Uncertain> mass = uncertain_from(text, kilogram, "--magnet-mass");
        if (!mass) return mass.problem();
        if (!(mass->value > 0)) return unreadable("--magnet-mass '" + text + "': a mass above zero is expected");
        if (mass->spread == 0) mass->spread = mass_doubt * mass->value;
        setup.inputs.mass_kg = *mass;
        return setup;
    }
    if (!(setup.inputs.density_kg_m3.value > 0))
        return unreadable("--magnet-mass is needed: a magnet of this remanence may be ferrite, alnico or "
                          "samarium-cobalt, whose densities differ");
    setup.assumptions.push_back("magnet's mass from its volume and density " +
                                significant(setup.inputs.density_kg_m3.value / 1000, 3) +
                                " g/cm3: weigh it and give --magnet-mass");
    return setup;
}

} // namespace

std::optional<Problem> pull_fault(const std::string& text, const std::string& option) {
    static const Dimension newton = parse_unit("N")->dimension;
    const Result<Quantity> q = parse_quantity(text.substr(0, text.find("+-")));
    if (!q || !(q->dimension == newton || q->dimension == kilogram)) return std::nullopt;
    return Problem{Problem::Kind::refused,
                   option + " '" + text +
                       "': a pull is no measure of magnetisation (it depends on the steel, its thickness and the "
                       "gap): give --grade, --br in tesla, or --surface-field",
                   0};
}

Result<Uncertain> uncertain_from(const std::string& text, const Dimension& dimension, const std::string& option) {
    std::size_t at = text.find("+-");
    if (at == std::string::npos) at = text.find("±"); // two bytes long as well
    const auto read = [&](const std::string& piece) -> Result<double> {
        const Result<double> value = parse_si(piece, dimension, "it");
        if (value) return value;
        return unreadable(option + " '" + piece + "': " + value.problem().text);
    };
    if (at == std::string::npos) {
        const Result<double> value = read(text);
        if (!value) return value.problem();
        return Uncertain{*value, 0, true};
    }
    std::string left = text.substr(0, at), right = text.substr(at + 2);
    if (is_bare(left)) { // the unit stands once, behind the tolerance
        left += unit_behind(right);
    }
    const Result<double> value = read(left), spread = read(right);
    if (!value) return value.problem();
    if (!spread) return spread.problem();
    const Result<Quantity> q = parse_quantity(right);
    const bool reciprocal =
        !(q->dimension == dimension) && !q->dimension.dimensionless(); // a conductivity for a resistivity
    return Uncertain{*value, std::abs(reciprocal ? *value * *value / *spread : *spread), true};
}

Result<DropSetup> magnet_setup(const Catalogue& catalogue, const SetupWords& words) {
    DropSetup setup;
    if (!words.magnet_at.empty()) {
        const Result<double> t = parse_si(words.magnet_at, base_dimension(Dimension::kelvin), "a temperature");
        if (!t) return unreadable("--magnet-at '" + words.magnet_at + "': " + t.problem().text);
        if (*t <= 0) return unreadable("--magnet-at '" + words.magnet_at + "': a temperature above 0 K is expected");
        setup.magnet_temperature_K = *t;
    } else {
        setup.assumptions.push_back("magnet at 20 degC: --magnet-at for another temperature");
    }
    Result<DropSetup> next = with_magnet(std::move(setup), words.magnet);
    if (next) {
        const Result<eddy::Magnet> magnet = eddy::checked(next->inputs.magnet());
        if (!magnet) return magnet.problem();
    }
    if (next) next = with_strength(std::move(*next), catalogue, words);
    if (next) next = with_recoil(std::move(*next), words.recoil_permeability);
    if (next) next = with_mass(std::move(*next), words.magnet_mass);
    return next;
}

Result<eddy::Magnet> magnet_shape(const SetupWords& words) {
    const Result<DropSetup> setup = with_magnet(DropSetup{}, words.magnet);
    if (!setup) return setup.problem();
    return eddy::checked(setup->inputs.magnet());
}

Result<DropSetup> drop_setup(const Catalogue& catalogue, const SetupWords& words,
                             const std::function<Result<DropSetup>(DropSetup)>& put) {
    Result<DropSetup> next = magnet_setup(catalogue, words);
    if (next) next = with_tube(std::move(*next), words.tube);
    if (next) next = with_path(std::move(*next), words);
    if (next && put) next = put(std::move(*next));
    if (next) next = with_timing(std::move(*next), words);
    if (!next) return next;
    const Result<eddy::DropInputs> sound = eddy::checked(next->inputs);
    if (!sound) return sound.problem();
    next->inputs = eddy::with_riding(*sound);
    return with_cautions(std::move(*next));
}

Result<DropSetup> tube_setup(const SetupWords& words) {
    Result<DropSetup> setup = with_tube(DropSetup{}, words.tube);
    if (setup && !(setup->inputs.outside_radius_m.value > setup->inputs.bore_radius_m.value))
        return refused("the tube needs an outer diameter above the bore: --tube ID:OD:LENGTH");
    return setup;
}

std::vector<const MagnetFigure*> magnet_cautions(const Catalogue& catalogue) {
    std::vector<const MagnetFigure*> out;
    for (const MagnetFigure& f : catalogue.magnet_figures)
        if (f.quantity == "caution" && f.subject == "strong magnets") out.push_back(&f);
    return out;
}

} // namespace pourbook
