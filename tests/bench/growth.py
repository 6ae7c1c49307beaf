"""How the time grows with what is given: metals, samples, rows of a price list, triangles of a part, entries of one's own. Each beside a
baseline where there is one that does the same. Prints the report; the curves are drawn by our own charts.
growth.py BUILD FOLDER_FOR_CURVES [TIMES] [DECADES]   (DECADES: how many powers of ten from the smallest)"""
import math
import os
import statistics
import struct
import subprocess
import sys
import tempfile

from timing import in_turn, run, shown

HERE = os.path.dirname(os.path.abspath(__file__))
BUILD, CURVES = os.path.abspath(sys.argv[1]), sys.argv[2]
TIMES, DECADES = (int(w) for w in (sys.argv[3:] + ["3", "5"][len(sys.argv) - 3:])[:2])
PROGRAM = os.path.join(BUILD, "pourbook")
METALS = ["copper", "tin", "zinc", "silver", "aluminium", "lead", "nickel", "sterling-silver"]


def sizes(smallest, most):
    return [smallest * 10**k for k in range(DECADES) if smallest * 10**k <= most]


def processor_s(*words):
    return lambda: run(list(words))[1]


def figure(key, *words):
    def seconds():
        return float(next(line.split()[1] for line in run(list(words))[2].splitlines() if line.startswith(key + " ")))
    return seconds


def metals(_, n):
    numpy = ["/usr/bin/python3", os.path.join(HERE, "rank_numpy.py"), str(n), "1000"]
    return figure("rank_1000", os.path.join(BUILD, "tests/bench_rank"), str(n)), figure("numpy_1000", *numpy)


def samples(_, n):
    return processor_s(PROGRAM, "rank", "--goal", "braking-per-cost", "--samples", str(n)), None


def price_list(path, n):
    with open(path, "w", encoding="utf-8") as f:
        f.write("metal,price,date,seller,form,note\n")
        for i in range(n):
            day = f"{2000 + i // 40000:04d}-{1 + i // 28 % 12:02d}-{1 + i % 28:02d}"
            f.write(f"{METALS[i % 8]},{1 + i % 9973 / 100:.2f} USD/kg,{day},seller {i},bar,row {i}\n")


def rows(folder, n):
    csv = os.path.join(folder, "prices.csv")
    price_list(csv, n)

    def afresh(name, *words):
        def seconds():
            file = os.path.join(folder, name)
            if os.path.exists(file):
                os.remove(file)
            return run([w.replace("FILE", file) for w in words])[1]
        return seconds
    return afresh("own", PROGRAM, "--workshop", "FILE", "import", "price", csv), afresh("bare", "sqlite3", "FILE", ".mode csv", f".import {csv} price")


def sphere(path, n):
    """A ball of 20 mm, binary STL, about n triangles: bands of a globe."""
    bands = max(3, round(math.sqrt(n / 4)))
    circle = [(math.cos(math.pi * k / bands), math.sin(math.pi * k / bands)) for k in range(2 * bands)]

    def at(i, k):  # the poles and the seam are met exactly
        across, along = 20 * circle[i][1] if 0 < i < bands else 0, circle[k % (2 * bands)]
        return across * along[0], across * along[1], 20 * circle[i][0]
    out = []
    for i in range(bands):
        for k in range(2 * bands):
            a, b, c, d = at(i, k), at(i + 1, k), at(i + 1, k + 1), at(i, k + 1)
            out += ([(a, b, c)] if i < bands - 1 else []) + ([(a, c, d)] if i else [])
    with open(path, "wb") as f:
        f.write(b"\0" * 80 + struct.pack("<I", len(out)))
        for triangle in out:
            f.write(struct.pack("<12fH", 0, 0, 0, *(x for point in triangle for x in point), 0))


def triangles(folder, n):
    path = os.path.join(folder, "ball.stl")
    sphere(path, n)
    volume = ("import numpy,sys; t=numpy.fromfile(sys.argv[1],dtype=[('n','<3f4'),('p','<9f4'),('a','<u2')],offset=84)['p'].reshape(-1,3,3).astype(float); "
              "print(numpy.einsum('ij,ij->',t[:,0],numpy.cross(t[:,1],t[:,2]))/6)")
    return processor_s(PROGRAM, "pour", "copper", "--part", "stl:" + path), processor_s("/usr/bin/python3", "-c", volume, path)


def entries(folder, n):
    own, csv = os.path.join(folder, "entries"), os.path.join(folder, "entries.csv")
    if os.path.exists(own):
        os.remove(own)
    price_list(csv, n)
    run([PROGRAM, "--workshop", own, "import", "price", csv])
    return processor_s(PROGRAM, "--workshop", own, "value", "copper", "price"), processor_s("sqlite3", own, "select count(*) from price")


GROWTH = [  # name, its unit, smallest, most, what is timed, the baseline
    (metals, "metals", 100, 1_000_000, "ranked with 1,000 samples each", "numpy, the same arithmetic and order"),
    (samples, "samples", 10, 100_000, "`rank --goal braking-per-cost --samples N`", None),
    (rows, "rows", 100, 1_000_000, "`import price` of a list", "`sqlite3 .import` into a bare table"),
    (triangles, "triangles", 100, 1_000_000, "`pour copper --part stl:FILE`", "numpy: the volume alone"),
    (entries, "own prices", 100, 1_000_000, "`value copper price` beside them", "sqlite3: counting them"),
]


def curve(name, unit, points):
    """Our own chart: name, x, y a line."""
    file = os.path.join(CURVES, f"growth-{name}.svg")
    text = "".join(f"{who}\t{n}\t{s}\n" for who, n, s in points)
    subprocess.run([os.path.join(BUILD, "growth-chart"), file, f"Time against {unit}", unit], input=text, text=True, check=True)
    return os.path.basename(file)


def slope(points):
    """The power of n between the last two sizes."""
    (n1, s1), (n2, s2) = points[-2:]
    return math.log(s2 / s1) / math.log(n2 / n1)


def grown(make, unit, smallest, most, what, baseline, folder):
    print(f"\n## {unit[0].upper() + unit[1:]}\n\n{what[0].upper() + what[1:]}; baseline: {baseline or 'none'}.\n")
    print("| " + unit + " | time | baseline | ratio |\n|---:|---:|---:|---:|")
    ours, points = [], []
    for n in sizes(smallest, most):
        program, beside = make(folder, n)
        taken = in_turn(TIMES, *([program, beside] if beside else [program]))
        ours.append((n, max(statistics.median(taken[0]), 1e-6)))
        points.append(("Pourbook", *ours[-1]))
        if beside:
            points.append(("baseline", n, max(statistics.median(taken[1]), 1e-6)))
        ratio = f"{statistics.median(a / b for a, b in zip(*taken) if b > 0):.3g}" if beside and all(taken[1]) else ""
        print(f"| {n:,} | {shown(taken[0])} | {shown(taken[1]) if beside else ''} | {ratio} |", flush=True)
    if len(ours) > 1:
        print(f"\nBetween the last two the time grows as the number to the power {slope(ours):.2f}.\n\n![]({curve(make.__name__, unit, points)})")


print(f"# Growth\n\nMade by tests/bench/growth.py; processor time of whole processes (metals: of the ranking alone), medians of {TIMES} runs in turn.")
with tempfile.TemporaryDirectory() as work:
    os.environ["XDG_DATA_HOME"] = work
    for case in GROWTH:
        grown(*case, work)
