// What melting loses: a share of the charge by family, and which elements leave first.
// An element that boils or burns out of the melt (zinc, magnesium, phosphorus, cadmium) loses a printed share of itself
// in one melt; the loss of the charge is at least the sum of those. Make-up puts back what left before the pour.
#pragma once

#include "core/casting/melt_data.hpp"
#include "core/casting/practice.hpp"

#include <string>
#include <vector>

namespace pourbook::casting {

struct ElementLoss {
    std::string element;
    double share_low = 0, share_high = 0; // of what the charge holds of it
    double low_kg = 0, high_kg = 0;
    std::string text;
    SourceValue source;
};

struct MeltLoss {
    Traced share; // of the charge
    std::vector<ElementLoss> elements;
};

/// charge_kg: metal without heel.
MeltLoss melt_loss(const Material& material, double charge_kg);

} // namespace pourbook::casting
