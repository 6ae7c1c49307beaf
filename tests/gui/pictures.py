#!/usr/bin/env python3
"""Pictures of every view in the real window, to be looked at: four sizes, dark and light, at the first start, with ten pins and with a full shelf.

Usage: pictures.py FOLDER [PROGRAM] [--sizes 1280x720,...] [--states first,ten,shelf] [--light yes|no] [--views start,...] [--room]
Each lies in FOLDER as VIEW-SIZE-STATE-dark.png; with --room instead each kind of picture in the frames of the picture room, as KIND-16x9.png ...
Needs Xvfb, xdotool and ImageMagick.
"""
import argparse
import json
import os
import subprocess
import sys
import tempfile
import time

from window import Display, Failure, Window

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")
SCALE = {"2560x1440": "2"}  # of a display with small pixels; the others 1
SIZES = ["1280x720", "1440x900", "1920x1080", "2560x1440"]
PINS = ["za-12", "aluminium-a356-cast", "copper-dhp", "bronze-gunmetal-88-10-2", "bronze-silicon-cast", "brass-cartridge", "zinc", "aluminium-6061", "iron-grey",
        "tin"]
SHELF = """stock add copper-dhp 2kg --price "9.50 EUR/kg" --seller "the scrap yard"
stock add za-12 3kg --price "4.50 EUR/kg" --seller "a foundry's supplier"
stock add bronze-silicon-cast 1.4kg --price "12 EUR/kg" --condition as-cast --note "sprues of the last pour"
stock add aluminium-a356-cast 5.2kg --price "2.10 EUR/kg" --note "wheels"
stock add bronze-gunmetal-88-10-2 800g --price "11 EUR/kg"
stock add tin 250g --price "38 EUR/kg"
stock add zinc 1kg
rate add EUR 1.08 --date 2026-11-30 --source "a bank"
price add tin "41 EUR/kg" --date 2026-11-20 --seller "a shop"
profile set --furnace "electric, with a lid" --furnace-maximum "1150 degC" --power "2 kW" --lift-maximum "10 kg" --currency EUR
crucible add a4 clay-graphite --volume "500 cm3"
mould add shell "fused silica" --process shell --maximum "870 degC"
trial add drop --metal za-12 --magnet cylinder:20mmx20mm --grade N52 --tube 22mm:38mm:300mm --times "5.4s,5.5s,5.4s" --note "first pour of the sleeve"
trial add weighing --metal za-12 --mass 620g --mass-in-water 516g
goal add heat-per-euro "thermal_conductivity / (density * price)" --sentence "heat for the money"
"""
# name, the keys and clicks that lead there from the one before
WALK = [
    ("start", ["F12"]), ("metals", ["F1"]), ("evidence", ["sheet.density"]), ("rank", ["evidence.close", "F2"]), ("rank-two", ["picture.1"]),
    ("curves", ["F3"]), ("compare", ["F4"]), ("drop", ["F5"]), ("drop-nitrogen", ["drop.nitrogen"]), ("drop-charts", ["drop.nitrogen", "drop.face.1"]),
    ("drop-two", ["drop.against.1"]), ("mix", ["drop.against.0", "F6"]), ("pour", ["F7"]), ("pour-sheet", ["pour.face.1"]),
    ("pouring", ["pour.face.0", "pour.mode"]), ("shelf", ["Escape", "F8", "bench.shelf"]), ("workshop", ["bench.workshop"]), ("trials", ["bench.measured"]),
    ("questions", ["F11"]), ("sources", ["F9"]), ("help", ["F12", "F10"]), ("room", ["F10", "F2", "Control_L e"]), ("ask", ["Escape", "Control_L k", "=silicon bronze against gunmetal"]),
]

# kind of picture, the way to its view, the button that takes it into the picture room
KINDS = [
    ("race", ["F5"], "Control_L e"), ("set-up", [], "drop.picture.frame"), ("nitrogen", ["drop.nitrogen"], "Control_L e"),
    ("times", ["drop.nitrogen", "drop.face.1"], "drop.bars.frame"), ("drag", [], "drop.drag.frame"), ("sweep", [], "drop.sweep.frame"),
    ("metals", ["F1"], "answer.picture"), ("rank", ["F2"], "rank.chart.frame"), ("rank-table", [], "ranking.table.frame"),
    ("two-goals", ["picture.1"], "tradeoff.chart.frame"), ("curves", ["F3"], "curve.chart.frame"), ("duel", ["F4"], "duel.frame"),
    ("compare-table", [], "comparison.table.frame"), ("mix-table", ["F6"], "mix.table.frame"), ("diagram", [], "mix.diagram.frame"),
    ("mix-curve", ["mix.chart.1"], "mix.curve.frame"), ("pour", ["F7"], "pour.drawing.frame"), ("measured", ["F8", "bench.measured"], "measured.trial-1.frame"),
]
SHAPES = ["16x9", "9x16", "1x1", "sheet"]


