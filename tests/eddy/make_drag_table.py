#!/usr/bin/env python3
"""Writes tests/published/eddy/drag_table.hpp: the drag integral of app/core/eddy/tube_drag.hpp in arbitrary precision.

The four matching conditions are solved as they stand (a 4 x 4 linear system at 30 digits), and the integral is taken by
panels of one period with a 14-point rule, so nothing of the program's method is shared but the equations.
Package: python3-mpmath (Debian 12). Usage: make_drag_table.py > ../published/eddy/drag_table.hpp (about half an hour)
"""
import mpmath as mp

mp.mp.dps = 30
MU0 = mp.mpf("1.25663706212e-6")

# shape, outer radius, inner radius, length (mm), bore and outer radius of the tube (mm), conductivity (S/m)
CASES = [
    ("sphere", "6", "0", "12", "6.5", "7.5", "5.8e7"),
    ("sphere", "3", "0", "6", "8", "24", "3.5e7"),
    ("cylinder", "6", "0", "10", "6.5", "7.5", "5.8e7"),
    ("cylinder", "6.35", "0", "6.35", "7.85", "8.0", "1.4e7"),
    ("cylinder", "4", "0", "40", "6", "18", "5.8e7"),
    ("ring", "9.5", "4", "6", "10", "12", "3.5e7"),
]
SPEEDS = ["1e-4", "0.01", "0.1", "1", "5", "20", "60", "200", "1000"]


def form_factor(case, k):
    shape, R, r, L = case
    if shape == "sphere":
        return mp.mpf(1)
    along = mp.sin(k * L / 2) / (k * L / 2)
    disc = lambda radius: 2 * mp.besseli(1, k * radius) / (k * radius)
    if shape == "cylinder":
        return disc(R) * along
    return (R**2 * disc(R) - r**2 * disc(r)) / (R**2 - r**2) * along


def bessel_k(z):
    """K0 and K1: power series with enough guard digits, or Hankel's expansion where it is exact to 35 digits (mpmath's besselk takes
    100 times longer at integer order; `agrees_with_mpmath` compares the two)."""
    if abs(z) > 42:
        sums = []
        for nu2 in (0, 4):
            term = total = mp.mpf(1)
            for k in range(1, 120):
                term *= (nu2 - (2 * k - 1) ** 2) / (8 * k * z)
                total += term
                if abs(term) < mp.eps:
                    break
            sums.append(mp.sqrt(mp.pi / (2 * z)) * mp.exp(-z) * total)
        return sums
    with mp.workdps(mp.mp.dps + 5 + int(abs(z))):
        t = z * z / 4
        term, i0, i1, extra, harmonic, k = mp.mpf(1), mp.mpf(1), mp.mpf(1), mp.mpf(0), mp.mpf(0), 0
        while abs(term) > mp.eps:
            k += 1
            term *= t / (k * k)
            harmonic += mp.mpf(1) / k
            i0, i1, extra = i0 + term, i1 + term / (k + 1), extra + harmonic * term
        i1 *= z / 2
        k0 = -(mp.log(z / 2) + mp.euler) * i0 + extra
        return [k0, (1 / z - i1 * k0) / i0]


def agrees_with_mpmath():
    for z in (mp.mpc("0.01", "-0.01"), mp.mpc(3, -2), mp.mpc(30, -20), mp.mpc(60, -3)):
        for n, value in enumerate(bessel_k(z)):
            assert abs(value / mp.besselk(n, z) - 1) < mp.mpf("1e-25"), (z, n)


def reflected(q, a, b, s, v):
    """C of K1 + C I1 in the bore, from the four conditions at a and b; unknowns C, D, E, G."""
    lam = mp.sqrt(mp.mpc(q * q, -MU0 * s * v * q))
    I = mp.besseli
    (K0qa, K1qa), (K0qb, K1qb), (K0a, K1a), (K0b, K1b) = bessel_k(q * a), bessel_k(q * b), bessel_k(lam * a), bessel_k(lam * b)
    c, d, e, g, right = mp.exp(-q * a), mp.exp(-lam * b), mp.exp(lam * a), mp.exp(q * b), mp.exp(q * a)  # columns of like size
    matrix = mp.matrix([
        [c * I(1, q * a), -d * I(1, lam * a), -e * K1a, 0],
        [c * q * I(0, q * a), -d * lam * I(0, lam * a), e * lam * K0a, 0],
        [0, d * I(1, lam * b), e * K1b, -g * K1qb],
        [0, d * lam * I(0, lam * b), -e * lam * K0b, g * q * K0qb],
    ])
    return mp.lu_solve(matrix, right * mp.matrix([-K1qa, q * K0qa, 0, 0]))[0] * c / right


def drag(case, a, b, s, v):
    source = case[1] if case[0] != "sphere" else mp.mpf(0)
    end = 14 / (a - source)  # the rest is below exp(-28) of the integrand's scale
    step = 2 * mp.pi / case[3] if case[0] != "sphere" else 2 / a  # one period of the form factor
    edges = [mp.mpf(0)] + [step / 4**i for i in range(8, 0, -1)] + [step * i for i in range(1, int(end / step) + 2)]
    f = lambda q: q**3 * form_factor(case, q) ** 2 * mp.im(reflected(q, a, b, s, v))
    total = mp.mpf(0)
    for low, high in zip(edges, edges[1:]):
        total += sum(w * f((low + high) / 2 + (high - low) / 2 * x) for x, w in RULE) * (high - low) / 2
    return MU0 / (2 * mp.pi**2) * total


def gauss(n):
    """Nodes and weights from the eigenvalues of Jacobi's matrix (Golub and Welsch)."""
    jacobi = mp.zeros(n)
    for i in range(1, n):
        jacobi[i, i - 1] = jacobi[i - 1, i] = i / mp.sqrt(4 * i * i - 1)
    values, vectors = mp.eigsy(jacobi)
    return [(values[i], 2 * vectors[0, i] ** 2) for i in range(n)]


RULE = gauss(14)


def main():
    agrees_with_mpmath()
    print("// Made by tests/eddy/make_drag_table.py with mpmath at 30 digits; don't edit.")
    print("// Drag in newtons of a magnet of moment 1 A m2 at the speed, in an infinitely long tube.")
    print("#pragma once\n\nnamespace drag_table {\n\nstruct Row {\n    const char* shape;")
    print("    double outer_mm, inner_mm, length_mm, bore_mm, outside_mm, conductivity_S_m, speed_m_s, drag_N;\n};\n\nconstexpr Row rows[] = {")
    for shape, R, r, L, a, b, s in CASES:
        mm = lambda text: mp.mpf(text) / 1000
        for v in SPEEDS:
            f = drag((shape, mm(R), mm(r), mm(L)), mm(a), mm(b), mp.mpf(s), mp.mpf(v))
            print('    {"%s", %s, %s, %s, %s, %s, %s, %s, %s},' % (shape, R, r, L, a, b, s, v, mp.nstr(f, 15, min_fixed=0, max_fixed=0)), flush=True)
    print("};\n\n} // namespace drag_table")


if __name__ == "__main__":
    main()
