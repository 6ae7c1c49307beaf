// What melting and feeding need of a metal, and what stands in where nothing is cited for an alloy.
//
// Cited figures come first. Beyond the end of a cited curve the last figure stands in. For an alloy without any: the
// mass-weighted mean of its elements (Neumann and Kopp's rule for heat capacities; for the heat of fusion a rough
// guide), additive specific volumes for the density of the melt, and the principal element's solidification
// contraction. Elements of at most 5 per cent together may be without data. What stands in is flagged as estimated; its
// uncertainty (ours): heat capacity 7 %, heat of fusion 20 %, density of the melt 3 %, solidification contraction 25 %.
// Check of the rule for heats of fusion: see app/help/pour-in-full.md.
#pragma once

#include "core/casting/traced.hpp"

namespace pourbook::casting {

/// A metal under a condition.
struct Material {
    const Catalogue& catalogue;
    const Metal& metal;
    Conditions conditions;
};

/// The element with the largest share; the metal itself for an element. nullptr if the catalogue lacks it.
const Metal* principal_element(const Material& material);

/// Errors of all: no_value, naming what is missing.
Result<Traced> cited(const Material& material, const std::string& property, double temperature_K);
Result<Traced> solidus(const Material& material);
Result<Traced> liquidus(const Material& material);
Result<Traced> solid_density(const Material& material); // at 20 degC
Result<Traced> liquid_density(const Material& material, double temperature_K);
Result<Traced> solid_specific_heat(const Material& material, double temperature_K);
Result<Traced> liquid_specific_heat(const Material& material, double temperature_K);
Result<Traced> latent_heat(const Material& material);
/// (liquid - solid) / liquid volume; negative where the metal grows.
Result<Traced> solidification_contraction(const Material& material);

} // namespace pourbook::casting