def lead(window, step):
    if step.startswith("="):
        window.write(step[1:])
    elif step[0] == "F" and step[1:].isdigit() or " " in step or step == "Escape":
        window.key(*step.split())
    elif window.shows(step):
        window.click(step)
    else:
        print(f"no '{step}' on screen", file=sys.stderr)


def take(window, size, file):
    window.xdotool("mousemove", 2, 2)
    window.settled()
    time.sleep(0.3)
    subprocess.run(["import", "-window", "root", "-crop", size + "+0+0", "+repage", file], env=window.environment, check=True)


def fill_shelf(program):
    for line in SHELF.splitlines():
        done = subprocess.run(f"'{program}' {line}", shell=True, capture_output=True, text=True)
        if done.returncode:
            raise Failure(f"{line}: {done.stderr.strip()}")


def walk(program, display, folder, size, state, light, views):
    with tempfile.TemporaryDirectory() as home:
        os.environ.update(HOME=home, XDG_DATA_HOME=home, XDG_STATE_HOME=home, XDG_CONFIG_HOME=home, XDG_PICTURES_DIR=home)
        if state == "shelf":
            fill_shelf(program)
        kept = {"dark": not light}
        if state != "first":
            kept.update(pins=PINS)
        file = os.path.join(home, "state.json")
        with open(file, "w", encoding="utf-8") as out:
            json.dump(kept, out)
        window = Window(program, display, home, "--state", file, "--size", size, "--scale", SCALE.get(size, "1"))
        try:
            for name, steps in WALK:
                for step in steps:
                    lead(window, step)
                if views and name not in views:
                    continue
                if name == "start" or name.startswith("drop"):
                    time.sleep(2)
                take(window, size, os.path.join(folder, f"{name}-{size}-{state}-{'light' if light else 'dark'}.png"))
        finally:
            window.close()


def walk_room(program, display, folder):
    with tempfile.TemporaryDirectory() as home:
        os.environ.update(HOME=home, XDG_DATA_HOME=home, XDG_STATE_HOME=home, XDG_CONFIG_HOME=home, XDG_PICTURES_DIR=home)
        fill_shelf(program)
        file = os.path.join(home, "state.json")
        with open(file, "w", encoding="utf-8") as out:
            json.dump({"view": "rank"}, out)
        window = Window(program, display, home, "--state", file)
        try:
            for kind, steps, button in KINDS:
                for step in [*steps, button]:
                    lead(window, step)
                for at, shape in enumerate(SHAPES[:2]):
                    lead(window, f"room.shape.{at}")
                    before = set(os.listdir(home))
                    lead(window, "room.save")
                    for new in set(os.listdir(home)) - before:
                        os.rename(os.path.join(home, new), os.path.join(folder, f"{kind}-{shape}.png"))
                lead(window, "room.close")
        finally:
            window.close()


def main():
    words = argparse.ArgumentParser()
    words.add_argument("folder")
    words.add_argument("--sizes", default=",".join(SIZES))
    words.add_argument("--states", default="first,ten,shelf")
    words.add_argument("--light", choices=("yes", "no"))
    words.add_argument("--views", default="")
    words.add_argument("--room", action="store_true")
    words.add_argument("program", nargs="?", default=os.environ.get("POURBOOK", os.path.join(ROOT, "build", "pourbook")))
    words = words.parse_args()
    os.makedirs(words.folder, exist_ok=True)
    views = [v for v in words.views.split(",") if v]
    with Display("2560x1440") as display:
        if words.room:
            walk_room(words.program, display, words.folder)
            return 0
        for size in words.sizes.split(","):
            for state in words.states.split(","):
                for light in (False, True):
                    if words.light in (None, "yes" if light else "no"):
                        walk(words.program, display, words.folder, size, state, light, views)
    return 0


if __name__ == "__main__":
    sys.exit(main())
