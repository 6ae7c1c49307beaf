#!/usr/bin/env python3
"""Fifteen tasks of a person new to the window, each by pointer and by keyboard alone in the real window, from its first start with an empty workshop.

Usage: fifteen_tasks.py [PROGRAM] [--report FILE] [--way pointer|keyboard] [--only 6,7]   the program is $POURBOOK or build/pourbook.
Needs Xvfb and xdotool. Counted: clicks (a notch of the wheel is one), keys (a chord is one), letters, and refusals: fields that do not take
what was written. A refusal is a failure. The last line says what failed, if anything.
"""
import argparse
import os
import re
import sys
import tempfile

from hand import Keyboard, Pointer
from person import figures
from window import Display, Failure, Window, check

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")
HEAD = """# Fifteen tasks in the window, by pointer and by keyboard

Each done in the real window under Xvfb by tests/gui/fifteen_tasks.py --report, one after another as in one sitting, from the first start with an empty workshop. A click is a press of the
button or a notch of the wheel, a key is a key or a chord that types nothing (going through a view by Tab counts every stop), letters are what is typed. Refused: fields that did not take what was written.

| # | task | way | clicks | keys | letters | refused | what came of it |
|---|---|---|---|---|---|---|---|
"""


def first_screen(h):
    items = h.look()
    check(items["view"]["text"] == "start", "the first view is not the start")
    answers = [items[f"start.card.{i}.answer"]["text"] for i in range(4)]
    check(all(len(a) > 20 for a in answers), f"cards without an answer: {answers}")
    check("start.race.go" in items, "no button that drops the magnets")
    return "a race with one large button, four questions answered: " + answers[0].split(" (")[0]


def conductivity_and_trust(h):
    h.ask("conductivity of sterling silver")
    check(h.text("sheet.metal") == "sterling-silver", "the question does not open the metal")
    h.evidence("sheet.conductivity")
    value, sure = h.text("evidence.value"), h.text("evidence.sure")
    check("MS/m" in value and ":" in sure, f"the evidence says {value!r}, {sure!r}")
    h.press("evidence.close")
    return f"{value} (90 %); {sure}"


def own_goal(h):
    h.open_view("rank", "F2")
    h.choose("goal", "own")
    h.set("formula", "thermal_conductivity / (density * price)")
    h.set("formula.name", "heat per euro")
    h.press("formula.keep")
    check(h.text("told").startswith("kept"), f"told: {h.text('told')}")
    h.choose("goal", "heat-per-euro")
    check(h.text("goal") == "heat-per-euro", "the kept formula is not among the goals")
    return f"first {h.text('rank.row.1')}"


def why_worse(h):
    h.ask("sterling silver against copper as a better brake")
    sentence = h.text("versus.sentence")
    check("sterling silver" in sentence, sentence)
    h.press("answer.picture")
    h.press("room.save")
    check("saved as" in h.text("room.told"), h.text("room.told"))
    h.press("room.close")
    return sentence.split(" Taken as")[0] + " " + "Picture saved."


def three_metals_twice_as_thick(h):
    h.ask("20x20 mm N52 magnet through 22mm:30mm:500mm copper")
    for metal in ("brass-cartridge", "aluminium-6061"):
        h.pick("drop.metal", metal)
    times = h.text("drop.time")
    h.press("drop.against.1")
    h.set("drop2.outside", "38")
    differs = h.text("drop2.differs")
    check("38" in differs, f"the second set-up differs by {differs!r}")
    said = h.text("answer")
    h.press("drop.against.0")
    return f"aluminium 6061 {times}; {said.split('. ')[0]}"


