"""Many programs at one workshop's file at the same time, a file that isn't there yet: every entry reported as added is there, none
twice, what was refused for a lock says so, the file is sound.   crowd.py [PROGRAMS]    (a short run is part of the tests; the campaign is 60)"""
import os
import sqlite3
import subprocess
import sys
import tempfile

from shop import PROGRAM, check, ended, on

PROGRAMS = int(sys.argv[1]) if len(sys.argv) > 1 else 12


def together(calls):
    """All begun before any is waited for. (exit code, answer, fault) of each."""
    running = [subprocess.Popen([PROGRAM, "--workshop", FILE, *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) for words in calls]
    return [(p.returncode, out, err) for p in running for out, err in [p.communicate(timeout=300)]]


def kept(where):
    lots = [entry["lot"] for entry in on(FILE).answer("stock")]
    check(len(lots) == len(set(lots)), f"{where}: an entry stands twice")
    verdict = sqlite3.connect(FILE).execute("PRAGMA integrity_check").fetchone()[0]
    check(verdict == "ok", f"{where}: {verdict}")
    return set(lots)


def added_by(calls, ended_as, where):
    """The lots of the calls that ended well; the others were refused in one line."""
    for words, (code, _, err) in zip(calls, ended_as):
        check(code == 0 or (code in (4, 5) and err.count("\n") == 1), f"{where}: {words}: exit {code}: {err!r}")
    return {words[-1] for words, (code, _, _) in zip(calls, ended_as) if code == 0 and words[:2] == ["stock", "add"]}


def add(name):
    return ["stock", "add", "copper", "1 kg", "--lot", name]


def listed(name, rows):
    path = os.path.join(FOLDER, f"{name}.csv")
    with open(path, "w", encoding="utf-8") as f:
        f.write("lot,metal,mass [g]\n" + "".join(f"{name}-{i},tin,{i + 1}\n" for i in range(rows)))
    return ["import", "stock", path]


with tempfile.TemporaryDirectory(prefix=f"pourbook-crowd-{os.getpid()}-") as FOLDER:
    FILE = os.path.join(FOLDER, "w.sqlite")
    first = [add(f"first-{i}") for i in range(PROGRAMS)]
    there = added_by(first, together(first), "a new file")
    check(kept("a new file") == there and len(there) == PROGRAMS, f"a new file: {len(there)} of {PROGRAMS} added")

    mixed = [add(f"mixed-{i}") for i in range(PROGRAMS // 2)] + [["backup", os.path.join(FOLDER, f"copy-{i}")] for i in range(PROGRAMS // 4)]
    mixed += [listed(f"list-{i}", 300) for i in range(PROGRAMS // 4)]
    ended_as = together(mixed)
    there |= added_by(mixed, ended_as, "adds, lists, backups")
    lists_in = {f"list-{i}-{row}" for i in range(PROGRAMS // 4) for row in range(300) if ended_as[len(mixed) - PROGRAMS // 4 + i][0] == 0}
    check(kept("adds, lists, backups") == there | lists_in, "adds, lists, backups: what is there is not what was reported")
    for words, (code, _, _) in zip(mixed, ended_as):
        if words[0] == "backup" and code == 0:
            check(on(words[1]).run("stock")[0] == 0, f"{words}: the copy can't be read")

    # taken back while others add: as many are gone as were reported undone
    before = kept("undo")
    taken = [add(f"late-{i}") for i in range(PROGRAMS // 2)] + [["undo"]] * (PROGRAMS // 2)
    ended_as = together(taken)
    late = added_by(taken, ended_as, "undo")
    undone = sum(code == 0 for words, (code, _, _) in zip(taken, ended_as) if words == ["undo"])
    changes = [c for c in on(FILE).answer("changes") if c["undone"]]
    check(kept("undo") <= before | late, "undo: an entry nobody added")
    check(len(changes) <= undone, f"undo: {len(changes)} changes are undone, {undone} were reported")

    # a backup put back while others add: every program ends with the whole file of one moment or the other
    copy = os.path.join(FOLDER, "copy")
    check(on(FILE).run("backup", copy)[0] == 0, "backup")
    swapped = [["backup", "--restore", copy]] * (PROGRAMS // 6) + [add(f"swap-{i}") for i in range(PROGRAMS // 2)]
    added_by(swapped, together(swapped), "restore")
    kept("restore")
    print(f"{PROGRAMS} programs at once: {len(there) + len(lists_in)} entries kept, {undone} undone")

ended("crowd")
