#!/usr/bin/env python3
"""Drives the real window as a person would: real pointer, real keys, and reads back what is on screen.

Usage: drive.py FOLDER [PROGRAM]   pictures go to FOLDER; the program is $POURBOOK or build/pourbook.
Needs Xvfb and xdotool. Starts its own display and stops only what it started. The last line says what failed, if anything.
"""
import json
import os
import subprocess
import sys
import tempfile

from window import Display, Failure, Window, check, number

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")


def find_and_pin(w, pictures):
    w.key("Control_L", "f")
    check(w.text("view") == "metals", "Ctrl+F does not open Metals")
    w.write("zinc")
    check(w.text("find") == "zinc", f"the find box holds '{w.text('find')}'")
    w.key("Down")
    w.key("Up")
    shown = [n[len("list."):] for n in w.settled()["items"] if n.startswith("list.") and not n.startswith("list.pin.")]
    check("zinc" in shown and "copper" not in shown, f"the list shows {shown[:5]}")
    w.click("list.pin.zinc")
    check(w.shows("pin.zinc"), "a click on the mark does not pin zinc")
    w.click("list.zinc")
    check(w.text("sheet.metal") == "zinc", "a click on the row does not open the sheet")
    w.point_at("sheet.density")
    hover = w.text("hover")
    check("g/cm³" in hover and "90 %" in hover and hover.count("\n") <= 2, f"the hover of a density says: {hover!r}")
    w.click("sheet.density")
    check(w.text("evidence.of") == "zinc.density", "a click on a figure does not dock its evidence")
    w.click("evidence.close")
    w.picture(pictures, "metals")


def rank_like_the_command(w, program, pictures):
    w.key("F2")
    w.click("goal")
    w.click("goal.braking-per-cost")
    check(w.text("goal") == "braking-per-cost", "the goal was not chosen")
    told = json.loads(subprocess.run([program, "rank", "--goal", "braking-per-cost", "--json"], capture_output=True, text=True, check=True).stdout)
    items = w.settled()["items"]
    rows = 0
    for row in told["results"][:12]:
        name = f"rank.row.{row['rank']}"
        check(name in items, f"row {row['rank']} is not on screen")
        check(items[name]["text"] == row["metal"], f"row {row['rank']} shows {items[name]['text']}, the command says {row['metal']}")
        median = number(items[f"rank.{row['rank']}.median"]["text"])
        check(abs(median - row["median"]) <= 0.006 * abs(row["median"]), f"row {row['rank']} shows {median}, the command says {row['median']}")
        rows += 1
    check(rows == 12, f"only {rows} rows compared")
    check(items["excluded"]["text"] == str(len(told["excluded"])), "another number of metals is left out")
    check(items["unrankable"]["text"] == str(len(told["unrankable"])), "another number of metals can't be ranked")
    best = told["results"][0]["metal"]
    w.point_at(f"rank.chart.{best}.0")
    check("90 % interval" in w.text("hover"), "the chart's hover does not give the interval")
    w.picture(pictures, "rank")


def conditions_and_faults(w):
    w.click("where")
    w.write("liquidus < 500 degC")
    w.key("Return")
    first = w.text("rank.row.1")
    w.click("where")
    w.key("Control_L", "a")
    w.write("liquidus < ")
    w.key("Return")
    check("column" in w.text("where.fault"), "a broken condition does not name the column")
    check(w.text("rank.row.1") == first, "a broken condition changed the ranking")
    w.click("where")
    w.key("Control_L", "a")
    w.key("BackSpace")
    w.key("Return")
    check(w.text("rank.row.1") != first, "an emptied condition still holds")


def curves(w, pictures):
    w.key("F3")
    check("stretches" in w.text("curve.copper"), "copper has no curve")
    w.point_at("curve.chart.copper.2")
    check("µΩ·cm" in w.text("hover") and " K" in w.text("hover"), f"the hover of a curve says {w.text('hover')!r}")
    w.picture(pictures, "curves")
    w.click("degrees.1")
    w.click("scale.0")
    w.picture(pictures, "curves-linear-celsius")


def compare_and_sources(w, program, pictures):
    w.key("F4")
    check(w.text("compare.copper.magnetic_behaviour") == "non-magnetic", "Compare does not show copper")
    words = [program, "versus", w.text("versus.first"), w.text("versus.second"), "--goal", "braking-per-cost", "--json"]
    told = json.loads(subprocess.run(words, capture_output=True, text=True, check=True).stdout)
    check(w.text("versus.sentence") == told["sentence"], "Compare says another sentence than the command")
    w.click("units.1")
    w.picture(pictures, "compare-workshop")
    w.wheel_to("compare.copper.density", over="compare.copper.conductivity")
    w.click("compare.copper.density")
    check(w.text("evidence.of") == "copper.density", "a click on a number does not dock its evidence")
    w.click("evidence.source.0.open")
    check(w.text("view") == "sources" and w.text("source.shown") != "", "the evidence does not open a source")
    w.click("evidence.close")
    w.picture(pictures, "sources")
    w.click("units.0")


