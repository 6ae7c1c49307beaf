#!/usr/bin/env python3
"""Clicks, drags, turns the wheel and types at random in the real window, seeded, until a time has passed; a crash, an assertion or a sanitizer report is a failure.

Usage: wander.py SECONDS [SEED] [PROGRAM]   a program built with -DPOURBOOK_SANITIZE=ON finds the most (DEVELOPERS.md).
The workshop's file and the state live in a temporary folder; the file is checked at the end.
"""
import os
import random
import sqlite3
import sys
import tempfile
import time

from window import Display, Failure, Window, check

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")
KEYS = ["F1", "F2", "F3", "F4", "F5", "F6", "F7", "F8", "F9", "Return", "Escape", "Tab", "Up", "Down", "Page_Down", "space", "BackSpace"]
CHORDS = ["f", "k", "p", "u", "l", "z", "a", "s", "c"]
WORDS = ["copper", "12mm", "-1", "1e999", "20 degC", "density*", "liquidus < 900 degC", "Ag 92.5 Cu 7.5", "tube:1:2:3", "%", "", "0", "999999999kg", "N42", "é€Ω"]


def drag(w, dice):
    """From anywhere to anywhere: charts are moved, edges of panels and tubes pulled."""
    w.xdotool("mousemove", dice.randrange(1440), dice.randrange(900))
    w.xdotool("mousedown", 1)
    for _ in range(3):
        w.dump()
        w.xdotool("mousemove", dice.randrange(1440), dice.randrange(900))
    w.xdotool("mouseup", 1)
    w.dump()


def step(w, dice):
    roll = dice.random()
    if roll < 0.55:
        items = [n for n, i in w.dump()["items"].items() if i["width"] > 2 and i["height"] > 2]
        if items:
            w.press(dice.choice(items))
    elif roll < 0.75:
        w.key(dice.choice(KEYS))
    elif roll < 0.85:
        w.key("Control_L", dice.choice(CHORDS))
    elif roll < 0.93:
        w.write(dice.choice(WORDS))
    elif roll < 0.97:
        w.xdotool("mousemove", dice.randrange(1440), dice.randrange(900))
        w.xdotool("click", dice.choice([1, 3, 4, 5]))
        w.dump()
    else:
        drag(w, dice)


def until_it_ends(w, dice, end):
    """Steps until the time is over or the window was told to quit; any other end is a failure."""
    steps = 0
    try:
        while time.monotonic() < end:
            step(w, dice)
            steps += 1
    except (ValueError, OSError) as broken:
        code = w.process.wait(60)
        check(code == 0, f"step {steps}: {broken}: the window ended with {code}: {w.process.stderr.read()[-3000:]}")
    finally:
        w.close()
    errors = w.process.stderr.read()
    check("Sanitizer" not in errors and "runtime error" not in errors and "ssert" not in errors, errors[-3000:])
    return steps


def wander(program, seconds, seed):
    dice = random.Random(seed)
    steps = 0
    with tempfile.TemporaryDirectory() as folder, Display() as display:
        os.environ.update(XDG_DATA_HOME=folder, XDG_STATE_HOME=folder, XDG_PICTURES_DIR=folder, HOME=folder)
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            w = Window(program, display, folder, "--state", os.path.join(folder, "view.json"))
            steps += until_it_ends(w, dice, end)
        file = os.path.join(folder, "pourbook", "workshop.sqlite")
        if os.path.exists(file):
            said = sqlite3.connect(file).execute("pragma integrity_check").fetchone()[0]
            check(said == "ok", f"the workshop's file: {said}")
    return steps


def main():
    if len(sys.argv) < 2:
        print(__doc__)
        return 2
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    program = sys.argv[3] if len(sys.argv) > 3 else os.environ.get("POURBOOK", os.path.join(ROOT, "build", "pourbook"))
    try:
        steps = wander(program, float(sys.argv[1]), seed)
    except Failure as fault:
        print(f"FAILED with seed {seed}: {fault}")
        return 1
    print(f"wander: {steps} steps with seed {seed}, passed")
    return 0


if __name__ == "__main__":
    sys.exit(main())
