// The field of a magnet that moves along the axis of a long tube, and the currents it drives round in the wall, in the
// magnet's own frame, where nothing changes with time.
//
// The magnet's own field is exact (closed forms and complete elliptic integrals, real space; inside the magnet too);
// the field of the currents is the sum over axial harmonics of tube_drag.hpp,
//   A_ind = mu0 m / (2 pi^2) Re int q S(q) C(q) I1(qr) exp(iqz) dq     in the bore, and likewise in the wall and
//   outside
// with z along the motion. The currents are J = sigma v dA/dz = -sigma v B_r of the whole field.
// Range: as TubeDrag, recoil permeability 1. Error of the sum over the wall of J B_r against TubeDrag's force below
// 1e-3 (tests/unit/eddy).
#pragma once

#include "core/eddy/tube_drag.hpp"

#include <vector>

namespace pourbook::eddy {

/// Azimuthal potential of the magnet alone over Br, in metres, anywhere; z from its middle, along its axis.
double potential_over_remanence(const Magnet& magnet, double r_m, double z_m);

/// Values at all crossings of some radii and some places along the axis; the first radius of a place comes first.
struct FieldGrid {
    std::vector<double> r_m, z_m;
    std::vector<double> flux_T_m2;    // r A: the whole field's flux through the circle, over 2 pi
    std::vector<double> current_A_m2; // round the axis, a right-hand screw driven along +z; 0 outside the wall
};

/// The magnet moves at the speed towards +z. Radii above zero; places within 8 bore radii of the magnet's ends (beyond,
/// the sum over harmonics grows coarse). Checked magnet and bore; mu0 sigma v a at most 50.
FieldGrid tube_field(const Magnet& magnet, const Bore& bore, double conductivity_S_m, double speed_m_s,
                     double remanence_T, std::vector<double> r_m, std::vector<double> z_m);

} // namespace pourbook::eddy
