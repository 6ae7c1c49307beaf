// A magnet and a tube whose dimensions, remanence and mass are known only so well: nominal fall and its variations.
//
// Each input is drawn once per sample. A dimension acts on the drag through the sensitivity of ln(Br^2-normalised
// low-speed coefficient) to it (central difference), so that thousands of samples share one drag curve; remanence
// (squared), mass, tube length and conductivity enter exactly. The tube's dimensions are its bore, with the wall kept,
// and its wall: a thin wall brakes in proportion to its thickness, so that it may be known no better than itself (where
// the limits leave none, nothing brakes). Range of the others: spreads that are small against the dimension and the gap
// (second-order terms of the sensitivities are left out: about half the square of the relative change in drag).
// A magnet rides off the axis by an unknown distance, which only adds drag: every distance up to nine tenths of the gap
// (0.6 bore radii at most) is taken as alike in the samples; the nominal fall is on the axis.
// Parts of the wall that brake beside the tube count as more conductivity of the tube, by what they add at the upper
// end: exact at low speed, and where the induced field matters as good as the parts are thin walls close together.
#pragma once

#include "core/eddy/current_fall.hpp"
#include "core/eddy/thin_wall.hpp"
#include "core/uncertainty/draws.hpp"

#include <memory>
#include <optional>

namespace pourbook::eddy {

/// A value with limits (all values inside equally likely) or a standard uncertainty.
struct Uncertain {
    double value = 0;
    double spread = 0; // half width, or standard uncertainty
    bool limits = false;

    /// The value at a standard normal draw.
    double at(double draw) const;
    double standard() const;
};

/// How much an unknown distance from the axis adds to the drag: factors at half of the furthest and at the furthest.
struct Riding {
    double furthest_m = 0, half = 1, full = 1;

    /// At a share 0..1 of the furthest.
    double factor(double share) const;
};

struct DropInputs {
    Shape shape = Shape::cylinder;
    Uncertain outer_radius_m, inner_radius_m, length_m; // magnet, or one of a stack
    Stack stack{};
    Uncertain bore_radius_m, outside_radius_m, tube_length_m;
    Uncertain remanence_T;
    double recoil_permeability = 1;
    Uncertain moment_doubt; // factor on the moment, about 1: what the recoil permeability leaves open
    Uncertain mass_kg;      // used when above zero, else the density
    Uncertain density_kg_m3;
    bool wall_area_held = false; // the outside follows the bore at the same cross-section (a tube of stated mass)
    Slits slits;                 // in the wall
    double slit_length_m = 0;    // how far they reach from the mouth; 0: the whole length
    Uncertain path_doubt{1};     // factor on the drag: what is not known of slits and seams
    std::vector<WallPart> wall;  // of a wall of several parts: all of them, the tube itself first; it has no slits
    double off_axis_m = 0;       // the magnet's axis beside the tube's, where it is stated
    Riding riding;               // where it is not
    double from_depth_m = 0;     // the magnet's centre when it is let go, below the mouth
    double beyond_m = 0;         // its centre when the timing ends, below the lower end

    Magnet magnet() const;
    Bore bore() const;
    /// From the narrowest to the widest of all parts.
    Bore whole_bore() const;
    /// What the drag follows along the tube: parts, or what slits leave where they reach. Empty: it is even.
    std::vector<WallPart> along() const;
    /// The pieces of the wall, the tube itself first.
    std::vector<WallOutline> outlines() const;
};

/// Errors: refused (see Magnet and Bore), sizes outside 0.1 mm to 2 m (a tube: to 100 m), a tolerance above a third of
/// its value, slits or off-axis travel outside thin_wall.hpp's range (slits: a wall up to half the bore radius is let
/// pass), either of them in a wall of several parts.
Result<DropInputs> checked(const DropInputs& inputs);

/// Low-speed drag relative to that of the whole tube with the magnet on its axis; 1 without slits and off-axis travel,
/// and where slits end in the tube.
Result<double> path_factor(const DropInputs& inputs);

/// The inputs with what riding off the axis may do: every distance up to the furthest alike. Nothing where a distance
/// is stated or slits are.
DropInputs with_riding(DropInputs inputs);

/// Chance that the magnet is wider than the bore within the limits given.
double chance_too_wide(const DropInputs& inputs);

/// One sample of everything but the conductivity.
struct Variation {
    double drag = 1; // factor on the drag
    double mass_kg = 0;
    double tube_length_m = 0;
    double wall_area_m2 = 0; // cross-section of the wall
};

double nominal_wall_area_m2(const DropInputs& inputs);

/// Variations of the tube alone (drag 1, mass 0), from the same draws as DropModel::variations.
std::vector<Variation> tube_variations(const DropInputs& inputs, Draws& draws);

class DropModel {
public:
    explicit DropModel(const DropInputs& inputs); // checked

    const DropInputs& inputs() const { return inputs_; }
    double moment_A_m2() const { return moment_; }
    double mass_kg() const { return nominal_.mass_kg; }
    const DragCurve& curve() const { return curve_; }
    const EndEffect& ends() const { return ends_; }
    /// Where the drag is not even along the tube, or other metals brake with it; nullptr: neither.
    const WallProfile* wall() const { return wall_ ? &*wall_ : nullptr; }

    FallSetup setup(double conductivity_S_m) const { return setup(conductivity_S_m, nominal_); }
    FallSetup setup(double conductivity_S_m, const Variation& variation) const;
    const Variation& nominal() const { return nominal_; }
    std::vector<Variation> variations(Draws& draws) const;

    /// The fall in this tube. Where the currents need time that counts (no slits, up to 40 bore radii of tube, fading
    /// time above 5e-4 of the fall) they are followed (current_fall.hpp); their patterns are made when first needed and
    /// kept: not for two threads at once.
    Fall fall(const FallSetup& setup, bool with_path = false) const;

private:
    struct Lever {
        const char* key;
        Uncertain DropInputs::*input;
        double sensitivity; // of ln drag to ln of the input
    };
    double ln_drag_per_remanence(const DropInputs& inputs) const;
    const WallModes& modes() const;
    /// Of ln drag to ln of what `scaled` multiplies by a factor.
    template <class Scaled> double sensitivity(Scaled&& scaled) const;
    /// With this bore, and the wall or the cross-section as it is.
    DropInputs with_bore(double bore_radius_m) const;
    /// The part with the tube's sizes moved to those of `to`.
    Bore moved(const WallPart& part, const DropInputs& to) const;

    DropInputs inputs_;
    double moment_;
    DragCurve curve_;
    EndEffect ends_;
    std::optional<WallProfile> wall_;
    double level_ = 1; // of the drag at the upper end over that of the tube alone
    Variation nominal_;
    std::vector<Lever> levers_;
    double wall_sensitivity_ = 0;
    mutable std::shared_ptr<const WallModes> modes_;
};

} // namespace pourbook::eddy