def mix_like_the_command(w, program, pictures):
    w.key("F6")
    check(w.text("view") == "mix" and w.shows("mix.conductivity"), "Mix shows no answer at first")
    w.click("mix.stock.1.mass")
    w.key("Control_L", "a")
    w.write("500 g")
    w.key("Return")
    words = "1.2kg sterling-silver + 500g silver"
    told = json.loads(subprocess.run([program, "mix", words, "--json"], capture_output=True, text=True, check=True).stdout)
    shown = number(w.text("mix.resistivity").split()[0])
    check(abs(shown - told["resistivity"]["value"] * 1e8) <= 0.006 * shown, f"Mix shows {shown}, the command says {told['resistivity']['value']}")
    check(abs(number(w.text("mix.wt.Ag")) - told["composition_wt_percent"]["Ag"]) < 0.01, "Mix shows another content of silver than the command")
    check(abs(number(w.text("mix.liquidus").split()[0]) + 273.15 - told["liquidus_K"]) < 6, "Mix shows another liquidus than the command")
    w.picture(pictures, "mix")
    w.click("mix.chart.1")
    w.picture(pictures, "mix-conductivity")
    w.click("mix.pin")
    slug = "mix:1.2 kg sterling-silver + 500 g silver"
    check(w.shows("pin." + slug), "the mix is not pinned")
    w.key("F2")
    w.click("goal")
    w.click("goal.strongest-brake")
    rows = {i["text"] for n, i in w.settled()["items"].items() if n.startswith("rank.row.")}
    check(slug in rows, "the pinned mix is not ranked")
    w.picture(pictures, "rank-mix")


def drop_like_the_command(w, program, pictures):
    w.key("F5")
    w.picture(pictures, "drop")
    w.click("drop.outside")
    w.key("Control_L", "a")
    w.write("28mm")
    w.key("Return")
    words = [program, "drop", "--magnet", "cylinder:15mmx15mm", "--grade", "N42", "--tube", "18mm:28mm:400mm", "--metal", w.text("drop.metal"), "--json"]
    told = json.loads(subprocess.run(words, capture_output=True, text=True, check=True).stdout)
    shown = float(w.text("drop.time").removesuffix(" s"))
    check(abs(shown - told["fall_time_s"]) <= 0.006 * shown, f"Drop shows {shown} s, the command says {told['fall_time_s']}")
    w.point_at("drop.speed")
    check("Rests on" in w.text("hover") and "remanence of N42" in w.text("hover"), "the hover of the speed names no source")
    w.point_at("drop.bars.copper.0")
    check("90 % interval" in w.text("hover"), "the bar's hover gives no interval")
    w.click("drop.bore")
    w.key("Control_L", "a")
    w.write("wide")
    w.key("Return")
    check("number is expected" in w.text("drop.bore.fault"), "a bore that is no length has no fault beside it")
    w.click("drop.bore")
    w.key("Control_L", "a")
    w.write("18mm")
    w.key("Return")
    w.click("drop.over.3")
    w.picture(pictures, "drop-temperature")
    w.click("drop.against.1")
    check("the ratio is 1.00" in w.text("drop.sentence"), f"the second set-up is no copy of the first: {w.text('drop.sentence')}")
    w.picture(pictures, "drop-two")


def keyboard_only(w):
    w.key("Control_L", "k")
    w.write("metals")
    w.key("Return")
    check(w.text("view") == "metals", "the command finder does not run what is named")
    before = w.shows("pin.zinc")
    w.key("Control_L", "f")
    w.key("Escape")
    w.key("Control_L", "z")
    w.key("Control_L", "z")
    check(before, "zinc was not pinned any more")


def help_beside(w, pictures):
    w.key("F10")
    check(w.text("help.page") == w.text("view"), "F10 does not show the page of the view")
    w.key("F7")
    check(w.text("help.page") == "pour", "the help does not follow the view")
    w.picture(pictures, "help")
    w.key("Escape")
    check(not w.shows("help.page"), "Escape does not close the help")
    w.click("help")
    check(w.shows("help.page"), "a click on Help does not open it")


def comes_back(program, display, folder, pictures, state):
    w = Window(program, display, folder, "--state", state)
    try:
        check(w.shows("pin.zinc"), "the pinned metals don't come back")
        check(w.shows("pin.mix:1.2 kg sterling-silver + 500 g silver"), "the pinned mix does not come back")
        check(w.text("help.page") == "pour", "the help that was open does not come back")
        w.click("help.close")
        w.click("theme")
        w.picture(pictures, "light")
    finally:
        w.close()


def main():
    if len(sys.argv) < 2:
        print(__doc__)
        return 2
    pictures = sys.argv[1]
    program = sys.argv[2] if len(sys.argv) > 2 else os.environ.get("POURBOOK", os.path.join(ROOT, "build", "pourbook"))
    os.makedirs(pictures, exist_ok=True)
    try:
        with tempfile.TemporaryDirectory() as folder, Display() as display:
            os.environ.update(HOME=folder, XDG_DATA_HOME=folder)  # nobody's own prices and rates
            state = os.path.join(folder, "view.json")
            w = Window(program, display, folder, "--state", state)
            try:
                check(w.text("view") == "rank" and w.shows("rank.row.1"), "the first start shows no answered question")
                w.picture(pictures, "first-start")
                find_and_pin(w, pictures)
                rank_like_the_command(w, program, pictures)
                conditions_and_faults(w)
                curves(w, pictures)
                compare_and_sources(w, program, pictures)
                drop_like_the_command(w, program, pictures)
                mix_like_the_command(w, program, pictures)
                keyboard_only(w)
                help_beside(w, pictures)
            finally:
                w.close()
            comes_back(program, display, folder, pictures, state)
    except (Failure, subprocess.CalledProcessError, OSError) as fault:
        print(f"FAILED: {fault}")
        return 1
    print("window: passed")
    return 0


if __name__ == "__main__":
    sys.exit(main())
