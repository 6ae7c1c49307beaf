// Drag and lift on a magnet moving at a height over a wide conducting plate, thin or thick, at any speed.
//
// Each Fourier component (kx, ky) of the field sees the plate as a moving conductor: with k = |(kx, ky)| and
// gamma^2 = k^2 + i mu0 sigma v kx, the plate of thickness w reflects
//   r = (gamma^2 - k^2) tanh(gamma w) / [(gamma^2 + k^2) tanh(gamma w) + 2 gamma k]
// (field continuous at both faces), and the force on the dipole is that of its reflected image. In polar form, k = q/h
// and kx = k cos t, for a moment normal to the plate
//   lift = C int_0^inf q^3 e^(-2q) <Re r> dq,  drag = C int_0^inf q^3 e^(-2q) <Im r cos t> dq,  C = mu0 m^2/(4 pi h^4),
//   < > over t
// for a moment along the plate and the motion each component carries a further cos^2 t. A cylinder or ring that stands
// with its axis normal to the plate carries the square of its spectrum, S = [2 J1(kR)/(kR)] sinh(kL/2)/(kL/2) (a ring:
// the difference of two); lying along the motion it is taken as a dipole of its moment.
// Limits: thin plate, normal moment: Reitz, J. Appl. Phys. 41, 2067 (1970) (from memory), drag/lift = u0/v with
// u0 = 2/(mu0 sigma w) (Saslow, Am. J. Phys. 60, 693, 1992, abstract); low speed, thin: 3 mu0^2 m^2 sigma w v/(128 pi
// h^4); perfect conductor: the image, lift 3 mu0 m^2/(32 pi h^4). Range: plate wider than some ten heights, constant
// speed and height, v far below c; exact for a sphere and for a standing cylinder or ring; a lying one at a height of
// twice its half diagonal and more (error of the order of the square of half diagonal over height).
#pragma once

#include "core/eddy/magnet.hpp"
#include "core/result.hpp"

namespace pourbook::eddy {

struct Plate {
    double conductivity_S_m = 0;
    double thickness_m = 0; // infinity: a half space
};

enum class MomentAxis { normal, along_motion };

struct PlateForce {
    double drag_N = 0;
    double lift_N = 0; // pushes the magnet away from the plate
};

/// Height from the magnet's centre to the plate's surface. Errors: refused for values not above zero, a magnet that
/// reaches into the plate, a lying cylinder or ring too near it.
Result<PlateForce> plate_force(const Plate& plate, const Magnet& magnet, double moment_A_m2, MomentAxis axis,
                               double height_m, double speed_m_s);

/// Half the magnet's extent towards the plate.
double half_extent_m(const Magnet& magnet, MomentAxis axis);

} // namespace pourbook::eddy
