"""How many small faults the tests see: draws changes of the core by a seed, builds each, runs unit, published and laws. By hand, never in the suite.

    python3 tests/tools/mutate.py [--count 80] [--seed 1] [--folder DIR] [--only TEXT]

One change at a time to a copy of the committed tree: an operator, a constant or a condition, drawn evenly over all places of app/core where one
stands. A change that does not compile is drawn again. At the end: how many were seen, and each that was not, for a person to judge.
"""
import argparse
import os
import random
import re
import resource
import signal
import subprocess
import tempfile

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")
PROGRAMS = ("unit", "published", "laws")
LONGEST_S = 600  # of a processor; a run that does not end is seen too

SWAPS = {" + ": " - ", " - ": " + ", " * ": " / ", " / ": " * ", " < ": " <= ", " <= ": " < ", " > ": " >= ", " >= ": " > ", " == ": " != ",
         " != ": " == ", " && ": " || ", " || ": " && ", "std::min(": "std::max(", "std::max(": "std::min(", "std::sin(": "std::cos(",
         "std::hypot(": "std::max<double>("}
NUMBER = re.compile(r"(?<![\w.\]])(\d+\.?\d*(?:e[+-]?\d+)?)(?![\w.])")
CONDITION = re.compile(r"\b(if|while) \((.*)\)(?= [\w{\"]|$| \{)")


def hidden(line):
    """The line with strings, characters and comments blanked, so that nothing in them is changed."""
    line = re.sub(r'"(?:\\.|[^"\\])*"|\'(?:\\.|[^\'\\])\'', lambda m: "#" * len(m.group()), line)
    return re.sub(r"//.*", lambda m: "#" * len(m.group()), line)


def other_number(text):
    if "." not in text and "e" not in text:
        return str(int(text) + 1)
    return f"{text} * 1.2" if float(text) else "0.1"


def changes_of(line):
    """All single changes of a line: (column, old, new)."""
    seen = hidden(line)
    if seen.lstrip().startswith(("#", "static_assert", "template")):
        return []
    out = [(m.start(), old, new) for old, new in SWAPS.items() for m in re.finditer(re.escape(old), seen)]
    out += [(m.start(1), m.group(1), other_number(m.group(1))) for m in NUMBER.finditer(seen) if "static_cast" not in seen]
    out += [(m.start(2), line[m.start(2):m.end(2)], "!(" + line[m.start(2):m.end(2)] + ")") for m in CONDITION.finditer(seen) if ";" not in m.group(2)]
    return out


def all_changes(root, only):
    files = sorted(os.path.join(d, f) for d, _, names in os.walk(os.path.join(root, "app/core")) for f in names if f.endswith(".cpp"))
    for file in files:
        with open(file, encoding="utf-8") as source:
            for number, line in enumerate(source.read().splitlines(), 1):
                for column, old, new in changes_of(line):
                    if only in f"{file}:{number}":
                        yield file, number, column, old, new


def build(root, folder):
    return subprocess.run(["ninja", "-C", folder, *PROGRAMS], cwd=root, capture_output=True).returncode == 0


def seen_by(folder):
    for program in PROGRAMS:
        run = subprocess.run([os.path.join(folder, "tests", program), "--abort", "~[campaign]"], capture_output=True,
                             preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_CPU, (LONGEST_S, LONGEST_S + 5)))
        if run.returncode:
            return program + (" (without end)" if run.returncode == -signal.SIGXCPU else "")
    return ""


def changed(text, number, column, old, new):
    lines = text.split("\n")
    line = lines[number - 1]
    lines[number - 1] = line[:column] + new + line[column + len(old):]
    return "\n".join(lines)


def main():
    wanted = argparse.ArgumentParser()
    wanted.add_argument("--count", type=int, default=80)
    wanted.add_argument("--seed", type=int, default=1)
    wanted.add_argument("--folder", default=os.path.join(tempfile.gettempdir(), "pourbook-mutate"))
    wanted.add_argument("--only", default="", help="changes of files whose path and line contain this")
    wanted = wanted.parse_args()
    root, folder = os.path.join(wanted.folder, "tree"), os.path.join(wanted.folder, "build")
    os.makedirs(root, exist_ok=True)
    subprocess.run(f"git -C '{ROOT}' archive HEAD | tar -x -m -C '{root}'", shell=True, check=True)
    subprocess.run(["cmake", "-S", root, "-B", folder, "-G", "Ninja", "-DCMAKE_UNITY_BUILD=OFF", "-DPOURBOOK_WERROR=OFF", "-DCMAKE_BUILD_TYPE=None",
                    "-DCMAKE_CXX_FLAGS=-O1"], check=True, capture_output=True)
    if not build(root, folder) or seen_by(folder):
        raise SystemExit("the tree does not build or its tests fail without a change")
    places = list(all_changes(root, wanted.only))
    random.Random(wanted.seed).shuffle(places)
    print(f"{len(places)} places, seed {wanted.seed}", flush=True)
    tried, lived = 0, []
    for file, number, column, old, new in places:
        if tried == wanted.count:
            break
        with open(file, encoding="utf-8") as source:
            whole = source.read()
        with open(file, "w", encoding="utf-8") as source:
            source.write(changed(whole, number, column, old, new))
        if build(root, folder):
            tried += 1
            by = seen_by(folder)
            what = f"{os.path.relpath(file, root)}:{number}:{column + 1}: '{old}' -> '{new}' in: {whole.splitlines()[number - 1].strip()}"
            print(f"{tried:3} {by or 'LIVED':10} {what}", flush=True)
            if not by:
                lived.append(what)
        with open(file, "w", encoding="utf-8") as source:
            source.write(whole)
    print(f"seen {tried - len(lived)} of {tried}; lived:")
    print("\n".join(lived))


main()
