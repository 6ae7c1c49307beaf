#!/usr/bin/env python3
"""Writes tests/unit/eddy/bessel_table.hpp: exp(-z) I0, exp(-z) I1, exp(z) K0, exp(z) K1 at complex z, from mpmath at 30 digits.

Package: python3-mpmath (Debian 12). Usage: make_bessel_table.py > ../unit/eddy/bessel_table.hpp
"""
import mpmath as mp

mp.mp.dps = 40


def number(x):
    return mp.nstr(x, 20, min_fixed=0, max_fixed=0) if abs(x) > 1e-300 else "0.0"


moduli = ["1e-8", "1e-3", "0.1", "0.7", "1.5", "1.999", "2.001", "3.1", "5", "8.5", "13", "19.99", "20.01", "33", "150", "1200", "1e4"]
print("// Made by tests/eddy/make_bessel_table.py with mpmath at 40 digits; don't edit.")
print("#pragma once\n\nnamespace bessel_table {\n\nstruct Row {\n    double x, y; // z = x + i y\n    double value[8]; // scaled I0, I1, K0, K1: real, imaginary\n};\n\nconstexpr Row rows[] = {")
for modulus in moduli:
    for degrees in (0, 20, -45, 60, 80, -89, 90, -90):
        angle = mp.radians(degrees)
        x = float(mp.mpf(modulus) * mp.cos(angle)) if abs(degrees) != 90 else 0.0
        y = float(mp.mpf(modulus) * mp.sin(angle)) if degrees else 0.0
        z = mp.mpc(x, y)
        f = [mp.exp(-z) * mp.besseli(0, z), mp.exp(-z) * mp.besseli(1, z), mp.exp(z) * mp.besselk(0, z), mp.exp(z) * mp.besselk(1, z)]
        print("    {%r, %r, {%s}}," % (x, y, ", ".join(number(p) for w in f for p in (w.real, w.imag))))
print("};\n\n} // namespace bessel_table")
