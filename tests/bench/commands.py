"""Benchmark of whole commands: start to answer. Beside `value` one select of the package sqlite3 on the same file; beside a start by
app/run.sh the program itself. Prints the report.   commands.py BUILD [TIMES]"""
import os
import sys

from timing import in_turn, median_ratio, run, shown

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")
build, times = sys.argv[1], int((sys.argv[2:] or ["15"])[0])
program = os.path.join(build, "pourbook")
select = ["sqlite3", os.path.join(build, "pourbook-reference.sqlite"), "select count(*) from record where metal = 'copper'"]
FALL = ["--magnet", "cylinder:15mmx15mm", "--grade", "N42", "--tube", "18mm:24mm:400mm"]
os.environ["POURBOOK_BUILD"] = os.path.abspath(build)

print("# Whole commands\n")
print(f"Made by tests/bench/commands.py; processor time, medians of {times} runs in turn, ratios pair by pair.\n")
print("| command | time | baseline | time | ratio |\n|---|---|---|---|---|")
for words in (["value", "copper", "resistivity"], ["sheet", "copper"], ["rank", "--goal", "braking-per-cost", "--samples", "0"],
              ["rank", "--goal", "braking-per-cost"], ["rank", "--goal", "longest-fall", *FALL], ["metals"]):
    ours, theirs = in_turn(times, [program, *words], select)
    print(f"| `{' '.join(words)}` | {shown(ours)} | one select by sqlite3 | {shown(theirs)} | {median_ratio(ours, theirs):.3g} |")
wall = lambda words: lambda: run(words)[0]
ours, theirs = in_turn(times, wall([os.path.join(ROOT, "app/run.sh"), "--version"]), wall([program, "--version"]))
print(f"| second start, `app/run.sh --version` (wall) | {shown(ours)} | `pourbook --version` (wall) | {shown(theirs)} | {median_ratio(ours, theirs):.3g} |")
