"""Kills the program with -9 at seeded random moments of imports and edits of one workshop file, again and again. After
each: the file opens, SQLite's integrity_check is ok, what was reported as done is all there, what was not is there whole
or not at all.   kill.py [KILLS] [SEED]    (a short run is part of the tests; the campaign is 300)"""
import json
import os
import random
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time

PROGRAM = os.environ["POURBOOK"]
KILLS = int(sys.argv[1]) if len(sys.argv) > 1 else 15
random.seed(int(sys.argv[2]) if len(sys.argv) > 2 else 1)
ROWS = 3000
failures = []


def run(*words):
    done = subprocess.run([PROGRAM, "--workshop", FILE, *words], capture_output=True, text=True, timeout=300)
    return done.returncode, done.stdout, done.stderr


def lots():
    code, out, err = run("stock", "--json")
    if code != 0:
        failures.append(f"after a kill the file does not open: {err}")
        return {}
    return {e["lot"]: e["mass"] for e in json.loads(out)}


def sound():
    verdict = sqlite3.connect(FILE).execute("PRAGMA integrity_check").fetchone()[0]
    if verdict != "ok":
        failures.append(f"integrity_check: {verdict}")


def next_step(i, known):
    """Words of a command, and what the shelf holds after it."""
    after = dict(known)
    kind = random.choice(["import", "import", "edit", "remove", "add", "undo"])
    if kind == "import" or len(known) < 2:
        path = os.path.join(FOLDER, "list.csv")
        with open(path, "w", encoding="utf-8") as f:
            f.write("lot,metal,mass [g]\n")
            for row in range(ROWS):
                lot, mass = f"lot-{random.randrange(4 * ROWS)}-{row}", random.randrange(1, 999)
                f.write(f"{lot},copper,{mass}\n")
                after[lot] = f"{mass} g"
        return ["import", "stock", path], after
    lot = random.choice(sorted(known))
    if kind == "edit":
        after[lot] = f"{i} kg"
        return ["stock", "edit", lot, "--mass", f"{i} kg"], after
    if kind == "remove":
        del after[lot]
        return ["stock", "remove", lot], after
    if kind == "undo" and HISTORY:
        return ["undo"], HISTORY[-1]
    after[f"new-{i}"] = "1 kg"
    return ["stock", "add", "tin", "1 kg", "--lot", f"new-{i}"], after


with tempfile.TemporaryDirectory(prefix=f"pourbook-kill-{os.getpid()}-") as FOLDER:
    FILE = os.path.join(FOLDER, "workshop.sqlite")
    HISTORY = []
    state = {}
    kept = gone = finished = 0
    length = 0.5
    for i in range(KILLS):
        words, after = next_step(i, state)
        before = state
        program = subprocess.Popen([PROGRAM, "--workshop", FILE, *words], stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        started = time.monotonic()
        try:
            program.wait(timeout=random.uniform(0, 1.2 * length))
        except subprocess.TimeoutExpired:
            program.send_signal(signal.SIGKILL)
        code = program.wait()
        if code == 0:
            length = 0.5 * length + 0.5 * (time.monotonic() - started)
        else:
            length = min(length * 1.1, 30)
        if code not in (0, -signal.SIGKILL):
            failures.append(f"{words[:2]}: exit {code}: {program.stderr.read().decode()}")
        program.stderr.close()
        now = lots()
        if os.path.exists(FILE):
            sound()
        if now == after and now != before:
            kept += 1
            HISTORY = HISTORY[:-1] if words == ["undo"] else HISTORY + [before]
        elif now == before:
            gone += 1
            if code == 0 and after != before:
                failures.append(f"{words[:2]}: reported as done, not there")
        else:
            failures.append(f"{words[:2]}: {len(set(now.items()) ^ set(after.items()))} entries half written")
        finished += code == 0
        state = now
        if len(state) > 5 * ROWS:
            os.remove(FILE)
            state, HISTORY = {}, []
    print(f"{KILLS} rounds: {KILLS - finished} killed, {finished} finished first; change all there {kept}, all gone {gone}")
for failure in failures[:20]:
    print("FAILED:", failure)
print(f"{'failed' if failures else 'passed'}: kill -9, {len(failures)} failures")
sys.exit(1 if failures else 0)
