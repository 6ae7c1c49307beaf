"""The same work as tests/bench/rank.cpp in numpy (Debian python3-numpy): the merit of invented metals from resolved figures, with
samples of each, medians and 90 % intervals, order, and for the first 300 the intervals of rank and ties. In blocks, so that the
memory stays that of one block."""
import sys
import time

import numpy as np

COMPARED = 300


def between(rng, n, low, ratio):
    return low * ratio ** rng.random(n)


def main(n, samples):
    rng = np.random.default_rng(1)
    resistivity, density, price = between(rng, n, 1.5e-8, 100), between(rng, n, 1e3, 20), between(rng, n, 1, 1000)
    spread = [np.log1p(x) for x in (0.02, 0.01, 0.1 / 3 ** 0.5)]
    start = time.process_time()
    order = np.argsort(-(1 / (resistivity * density * price)))
    print(f"numpy_0 {time.process_time() - start:.4f}")

    start = time.process_time()
    block = 500
    quantiles = np.empty((n, 3))
    highest = np.empty(n)

    def merit(rows, seed):
        r = np.random.default_rng(seed)
        noise = lambda value, u: value[rows][:, None] * np.exp(u * r.standard_normal((len(value[rows]), samples)))
        return 1 / (noise(resistivity, spread[0]) * noise(density, spread[1]) * noise(price, spread[2]))

    for seed, at in enumerate(range(0, n, block)):
        rows = slice(at, at + block)
        m = merit(rows, seed)
        highest[rows] = m.max(axis=1)
        quantiles[rows] = np.quantile(m, [0.05, 0.5, 0.95], axis=1).T
    order = np.argsort(-quantiles[:, 1])
    near = order[:COMPARED]
    seeds = near // block
    kept = np.stack([merit(slice(i, i + 1), int(s) + n) for i, s in zip(near, seeds)])[:, 0, :]
    first = kept.argmax(axis=0)
    ranks = (-kept).argsort(axis=0).argsort(axis=0) + 1
    for rows in np.array_split(np.flatnonzero(highest > kept.min()), 100):
        rows = rows[~np.isin(rows, near)]
        if len(rows):
            m = merit(rows, int(rows[0]))
            for s in range(samples):
                ranks[:, s] += len(m) - np.searchsorted(np.sort(m[:, s]), kept[:, s])
    low, high = np.quantile(ranks, [0.05, 0.95], axis=1)
    ties = sum(int(((kept[i] > kept[i + 1:]).mean(axis=1) < 0.95).sum()) for i in range(len(kept)))
    print(f"numpy_{samples} {time.process_time() - start:.4f}")
    print(f"check {first[0]} {low[0]:.0f} {high[0]:.0f} {ties}")


main(int(sys.argv[1]), int(sys.argv[2]))
