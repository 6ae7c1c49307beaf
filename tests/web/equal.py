#!/usr/bin/env python3
"""The command line as WebAssembly under node beside the native one: every approved call's answer as text and as JSON, and files of every kind, byte for byte.
JSON prints numbers to the last bit, and the two mathematical libraries round exp, pow and log to different last bits: where the bytes differ, every number
must agree to one part in 1e9 and all else be the same; how far the furthest was off is said.
usage: equal.py COMMAND-LINE.js [NAME-PART ...]        (POURBOOK names the native program)"""
import json
import os
import re
import shlex
import subprocess
import sys
import tempfile
import time

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")
sys.path.insert(0, os.path.join(ROOT, "tests", "cli"))
from support.calls import FREE, SETUP, TUBE  # noqa: E402

NATIVE = os.path.abspath(os.environ["POURBOOK"])
REFERENCE = os.path.join(os.path.dirname(NATIVE), "pourbook-reference.sqlite")
FONTS = ("opentype/inter/Inter-Regular.otf", "opentype/inter/Inter-Italic.otf", "opentype/inter/Inter-SemiBold.otf", "truetype/dejavu/DejaVuSans.ttf")
LAST_BITS = 1e-9  # relative
# In a PDF cairo names each subset of letters by a hash over machine words, of 64 bits here and of 32 there.
SUBSET_NAME = re.compile(rb"/[A-Z]{6}\+(?=Inter|DejaVu)")
RANK = "rank --goal braking-per-cost --samples 200"
FILES = {
    "picture-png": "chart rank --goal braking-per-cost --samples 200 --to OUT.png",
    "picture-svg": "chart rank --goal braking-per-cost --samples 200 --to OUT.svg",
    "picture-pdf": "chart rank --goal braking-per-cost --samples 200 --to OUT.pdf",
    "table-csv": RANK + " --to OUT.csv",
    "table-xlsx": RANK + " --to OUT.xlsx",
    "table-html": RANK + " --to OUT.html",
    "table-md": RANK + " --to OUT.md",
    "table-json": RANK + " --to OUT.json",
    "pour-sheet-pdf": f"pour brass-cartridge {TUBE} --to OUT.pdf",
    "compare-xlsx": "compare copper silver za-12 --show conductivity,density,price --to OUT.xlsx",
    "drop-json": f"drop copper {SETUP} --to OUT.json",
}


class Programs:
    def __init__(self, script, folder):
        self.both = {"native": [NATIVE], "page": ["node", os.path.abspath(script)]}
        brought = os.path.join(folder, "brought", "fonts")
        os.makedirs(brought)
        for font in FONTS:
            os.symlink("/usr/share/fonts/" + font, os.path.join(brought, os.path.basename(font)))
        self.folder, self.seconds = folder, {"native": 0.0, "page": 0.0}
        self.environment = {**os.environ, "SOURCE_DATE_EPOCH": "1795608000", "XDG_DATA_HOME": folder, "LC_ALL": "C.UTF-8", "TZ": "UTC",
                            "POURBOOK_BROUGHT": os.path.dirname(brought)}

    def run(self, which, call, *more):
        """Exit code, both outputs and the files written."""
        there = os.path.join(self.folder, "out")
        os.makedirs(there)
        words = [w.replace("OUT", os.path.join(there, "file")) for w in shlex.split(call)]
        began = time.monotonic()
        done = subprocess.run([*self.both[which], "--reference", REFERENCE, "--workshop", os.path.join(self.folder, "none.sqlite"), *words, *more],
                              capture_output=True, timeout=600, env=self.environment, cwd=self.folder)
        self.seconds[which] += time.monotonic() - began
        files = {}
        for name in sorted(os.listdir(there)):
            with open(os.path.join(there, name), "rb") as file:
                files[name] = SUBSET_NAME.sub(b"/SUBSET+", file.read())
            os.remove(os.path.join(there, name))
        os.rmdir(there)
        return [done.returncode, done.stdout, done.stderr, files]


def first_difference(one, other):
    if isinstance(one, dict):
        return next((f"{n}: " + first_difference(one.get(n, b""), other.get(n, b"")) for n in {*one, *other} if one.get(n) != other.get(n)), "")
    if not isinstance(one, bytes):
        return f"{one} and {other}"
    at = next((i for i, (a, b) in enumerate(zip(one, other)) if a != b), min(len(one), len(other)))
    return f"{len(one)} and {len(other)} bytes, at {at}: {one[max(0, at - 60):at + 40]!r} and {other[max(0, at - 60):at + 40]!r}"


def furthest(one, other):
    """Largest relative difference of two numbers in the same place of two documents; infinite where anything else differs."""
    if isinstance(one, dict) and isinstance(other, dict) and list(one) == list(other):
        return max((furthest(one[k], other[k]) for k in one), default=0.0)
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return max(map(furthest, one, other), default=0.0)
    if one == other:
        return 0.0
    if type(one) is float and type(other) is float:
        return abs(one - other) / max(abs(one), abs(other))
    return float("inf")


def but_for_last_bits(native, page):
    """The largest relative difference, where only the numbers of a JSON answer differ; else infinite."""
    if native[0] != page[0] or native[2:] != page[2:]:
        return float("inf")
    try:
        return furthest(json.loads(native[1]), json.loads(page[1]))
    except ValueError:
        return float("inf")


def main():
    parts = sys.argv[2:]
    asked = [(n, c, []) for n, c in FREE.items()] + [(n + " --json", c, ["--json"]) for n, c in FREE.items() if "OUT" not in c and "--format" not in c and c != "help"]
    asked += [(n, c, []) for n, c in FILES.items()]
    asked = [a for a in asked if not parts or any(p in a[0] for p in parts)]
    unlike, off = 0, []
    with tempfile.TemporaryDirectory() as folder:
        programs = Programs(sys.argv[1], folder)
        for name, call, more in asked:
            native, page = programs.run("native", call, *more), programs.run("page", call, *more)
            if native != page and (apart := but_for_last_bits(native, page)) <= LAST_BITS:
                off.append(apart)
                continue
            for one, other in zip(native, page):
                if one != other:
                    unlike += 1
                    print(f"UNLIKE {name}: {first_difference(one, other)}", flush=True)
                    break
    print(f"answers and files asked: {len(asked)}, equal byte for byte: {len(asked) - unlike - len(off)}, "
          f"JSON but for the last bits of numbers: {len(off)} (furthest {max(off, default=0):.1e}); seconds native {programs.seconds['native']:.0f}, under node {programs.seconds['page']:.0f}")
    return 1 if unlike else 0


sys.exit(main())
