// Complete elliptic integrals by the arithmetic-geometric mean (DLMF 19.8.5, 19.8.6; Abramowitz and Stegun 17.6).
// The standard library of the browser's compiler has none.
#pragma once

namespace pourbook::eddy {

struct CompleteElliptic {
    double first, second; // K(k), E(k)
};

/// Of the modulus k, 0 <= k < 1, not of the parameter m = k^2. Relative error below 1e-14.
CompleteElliptic complete_elliptic(double k);

} // namespace pourbook::eddy
