// Laws of a metal with pores, p the share of the volume that is pores (few, round, apart).
//   conductivity, electrical and thermal: sigma = sigma_0 (1 - p)^(3/2)  (Bruggeman, Ann. Phys. 24, 1935, 636, for
//   insulating spheres; Maxwell's 2 (1 - p) / (2 + p) agrees to 0.1 % up to p = 0.05)
//   density: rho = rho_0 (1 - p)
// Range: p up to 0.3. Flat or joined pores (a shrinkage seam across the path) cost more than this.
#pragma once

namespace pourbook {

constexpr double conduction_exponent = 1.5, density_exponent = 1;

} // namespace pourbook
