"""Benchmark of the ranking (not a test): 100,000 invented metals ranked by us, by a numpy program that does the same work, and one
sweep over the memory that all samples would take, in turn. Needs Debian's python3-numpy, which nothing else needs.
Prints the report.   rank.py BUILD [TIMES] [METALS]"""
import os
import statistics
import sys

from timing import median_ratio, run, shown

HERE = os.path.dirname(os.path.abspath(__file__))


def figures(words):
    """The last of each figure: peaks grow."""
    return {key: float(value) for key, value, *_ in (line.split() for line in run(words)[2].splitlines())}


def main():
    build, times, metals = sys.argv[1], int((sys.argv[2:] or ["3"])[0]), (sys.argv[3:] or ["100000"])[0]
    runs = []
    for _ in range(times):
        runs.append({**figures(["/usr/bin/python3", os.path.join(HERE, "rank_numpy.py"), metals, "1000"]),
                     **figures([os.path.join(build, "tests/bench_rank"), metals])})
    of = {key: [r[key] for r in runs] for key in runs[0]}
    print(f"# Ranking of {int(metals):,} metals\n")
    print(f"Invented metals by conductivity / (density * price); made by tests/bench/rank.py; processor time of one thread, medians of {times} runs in turn.")
    print("Sweep: reading and writing once the memory that 1,000 samples of every metal would take (we keep none of them).\n")
    print("| what | time | numpy / this | this / sweep |\n|---|---|---|---|")
    for key, baseline, what in (("rank_0", "numpy_0", "Pourbook, no samples: figures found in the records, ordered at three price forms"),
                                ("numpy_0", "numpy_0", "numpy, no samples: arithmetic and order of figures already resolved"),
                                ("rank_1000", "numpy_1000", "Pourbook, 1,000 samples each, ranks and ties of the first 300"),
                                ("numpy_1000", "numpy_1000", "numpy, the same")):
        print(f"| {what} | {shown(of[key])} | {median_ratio(of[baseline], of[key]):.3g} | {median_ratio(of[key], of['sweep']):.3g} |")
    print(f"| one sweep over that memory | {shown(of['sweep'])} | | 1 |\n")
    catalogue, peak = (statistics.median(of[key]) for key in ("catalogue_MB", "peak_MB"))
    print(f"Peak memory of the ranking beyond the catalogue's {catalogue:.0f} MB: {peak - catalogue:.0f} MB "
          f"(the samples together would take {int(metals) * 1000 * 8 / 1e6:.0f} MB).")


main()
