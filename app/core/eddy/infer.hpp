// Conductivity of a tube from measured fall times, from a four-wire resistance, or from both, with its uncertainty.
//
// Fall times: the conductivity at which the computed fall takes the mean measured time, for each sample of magnet and
// dimensions. The response of ln(sigma) to ln(time), ln(drag factor), ln(mass) and ln(length) is taken at the nominal
// solution (central differences of the fall itself): second-order terms are left out, a few tenths of a per cent where
// the inputs are uncertain to 10 %. Scatter of repeated drops: Student's t with n - 1 degrees of freedom. Resistance:
// sigma = span / (R area of the wall). Both: generalised least squares on the logarithms, with the covariance of the
// samples, since shared dimensions are drawn once for both; where they disagree (chance below 5 %) the interval is
// widened by the ratio of their difference to its spread (Birge, Phys. Rev. 40, 207, 1932).
#pragma once

#include "core/eddy/drop_model.hpp"

#include <optional>

namespace pourbook::eddy {

struct TimedDrops {
    std::vector<double> times_s;
    double reading_s =
        0; // standard uncertainty of one timing by the method itself (reaction, frame); counts with the scatter
};

struct FourWire {
    Uncertain resistance_ohm;
    Uncertain span_m; // between the voltage taps
};

struct Conductivity {
    double value_S_m = 0;
    double standard_uncertainty_S_m = 0; // half the central 68 % of the samples
    double low90_S_m = 0, high90_S_m = 0;
    std::vector<double> samples_S_m;
};

/// Errors: refused: a magnet too heavy for the peak drag, a time below free fall, no drops.
Result<Conductivity> conductivity_from_times(const DropModel& model, const TimedDrops& drops,
                                             const std::vector<Variation>& variations, Draws& draws);

/// From samples, with the value of the stated figures.
Conductivity summed_up(double value_S_m, std::vector<double> samples_S_m);

/// The variations give the wall's area. Errors: refused for a resistance or span not above zero.
Result<Conductivity> conductivity_from_resistance(const FourWire& measured, double wall_area_m2,
                                                  const std::vector<Variation>& variations, Draws& draws);

/// Both together; samples of the same draws.
Conductivity combined(const Conductivity& a, const Conductivity& b);

/// Chance that a difference this large arises from the uncertainties, by the spread of the samples' own ratio.
double agreement(const Conductivity& a, const Conductivity& b);

} // namespace pourbook::eddy
