"""A price list of 1,000,000 rows imported by the program (checked, keyed, journalled, undoable) beside `sqlite3 .import` of the
same file into a bare table, in one run, each three times in turn. Needs the package sqlite3 (only for this benchmark).
Prints the report.   bench_import.py PROGRAM [TIMES]"""
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time

PROGRAM, ROWS, TIMES = sys.argv[1], 1_000_000, int((sys.argv[2:] or ["3"])[0])
METALS = ["copper", "tin", "zinc", "silver", "aluminium", "lead", "nickel", "sterling-silver"]


def timed(*words, **more):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.monotonic()
    done = subprocess.run(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, **more)
    wall = time.monotonic() - start
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode != 0:
        sys.exit(f"{words[0]}: {done.stderr[-300:]}")
    return wall, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


with tempfile.TemporaryDirectory() as folder:
    csv = os.path.join(folder, "prices.csv")
    with open(csv, "w", encoding="utf-8") as f:
        f.write("metal,price,date,seller,form,note\n")
        for i in range(ROWS):
            day = f"{2000 + i // 40000:04d}-{1 + i // 28 % 12:02d}-{1 + i % 28:02d}"
            f.write(f"{METALS[i % 8]},{1 + i % 9973 / 100:.2f} USD/kg,{day},seller {i},bar,row {i}\n")
    ours, theirs, undone = [], [], []
    for _ in range(TIMES):
        own = os.path.join(folder, "own.sqlite")
        ours.append(timed(PROGRAM, "--workshop", own, "import", "price", csv))
        size = os.path.getsize(own)
        undone.append(timed(PROGRAM, "--workshop", own, "undo"))
        os.remove(own)
        bare = os.path.join(folder, "bare.sqlite")
        theirs.append(timed("sqlite3", bare, ".mode csv", f".import {csv} price"))
        os.remove(bare)
    middle = lambda runs, i: statistics.median(r[i] for r in runs)
    cpu = open("/proc/cpuinfo", encoding="utf-8").read().split("model name\t: ")[1].split("\n")[0]
    print(f"""# Import of {ROWS:,} rows beside `sqlite3 .import`

Made by `tests/workshop/bench_import.py`; medians of {TIMES} runs in turn, {os.path.getsize(csv) / 1e6:.0f} MB of CSV, {cpu}. The bare import puts
texts into one table without a key; the program reads units, resolves metals, checks dates and prices, seals every row,
keeps a unique key and the journal for undo, and writes all or nothing.

| | wall s | processor s | rows a second (processor) |
|---|---|---|---|
| `pourbook import price` | {middle(ours, 0):.1f} | {middle(ours, 1):.1f} | {ROWS / middle(ours, 1):,.0f} |
| `sqlite3 .import` | {middle(theirs, 0):.1f} | {middle(theirs, 1):.1f} | {ROWS / middle(theirs, 1):,.0f} |
| ratio | {middle(ours, 0) / middle(theirs, 0):.1f} | {middle(ours, 1) / middle(theirs, 1):.1f} | |
| `pourbook undo` of it | {middle(undone, 0):.1f} | {middle(undone, 1):.1f} | |

The file is {size / 1e6:.0f} MB afterwards.""")
