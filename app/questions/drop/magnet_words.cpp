#include "questions/drop/magnet_words.hpp"

#include "core/quantity/format.hpp"
#include "core/quantity/unit.hpp"
#include "questions/drop/magnet_grade.hpp"

#include <algorithm>
#include <cmath>

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

bool is_bare(const std::string& text) {
    std::string_view rest = text;
    double number = 0;
    return take_number(rest, number) && rest.find_first_not_of(' ') == std::string_view::npos;
}

/// Lengths behind the shape's name; all with a unit or all without, so that "12x10mm" is not read as 12 m.
Result<std::vector<Uncertain>> lengths(const std::vector<std::string>& pieces, const std::string& option,
                                       double assumed) {
    const auto bare = std::count_if(pieces.begin(), pieces.end(), is_bare);
    if (bare != 0 && bare != static_cast<std::ptrdiff_t>(pieces.size()))
        return unreadable(option + ": give every length its unit, such as 12mmx10mm");
    std::vector<Uncertain> out;
    for (const std::string& piece : pieces) {
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

Result<DropSetup> with_magnet(DropSetup setup, const std::string& text) {
    const std::string option = "--magnet '" + text + "'";
    const std::size_t colon = text.find(':');
    const std::string name = text.substr(0, colon);
    const std::string rest = colon == std::string::npos ? "" : text.substr(colon + 1);
    auto pieces = split(rest, rest.find("×") == std::string::npos ? "x" : "×");
    const std::size_t wanted = name == "sphere" ? 1 : name == "cylinder" ? 2 : name == "ring" ? 3 : 0;
    if (wanted == 0 || pieces.size() != wanted)
        return unreadable(option + ": sphere:D, cylinder:DxL or ring:ODxIDxL is expected, such as cylinder:12mmx10mm");
    const auto sizes = lengths(pieces, option, caliper_m);
    if (!sizes) return sizes.problem();
    eddy::DropInputs& i = setup.inputs;
    i.shape = wanted == 1 ? Shape::sphere : wanted == 2 ? Shape::cylinder : Shape::ring;
    i.outer_radius_m = half((*sizes)[0]);
    i.length_m = sizes->back();
    if (wanted == 3) i.inner_radius_m = half((*sizes)[1]);
    return setup;
}

Result<DropSetup> with_tube(DropSetup setup, const std::string& text) {
    const std::string option = "--tube '" + text + "'";
    const auto pieces = split(text, ":");
    if (pieces.size() != 3) return unreadable(option + ": ID:OD:LENGTH is expected, such as 13mm:15mm:1m");
    const auto sizes = lengths(pieces, option, caliper_m);
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
        setup.inputs.slits = static_cast<int>(*slits);
    }
    if (words.off_axis.empty()) return setup;
    const Result<double> off = parse_si(words.off_axis, metre, "--off-axis");
    if (!off || !(*off >= 0))
        return unreadable("--off-axis '" + words.off_axis + "': a distance from the axis such as 0.5mm is expected");
    setup.inputs.off_axis_m = *off;
    return setup;
}

Result<double> plain_number(const std::string& text, const std::string& option, double low, double high) {
    const Result<double> number = parse_si(text, {}, option);
    if (!number || !(*number >= low && *number <= high))
        return unreadable(option + " '" + text + "': a number from " + trimmed(low, 3) + " to " + trimmed(high, 3) +
                          " is expected");
    return *number;
}

/// A remanence in tesla (or a magnetisation in A/m); a force or a mass is a pull and says nothing of the moment.
Result<Uncertain> remanence_from(const std::string& text, const std::string& option) {
    static const Dimension tesla = parse_unit("T")->dimension, newton = parse_unit("N")->dimension,
                           magnetisation = parse_unit("A/m")->dimension;
    const Result<Quantity> q = parse_quantity(text.substr(0, text.find("+-")));
    if (q && (q->dimension == newton || q->dimension == kilogram))
        return refused(option + " '" + text +
                       "': a pull is no measure of magnetisation (it depends on the steel, its thickness and the "
                       "gap): give --grade, --br in tesla, or --surface-field");
    const bool amperes = q && q->dimension == magnetisation;
    Result<Uncertain> br = uncertain_from(text, amperes ? magnetisation : tesla, option);
    if (!br) return br;
    if (amperes) *br = {br->value * eddy::vacuum_permeability, br->spread * eddy::vacuum_permeability, br->limits};
    if (!(br->value > 0 && br->value <= 2.5))
        return unreadable(option + " '" + text + "': a magnet has between 0 and 2.5 T");
    return br;
}

Result<Uncertain> from_surface_field(const std::string& text, const eddy::Magnet& magnet) {
    const std::size_t at = text.find('@');
    double distance_m = 0;
    if (at != std::string::npos) {
        const Result<double> d = parse_si(text.substr(at + 1), metre, "a distance");
        if (!d || *d < 0) return unreadable("--surface-field '" + text + "': write 0.45T@1mm");
        distance_m = *d;
    }
    Result<Uncertain> field = remanence_from(text.substr(0, at), "--surface-field");
    if (!field) return field;
    const double share = eddy::axial_field_over_remanence(magnet, distance_m);
    if (!(share > 0))
        return refused(
            "--surface-field: this ring's field on the axis is not opposed to its poles there: measure further out");
    field->value /= share;
    field->spread /= share;
    return field;
}

Result<DropSetup> with_strength(DropSetup setup, const Catalogue& catalogue, const SetupWords& words) {
    const int given = !words.grade.empty() + !words.br.empty() + !words.surface_field.empty();
    if (given != 1)
        return unreadable("the magnet's strength is needed once: --grade N42, --br 1.3T or --surface-field 0.45T@1mm");
    if (!words.grade.empty()) return with_grade(std::move(setup), catalogue, words.grade);
    const Result<Uncertain> br = words.br.empty() ? from_surface_field(words.surface_field, setup.inputs.magnet())
                                                  : remanence_from(words.br, "--br");
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

Result<Uncertain> uncertain_from(const std::string& text, const Dimension& dimension, const std::string& option) {
    std::size_t at = text.find("+-");
    if (at == std::string::npos) at = text.find("±"); // two bytes long as well
    const auto read = [&](const std::string& piece) -> Result<double> {
        const Result<double> value = parse_si(piece, dimension, "it");
        if (value) return value;
        return unreadable(option + ": '" + piece + "' can't be read: " + value.problem().text);
    };
    if (at == std::string::npos) {
        const Result<double> value = read(text);
        if (!value) return value.problem();
        return Uncertain{*value, 0, true};
    }
    std::string left = text.substr(0, at), right = text.substr(at + 2);
    if (is_bare(left)) { // the unit stands once, behind the tolerance
        std::string_view rest = right;
        double ignored = 0;
        if (take_number(rest, ignored)) left += std::string(rest);
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
        if (!t || *t <= 0)
            return unreadable("--magnet-at '" + words.magnet_at + "': a temperature such as 20degC is expected");
        setup.magnet_temperature_K = *t;
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

Result<DropSetup> drop_setup(const Catalogue& catalogue, const SetupWords& words) {
    Result<DropSetup> next = magnet_setup(catalogue, words);
    if (next) next = with_tube(std::move(*next), words.tube);
    if (next) next = with_path(std::move(*next), words);
    if (!next) return next;
    const Result<eddy::DropInputs> sound = eddy::checked(next->inputs);
    if (!sound) return sound.problem();
    return next;
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
        if (f.quantity == "caution") out.push_back(&f);
    return out;
}

} // namespace pourbook
