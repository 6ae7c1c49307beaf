#!/usr/bin/env python3
"""A ball with its poles across the tube against a three-dimensional finite-element solution (gmsh mesh, GetDP; Debian packages).

Usage: run_getdp_across.py POURBOOK [--report FILE.md]. An eighth of the wall in hexahedra, thin to thick; the potential of the free charges that
the moving field drives together, and the power of what then flows, over that of a ball with its poles along the tube, whose law is closed.
Two meshes, the finer with half the spacing; their difference tells the elements' own error. Within 0.2 % of the program's two slow fall times
in 50 m of tube. Where gmsh or getdp can't be installed the test prints why and is skipped (exit 77).
"""
import json
import math
import os
import shutil
import subprocess
import sys
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
WALLS = [1.02, 1.2, 2.0]
LIMIT = 2e-3


def program(pourbook, b):
    words = [pourbook, "drop", "--magnet", "sphere:18mm", "--br", "1.3T", "--recoil-permeability", "1", "--magnet-mass", "4g", "--tube", "20mm:%gmm:50m" % (20 * b),
             "--resistivity", "58MS/m", "--samples", "10", "--json"]
    answer = json.loads(subprocess.run(words, check=True, capture_output=True, text=True).stdout)
    return answer["fall_time_across_s"] / answer["fall_time_s"]


def elements(folder, b, finer):
    layers = max(2, round(8 * math.log(b))) * finer
    numbers = {"b": b, "nr": layers, "na": 16 * finer, "nz": 50 * finer, "grow": 1.05 if finer == 1 else math.sqrt(1.05)}
    mesh = ["gmsh", "across.geo", "-3", "-format", "msh2", "-o", "across.msh"]
    for key, value in numbers.items():
        mesh += ["-setnumber", key, repr(value)]
    for words in (mesh, ["getdp", "across.pro", "-msh", "across.msh", "-solve", "Flow", "-pos", "power"]):
        subprocess.run(words, cwd=folder, check=True, capture_output=True, text=True, timeout=600)
    with open(os.path.join(folder, "power.txt")) as file:
        power = 8 * float(file.read().split()[-1])
    return power / (15 / 1024 * (4 * math.pi) ** 2 * (1 - b**-3))  # mu0 m / (4 pi) = 1


def main(arguments):
    for tool in ("gmsh", "getdp"):
        if not shutil.which(tool):
            print("skipped: %s is not installed (apt-get install gmsh getdp)" % tool)
            return 77
    pourbook = os.path.abspath(arguments[0])
    rows, bad = [], 0
    with tempfile.TemporaryDirectory() as folder:
        for name in ("across.geo", "across.pro"):
            shutil.copy(os.path.join(HERE, "getdp", name), folder)
        for b in WALLS:
            coarse, fine, ours = elements(folder, b, 1), elements(folder, b, 2), program(pourbook, b)
            theirs = fine + (fine - coarse) / 3  # the error falls as the square of the spacing
            good = abs(ours / theirs - 1) < LIMIT
            bad += not good
            rows.append("| %g | %.5f | %.5f | %.5f | %.5f | %+.3f %% |" % (b, coarse, fine, theirs, ours, 100 * (ours / theirs - 1)))
            print(rows[-1] + ("" if good else "  TOO FAR"), flush=True)
    if "--report" in arguments:
        with open(arguments[arguments.index("--report") + 1], "w") as file:
            file.write("# A ball across the tube against finite elements in three dimensions\n\nDrag with the poles across over that with the poles along, at low speed; made by tests/eddy/run_getdp_across.py.\n\n"
                       "| outer over bore radius | coarse mesh | half the spacing | carried to no spacing | Pourbook | difference |\n|---|---|---|---|---|---|\n" + "\n".join(rows) + "\n")
    print("%d comparisons, %d too far" % (len(rows), bad))
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