def shelf_in_euro(h):
    h.open_view("trials", "F8")
    h.press("bench.shelf")
    h.press("shelf.stock")
    for metal, mass, price in (("copper-dhp", "2 kg", "9,50 €/kg"), ("za-12", "3", "4.50 EUR/kg")):
        if h.text("field.metal"):
            h.press("entry.new")
        h.set("field.metal", metal)
        h.set("field.mass", mass)
        h.set("field.price", price)
        h.press("entry.keep")
    h.open_view("rank", "F2")
    h.choose("goal", "braking-per-cost")
    h.press("candidates.2")
    h.press("rank.enter-rate")
    h.press("shelf.rate")
    for field, words in (("currency", "EUR"), ("usd", "1.08"), ("date", "2026-11-30"), ("source", "the bank")):
        h.set("field." + field, words)
    h.press("entry.keep")
    h.open_view("rank", "F2")
    price, first = h.text("rank.1.price"), h.text("rank.row.1")
    check(not h.shows("rank.unused"), "the prices of the shelf are still not used")
    h.press("candidates.0")
    return f"first of the shelf {first}, at {price} EUR/kg"


def measured_fall(h):
    h.open_view("drop", "F5")
    h.press("drop.keep")
    h.set("field.times", "24.1 s, 24.4 s, 24.2 s")
    h.press("entry.keep")
    said = h.text("trial.trial-1.sentence")
    check(len(said) > 30, said)
    return said.split(". ")[0]


def pour_with_limits(h):
    h.open_view("pour", "F7")
    h.pick("pour.metal", "silicon bronze")
    for field, words in (("furnace-max", "1100"), ("crucible-volume", "250 ml"), ("mould-temperature", "700")):
        h.set("pour." + field, words)
    words = h.text("pour.drawing.words")
    check("mine" in words and "1100 °C" in words, f"the drawing says {words!r}")
    h.press("pour.sheet.save")
    h.window.key("Return")
    check("saved as" in h.text("pour.sheet.told"), h.text("pour.sheet.told"))
    return h.text("answer") + (" " + h.text("pour.refused") if h.shows("pour.refused") else "")


def scrap_mix(h):
    h.open_view("mix", "F6")
    h.set("mix.stock.0.metal", "brass-cartridge")
    h.set("mix.stock.0.mass", "2")
    h.set("mix.target", "Cu 85")
    return h.text("answer") + " " + h.text("mix.addition")


def cold_curves(h):
    h.open_view("curves", "F3")
    h.press("range.cold")
    if h.name == "keyboard":
        h.focus("curve.chart")
        for _ in range(3):
            h.window.key("Right")
    else:
        h.window.point_at("curve.chart")
    strip = h.text("curve.chart.strip")
    check(strip.count("\n") >= 3, f"the strip reads {strip!r}")
    low, high = h.text("curve.from"), h.text("curve.to")
    return f"{low} to {high} °C; " + strip.split("\n")[0]


def table_out(h):
    h.open_view("compare", "F4")
    h.press("comparison.table.save")
    h.window.key("Return")
    told = h.text("comparison.table.told")
    check("saved as" in told, told)
    return told.split(" in ")[0]


def take_back(h):
    h.open_view("trials", "F8")
    h.press("bench.shelf")
    h.press("shelf.stock")
    h.press("entry.new")
    lots = h.text("shelf.stock")
    h.set("field.metal", "zinc")
    h.set("field.mass", "1 kg")
    h.press("entry.keep")
    check(h.text("shelf.stock") != lots, "the lot is not kept")
    h.undo()
    check(h.text("shelf.stock") == lots, f"after undo: {h.text('shelf.stock')}, before: {lots}")
    return "the lot that was kept is taken back: " + h.text("told")


def out_of_the_field(h):
    h.open_view("rank", "F2")
    h.go_to_field("temperature")
    before = h.window.dump()["focused"]
    h.window.key("Tab")
    after = h.window.dump()["focused"]
    check(before == "temperature" and after not in ("", before), f"from {before!r} Tab goes to {after!r}")
    return f"Tab goes from the temperature to {after}"


def resized(h):
    seen = []
    for width, height in ((1280, 720), (1600, 1000), (1440, 900)):
        h.window.resize(width, height)
        items = h.look()
        out = [n for n, i in items.items() if i["width"] and (i["x"] + i["width"] > width + 1 or i["y"] + i["height"] > height + 1)]
        check(not out, f"at {width}x{height} beyond the edge: {out[:3]}")
        check("rank.row.1" in items, f"no ranking at {width}x{height}")
        seen.append(f"{width}x{height}")
    return "nothing beyond the edge at " + ", ".join(seen)


