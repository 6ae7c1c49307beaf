// Remanence of a magnet from its field measured on the axis at known distances, by weighted least squares with the
// exact field of its shape (axial_field_over_remanence).
//
// B_i = Br f(z_i). Weights: the readings' standard uncertainties, and those of the distances through the slope of f at
// the solution. Where the residuals are larger than that the uncertainty is widened by their ratio (Birge, Phys. Rev.
// 40, 207, 1932). What all readings share, the meter's scale error, is added afterwards; dimensions of the magnet are
// taken as exact here and enter with the set-up. The remanence found is the one that gives the measured field with a
// recoil permeability of 1.
#pragma once

#include "core/eddy/drop_model.hpp"

#include <vector>

namespace pourbook::eddy {

struct FieldReading {
    double field_T = 0, field_doubt_T = 0;       // standard uncertainty
    double distance_m = 0, distance_doubt_m = 0; // from the pole face
};

struct FieldFit {
    double remanence_T = 0;
    double standard_uncertainty_T = 0;     // of the fit alone
    double widened = 1;                    // Birge's ratio, 1 where the readings agree
    std::vector<double> residuals_T;       // reading less the fit's field
    std::vector<double> in_doubts;         // the same over its standard uncertainty
    double depth_m = 0, depth_doubt_m = 0; // of the sensor inside its case, where it was fitted
};

/// Errors: refused for no reading, a distance below zero, a field that is not above zero.
Result<FieldFit> fitted_remanence(const Magnet& magnet, const std::vector<FieldReading>& readings);

/// Remanence and the sensor's depth inside its case together, B_i = Br f(z_i + depth), from three readings or more; the
/// depth is held near nothing as 0 +- 1 mm (standard uncertainty; common practice, no source). Errors: as above;
/// refused for fewer readings.
Result<FieldFit> fitted_with_depth(const Magnet& magnet, const std::vector<FieldReading>& readings);

} // namespace pourbook::eddy
