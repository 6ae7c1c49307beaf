#!/usr/bin/env python3
"""Falls of a magnet through walls of several parts, in time: coaxial rings with their full inductance matrix, magnet and
currents integrated together by LSODA. Independent of the program (own discretisation, scipy's elliptic integrals and
integrator). Run by hand (python3-scipy); the figures stand in tests/laws/eddy/wall_parts.tests.cpp."""
import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicSpline
from scipy.linalg import eigh
from scipy.special import ellipe, ellipk

MU0, G = 1.25663706212e-6, 9.80665


def mutual(R, r, z):
    k2 = 4 * R * r / ((R + r) ** 2 + z * z)
    k = np.sqrt(k2)
    return MU0 * np.sqrt(R * r) * ((2 / k - k) * ellipk(k2) - 2 / k * ellipe(k2))


def potential(R, r, z):
    """r A of a loop of 1 A, over mu0."""
    return mutual(R, r, z) / (2 * np.pi * MU0)


class Magnet:
    def __init__(self, diameter, length, mass, remanence=1.3):
        self.R, self.h, self.mass, self.br = diameter / 2, length / 2, mass, remanence

    def r_br(self, r, z):
        """r B_r of the current sheet."""
        return self.br * (potential(self.R, r, z - self.h) - potential(self.R, r, z + self.h))


def rings_of(parts, fine):
    """parts: (inner radius or its two ends, outer, from, to, S/m); rings about `fine` of the bore radius in size."""
    out = []
    for inner, outer, low, high, sigma in parts:
        ends = np.atleast_1d(inner)
        size = fine * ends[0]
        nz = max(1, int(np.ceil((high - low) / size)))
        nr = max(1, int(np.ceil((outer - ends.mean()) / size)))
        for k in range(nz):
            z = low + (k + 0.5) * (high - low) / nz
            a = np.interp(z, [low, high], [ends[0], ends[-1]])
            for j in range(nr):
                r0, r1 = a + (outer - a) * j / nr, a + (outer - a) * (j + 1) / nr
                out.append(((r0 + r1) / 2, z, r1 - r0, (high - low) / nz, sigma))
    return np.array(out)


def modes(rings):
    r, z, w, h, sigma = rings.T
    resistance = 2 * np.pi * r / (sigma * w * h)
    n = len(r)
    L = np.zeros((n, n))
    points = [(a, b) for a in (-0.288675, 0.288675) for b in (-0.288675, 0.288675)]
    for a, b in points:
        for c, d in points:
            R, Z = r + a * w, z + b * h
            S, Y = r + c * w, z + d * h
            with np.errstate(divide="ignore", invalid="ignore"):
                L += mutual(R[:, None], S[None, :], Z[:, None] - Y[None, :]) / 16
    L = (L + L.T) / 2
    np.fill_diagonal(L, MU0 * r * (np.log(8 * r / (0.2235 * (w + h))) - 2))
    root = np.sqrt(resistance)
    tau, vectors = eigh(L / np.outer(root, root))
    return tau, vectors / root[:, None]


def fall(magnet, parts, length, fine=0.125, at_once=False):
    rings = rings_of(parts, fine)
    r, z, w, h, _ = rings.T
    tau, vectors = modes(rings)

    places = np.arange(-2e-3, length + 2e-3, 0.25e-3)
    g = sum(magnet.r_br((r + a * w)[None, :], (z + b * h)[None, :] - places[:, None]) / 4
            for a in (-0.288675, 0.288675) for b in (-0.288675, 0.288675))
    coupling = CubicSpline(places, 2 * np.pi * g @ vectors)

    def rate(_, state):
        g = coupling(state[0])
        if at_once:
            return [state[1], G - state[1] * (g @ g) / magnet.mass]
        y = state[2:]
        return np.concatenate([[state[1], G + g @ y / magnet.mass], (-g * state[1] - y) / tau])

    def out(_, state):
        return state[0] - length
    out.terminal = True
    start = np.zeros(2 if at_once else 2 + len(tau))
    done = solve_ivp(rate, [0, 100], start, method="LSODA", rtol=1e-7, atol=1e-9, events=out)
    return done.t_events[0][0]


# millimetres, MS/m: (inner, outer, from, to, conductivity)
CASES = {
    "sleeve with a gap": ((20, 20, 0.047), [(11, 13, 0, 30, 58), (13.5, 16.5, 0, 30, 35)]),
    "liner, cold": ((20, 20, 0.047), [(11, 12, 0, 24, 100), (12, 16, 0, 24, 477)]),
    "two metals": ((20, 20, 0.047), [(11, 16, 0, 15, 477), (11, 16, 15, 30, 100)]),
    "taper": ((20, 20, 0.047), [((11, 13), 16, 0, 30, 200)]),
}

if __name__ == "__main__":
    for name, ((diameter, length, mass), parts) in CASES.items():
        magnet = Magnet(diameter / 1e3, length / 1e3, mass)
        metres = [(np.array(a) / 1e3, b / 1e3, c / 1e3, d / 1e3, s * 1e6) for a, b, c, d, s in parts]
        end = max(p[3] for p in metres)
        # Rings average the field over their section, an error of their size squared: carried to none.
        coarse, finer = ([fall(magnet, metres, end, fine, at_once) for at_once in (True, False)] for fine in (0.12, 0.08))
        carried = [f + (f - c) * 0.08**2 / (0.12**2 - 0.08**2) for c, f in zip(coarse, finer)]
        print("%-18s at once %.4f s, in time %.4f s, currents %.2f ms (finest rings %.4f, %.4f s)" %
              (name, *carried, 1e3 * (carried[1] - carried[0]), *finer), flush=True)