def liquid_nitrogen(h):
    h.open_view("drop", "F5")
    h.press("drop.nitrogen")
    check(h.shows("drop.nitrogen.caution"), "no caution beside liquid nitrogen")
    h.set("temperature", "-196 °C")
    said = h.text("answer")
    check(figures(r"falls ([\d.]+) s", said, "the fall"), said)
    h.set("temperature", "20")
    return said + " " + "Cautions shown."


TASKS = [
    ("What is this, and what next?", first_screen),
    ("Conductivity of sterling silver, and may I trust it?", conductivity_and_trust),
    ("A goal of my own, kept and found again", own_goal),
    ("Why is sterling silver worse than copper? With a picture", why_worse),
    ("A fall through three metals, and with a wall twice as thick", three_metals_twice_as_thick),
    ("My shelf in euro, ranked", shelf_in_euro),
    ("A fall I measured", measured_fall),
    ("Pour silicon bronze within my limits, and the sheet", pour_with_limits),
    ("Scrap brass brought to 85 % copper", scrap_mix),
    ("Resistivity from the cold to room temperature", cold_curves),
    ("A table for a spreadsheet", table_out),
    ("Take back what I just kept", take_back),
    ("Out of a field by Tab", out_of_the_field),
    ("Another size of window", resized),
    ("The same fall in liquid nitrogen", liquid_nitrogen),
]


def row_of(number, task, hand, before, answer):
    w = hand.window
    counts = [now - then for now, then in zip((w.clicks, w.keys, w.characters, hand.refused), before)]
    cells = [number, task, hand.name, *counts, re.sub(r"\s+", " ", answer)]
    return "| " + " | ".join(str(c).replace("|", "\\|") for c in cells) + " |\n"


def sitting(program, display, folder, way, only):
    """All tasks one after another; rows of the report, and what failed."""
    os.makedirs(folder)
    os.environ.update(XDG_DATA_HOME=folder, XDG_STATE_HOME=folder, XDG_CONFIG_HOME=folder, XDG_PICTURES_DIR=folder, XDG_DOCUMENTS_DIR=folder)
    fresh = os.path.join(folder, "first.json")
    with open(fresh, "w", encoding="utf-8") as file:
        file.write("{}")
    rows, failed = [], []
    window = Window(program, display, folder, "--state", fresh)
    try:
        for number, (task, run) in enumerate(TASKS, 1):
            if only and number not in only:
                continue
            hand = way(window)
            before = (window.clicks, window.keys, window.characters, 0)
            try:
                answer = run(hand)
                check(hand.refused == 0, f"{hand.refused} refusals")
                rows.append(row_of(number, task, hand, before, answer))
            except (Failure, KeyError, StopIteration) as fault:
                failed.append(f"{number} {task} by {way.name}: {fault}")
                print("FAILED: " + failed[-1], flush=True)
                window.key("Escape")
                window.key("Escape")
    finally:
        window.close()
    return rows, failed


def main():
    words = argparse.ArgumentParser()
    words.add_argument("--report")
    words.add_argument("--way", choices=("pointer", "keyboard"))
    words.add_argument("--only", default="")
    words.add_argument("program", nargs="?", default=os.environ.get("POURBOOK", os.path.join(ROOT, "build", "pourbook")))
    words = words.parse_args()
    ways = [w for w in (Pointer, Keyboard) if words.way in (None, w.name)]
    rows, failed = [], []
    with tempfile.TemporaryDirectory() as folder, Display() as display:
        for way in ways:
            done, faults = sitting(words.program, display, os.path.join(folder, way.name), way, [int(n) for n in words.only.split(",") if n])
            rows += done
            failed += faults
    if words.report and not failed:
        with open(words.report, "w", encoding="utf-8") as file:
            file.write(HEAD + "".join(sorted(rows, key=lambda r: int(r.split("|")[1]))))
    if not failed:
        print(f"fifteen tasks: {len(rows)} done")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
