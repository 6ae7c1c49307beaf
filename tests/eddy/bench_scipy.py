#!/usr/bin/env python3
"""Times a plain adaptive quadrature (scipy) of the drag integral, for tests/eddy/bench_drag.sh."""
import time

try:
    from scipy.integrate import quad
    from scipy.special import ive, kve
except ImportError as error:
    raise SystemExit("| plain scipy quadrature | skipped: %s |" % error)
import numpy as np

R, L, B = 6 / 6.5, 10 / 6.5, 7.5 / 6.5  # in bore radii


def integrand(x, u):
    y = np.sqrt(complex(x * x, -u * x))
    outside = -x * kve(0, x * B) / kve(1, x * B)
    back = (y * kve(0, y * B) + outside * kve(1, y * B)) / (y * ive(0, y * B) - outside * ive(1, y * B)) * np.exp(-2 * y * (B - 1))
    # ive scales by exp(-|Re z|), kve by exp(z): bring both to exp(-z), exp(z).
    back *= np.exp(1j * (y * B).imag)
    i = [ive(n, y) * np.exp(-1j * y.imag) for n in (0, 1)]
    slope, value = y * (back * i[0] - kve(0, y)), back * i[1] + kve(1, y)
    c = (slope * kve(1, x) + x * kve(0, x) * value) / (x * ive(0, x) * value - slope * ive(1, x))
    s = 2 * ive(1, x * R) / (x * R) * np.sinc(x * L / 2 / np.pi)
    return x**3 * s * s * c.imag * np.exp(-2 * x * (1 - R))


start = time.process_time()
turns = 5
for k in range(turns):
    value = quad(integrand, 0, 120, args=(10.0 + k,), epsrel=1e-6, limit=400)[0]
print("| plain scipy quadrature of the same integral, one value | %.3g ms |" % (1e3 * (time.process_time() - start) / turns))
