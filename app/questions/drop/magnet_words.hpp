// A magnet and a tube as a person writes them, turned into numbers with their uncertainty, sources and assumptions.
//
//   magnet   sphere:D | cylinder:DxL | ring:ODxIDxL | cube:SIDE          12mm, 0.5in; a tolerance as 12+-0.1mm (limits)
//            2 x cylinder:12mmx10mm [parallel | opposed | alternating] [gap 5mm]: a stack
//   tube     ID:OD:LENGTH; one mm, cm or in at the end serves all: 22:28:400mm
//   release  face (its lower face at the mouth) | 20mm (its centre above the mouth); stop: out | 100mm (floor below)
//   strength --grade N42 | --br 1.3T | --surface-field 0.45T@1mm (on the axis, at that distance from the pole face)
//
// Remanence of a grade: the whole range over the cited tables, all values alike; at another temperature by the cited
// coefficient. What is not stated is assumed and said: +-0.05 mm on measured diameters and magnet lengths, +-0.5 mm on
// the tube's length, 1 % on a given remanence, 1 % on a given resistivity, 0.5 % on a given mass (workshop measuring,
// common practice without a source).
#pragma once

#include "core/eddy/drop_model.hpp"
#include "core/evaluate/evaluate.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace pourbook {

constexpr double caliper_m = 0.05e-3; // how well a diameter or a thickness is measured, each side

struct SetupWords {
    std::string magnet, grade, br, surface_field, recoil_permeability, magnet_mass, magnet_at, tube;
    std::string slits{}, off_axis{}; // "2", "0.5mm"; empty: a whole tube, on the axis
    std::string release{}, stop{};   // where the timing begins and ends; empty: the magnet's centre at either end
    bool operator==(const SetupWords&) const = default;
};

struct CitedFigure {
    std::string what; // "remanence of N42: 1.28 to 1.32 T"
    Citation citation;
};

struct DropSetup {
    eddy::DropInputs inputs; // checked
    std::string grade;       // as in the table; empty with --br or --surface-field
    double magnet_temperature_K = room_temperature_K;
    double recoil_effect = 0; // relative loss of moment by a recoil permeability of 1.05 where it was not stated
    std::vector<std::string> assumptions;
    std::vector<std::string> cautions; // what may spoil the drop: too warm a magnet, one that turns over or may not fit
    std::vector<CitedFigure> sources;
    std::string timing; // "released with its centre at the mouth, timed until its centre leaves"
};

/// `put` is what else is to be put to it before it is checked. Errors: unreadable, unknown (grade), out_of_range
/// (temperature of the magnet), refused (pull force, magnet wider than the bore); those of `put`.
Result<DropSetup> drop_setup(const Catalogue& catalogue, const SetupWords& words,
                             const std::function<Result<DropSetup>(DropSetup)>& put = {});

/// The magnet alone, its strength included. Errors: as drop_setup.
Result<DropSetup> magnet_setup(const Catalogue& catalogue, const SetupWords& words);

/// The magnet's shape and size alone. Errors: unreadable, refused.
Result<eddy::Magnet> magnet_shape(const SetupWords& words);

/// The tube alone, for a resistance without a magnet. Errors: unreadable, refused.
Result<DropSetup> tube_setup(const SetupWords& words);

/// "12mm", "12+-0.1mm"; without a tolerance the assumed half width. Errors: unreadable, naming the option.
Result<eddy::Uncertain> uncertain_from(const std::string& text, const Dimension& dimension, const std::string& option);

/// A pull (newton, kilogram) in place of a field; nothing where it is none. Errors in it: refused.
std::optional<Problem> pull_fault(const std::string& text, const std::string& option);

/// Cautions for strong magnets, from the reference.
std::vector<const MagnetFigure*> magnet_cautions(const Catalogue& catalogue);

} // namespace pourbook
