#!/usr/bin/env python3
"""Writes tests/reports/figures.md anew from the program: every row's figure and basis, the counts ranked at each temperature with the reasons
of those left out, and the share of core answers. What was expected, and the test, stand in the report itself and are kept.

figures.py PROGRAM [--reference FILE]
"""
import collections
import json
import pathlib
import re
import subprocess
import sys

REPORT = pathlib.Path(__file__).resolve().parents[1] / "reports" / "figures.md"
CALL = [sys.argv[1], *sys.argv[2:]]
GOALS = ["strongest-brake", "braking-per-cost", "braking-per-mass"]
TEMPERATURES = ["20degC", "4K", "77K", "-78.5degC", "25degC", "100degC", "200degC", "400degC"]
CORE = """resistivity conductivity temperature_coefficient thermal_conductivity density density_liquid solidus liquidus latent_heat specific_heat linear_expansion
solidification_contraction pouring_temperature contraction_allowance""".split()
ROW = re.compile(r"\| (?P<metal>[a-z0-9-]+), (?P<property>[a-z ]+), (?P<at>[-\d.]+ (?:K|°C)) \| (?P<expected>[^|]*) \| [^|]* \| [^|]* \| (?P<test>[^|]*) \|$")


def told(*words):
    done = subprocess.run([*CALL, *words], capture_output=True, text=True)
    if done.returncode:
        sys.exit(f"{' '.join(words)}: {done.stderr.strip()}")
    return done.stdout


def row(m):
    words = ["value", m["metal"], m["property"].replace(" ", "_"), "--at", m["at"].replace(" ", "").replace("°", "deg"), "--as", "handbook"]
    figure = told(*words).splitlines()[0].split(": ", 1)[1]
    return f"| {m['metal']}, {m['property']}, {m['at']} | {m['expected']} | {figure} | {json.loads(told(*words, '--json'))['basis']} | {m['test']} |"


def kind_of(reason):
    """A reason without the metal's own words."""
    for kind in ["not for home casting", "superconducts", "ferromagnetic", "not solid", "does not meet"]:
        if kind in reason:
            return kind
    return reason.split(": ")[-1]


def ranked(goal, at):
    words = ["rank", "--goal", goal, "--at", at, "--as", "handbook", "--samples", "0", "--json"]
    answer = json.loads(told(*words))
    reasons = collections.Counter(kind_of(x["reason"]) for x in answer["excluded"])
    out = ", ".join(f"{n} {kind}" for kind, n in reasons.most_common())
    missing = collections.Counter(", ".join(x["missing"]) for x in answer["unrankable"])
    no_value = ", ".join(f"{n} no {what.replace('_', ' ')}" for what, n in missing.most_common())
    return f"| {goal} | {at} | {answer['ranked_in_all']} | {out} | {no_value} |"


def shares():
    count, none = collections.defaultdict(collections.Counter), collections.defaultdict(list)
    metals = [m["slug"] for m in json.loads(told("metals", "--json"))]
    for metal in metals:
        properties = json.loads(told("sheet", metal, "--as", "handbook", "--json"))["properties"]
        for name in CORE:
            basis = (properties.get(name) or {}).get("basis", "none")
            count[name][basis] += 1
            if basis == "none":
                none[name].append(metal)
    lines = [f"| {n.replace('_', ' ')} | " + " | ".join(str(count[n][b]) for b in ["cited", "carried", "estimated", "none"]) + f" | {', '.join(none[n])} |" for n in CORE]
    answered = sum(sum(c.values()) - c["none"] for c in count.values())
    asked = len(metals) * len(CORE)
    return [f"{answered} of {asked} answers of {len(metals)} metals: {100 * answered / asked:.1f} %.", "",
            "| answer | cited | carried | estimated | none | of which metals |", "|---|---:|---:|---:|---:|---|", *lines]


def section(title, lines):
    return [f"## {title}", "", *lines, ""]


def main():
    text = REPORT.read_text(encoding="utf-8")
    kept = re.split(r"(?m)^## Ranked at each temperature$", text)[0].rstrip().splitlines()
    kept = [row(m) if (m := ROW.match(line)) else line for line in kept]
    table = ["| goal | at | ranked | left out by the goal | without a value |", "|---|---|---:|---|---|"]
    made = section("Ranked at each temperature", ["The handbook's metals (`--as handbook`).", "", *table, *[ranked(g, t) for g in GOALS for t in TEMPERATURES]])
    made += section("Core answers", shares())
    REPORT.write_text("\n".join([*kept, "", *made]).rstrip() + "\n", encoding="utf-8")


main()
