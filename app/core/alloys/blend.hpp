// Melting stocks together: composition of the melt, and how much of one stock brings it to a wanted content.
// Masses are kept as whole nanograms and shared out by largest remainder, so that the elements of a blend add up to the
// mass put in exactly. Valid from 1 nanogram to 1000 tonnes in all.
#pragma once

#include "core/alloys/composition.hpp"

#include <cstdint>

namespace pourbook {

struct Stock {
    std::string name;
    double mass_kg = 0;
    Composition composition;
};

struct ElementMass {
    std::string element;
    std::int64_t nanograms = 0;

    double kg() const { return static_cast<double>(nanograms) * 1e-12; }
};

struct Blend {
    std::int64_t nanograms = 0; // put in; equals the sum over the elements
    std::vector<ElementMass> elements;
    Composition composition;

    double mass_kg() const { return static_cast<double>(nanograms) * 1e-12; }
};

/// Errors: no stock, a mass that is not positive, more than 1000 t.
Result<Blend> blend(const AlloyData& data, const std::vector<Stock>& stocks);

/// Mass of `added` (content c_added per cent of an element) that brings `mass` (content c_start) to c_target:
/// m = mass (c_target - c_start) / (c_added - c_target), the balance of the element.
/// Errors: refused where the target does not lie between the two contents.
Result<double> mass_to_add_kg(double mass_kg, double start_percent, double target_percent, double added_percent);

/// What is left of a melt that loses a share (0 to 1, excluded) evenly, its composition unchanged.
Result<double> mass_after_loss_kg(double mass_kg, double loss);

} // namespace pourbook
