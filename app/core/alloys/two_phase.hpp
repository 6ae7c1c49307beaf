// Conductivity of a matrix with inclusions of other phases.
// Maxwell (Treatise on Electricity and Magnetism, art. 314; Eucken 1940 for several kinds of inclusion):
//   (s - s_m)/(s + 2 s_m) = sum f_i (s_i - s_m)/(s_i + 2 s_m).
// Round inclusions, well apart; still useful where the matrix fills more than half. The parallel (sum f s) and series
// (1/sum(f/s)) arrangements bound every structure.
#pragma once

#include <vector>

namespace pourbook {

struct PhasePart {
    double volume_share = 0;
    double conductivity_si = 0;
};

/// The matrix is the part with the largest share. Shares must sum to 1.
double maxwell_conductivity(const std::vector<PhasePart>& parts);
double parallel_conductivity(const std::vector<PhasePart>& parts);
double series_conductivity(const std::vector<PhasePart>& parts);

} // namespace pourbook
