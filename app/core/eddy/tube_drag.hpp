// Drag on an axially magnetised magnet moving along the axis of an infinitely long, non-magnetic, conducting tube, at
// any speed, the field of the induced currents included.
//
// In the magnet's frame nothing changes with time. With A the azimuthal potential, each axial harmonic exp(iqz) obeys
//   bore, outside   A'' + A'/r - A/r^2 = q^2 A              A = K1(qr) + C I1(qr),  A = G K1(qr)
//   wall            A'' + A'/r - A/r^2 = lambda^2 A         A = D I1(lambda r) + E K1(lambda r),  lambda^2 = q^2 - i
//   mu0 sigma v q
// with A and (rA)'/r continuous at both faces, which gives C(q). The force on the magnet is that of C on its source,
//   F(v) = mu0 m^2 / (2 pi^2) int_0^inf q^3 S(q)^2 Im C(q) dq,
// derived here from Maxwell's equations (quasi-static: v far below c); the problem is that of Partovi and Morris, Can.
// J. Phys. 84, 253 (2006). At low speed F = k v with k = mu0^2 m^2 sigma / (2 pi^2) int q^4 S^2 W dq, W = int_a^b r
// K1(qr)^2 dr.
//
// sigma and v enter only as u = mu0 sigma v a: force(u) serves every metal, temperature and speed of one geometry.
// Range: 0 < magnet radius < a < b, S constant over the magnet's motion, coaxial, long tube (ends: end_effect.hpp),
// magnet free of currents and of recoil permeability 1 as far as the induced field is concerned. Relative error of
// force and low-speed coefficient below 1e-6 against 30-digit arithmetic for u from 1e-7 to 1e7 (tests/published/eddy).
#pragma once

#include "core/eddy/magnet.hpp"
#include "core/result.hpp"

#include <vector>

namespace pourbook::eddy {

struct Bore {
    double inner_radius_m = 0; // a
    double outer_radius_m = 0; // b
};

/// Errors: refused (no wall, magnet wider than the bore, more slender than the quadrature is meant for).
Result<Bore> checked(const Bore& bore, const Magnet& magnet);

class TubeDrag {
public:
    /// Both checked.
    TubeDrag(const Magnet& magnet, const Bore& bore);

    /// low_speed() alone, three times as quickly.
    static double low_speed_of(const Magnet& magnet, const Bore& bore);

    /// int x^4 S^2 W dx / a^2, x = q a: k = mu0^2 m^2 sigma / (2 pi^2 a^3) * low_speed().
    double low_speed() const { return low_speed_; }

    /// int x^3 S^2 Im C dx at u = mu0 sigma v a >= 0: F = mu0 m^2 / (2 pi^2 a^4) * force(u).
    double force(double u) const;

    double coefficient_N_s_m(double moment_A_m2, double conductivity_S_m) const;
    double force_N(double moment_A_m2, double conductivity_S_m, double speed_m_s) const;
    double bore_radius_m() const { return bore_radius_m_; }
    double wall_over_bore() const { return ratio_ - 1; }

private:
    struct Node {
        double x;              // q a
        double weight;         // of Im C exp(2x) in the integral
        double i0, i1, k0, k1; // scaled, at x
        double outside;        // -x K0(x b/a) / K1(x b/a): slope over value of the field outside
    };
    enum class Speeds { low, any };
    TubeDrag(const Magnet& magnet, const Bore& bore, Speeds speeds);
    void add_panel(std::vector<Node>& nodes, const Magnet& magnet, double low, double high) const;
    double reflected(const Node& node, double u) const;

    double bore_radius_m_, ratio_; // b / a
    double low_speed_ = 0;
    std::vector<Node> coarse_, graded_, rest_; // the first panel in two ways, and the others
};

} // namespace pourbook::eddy
