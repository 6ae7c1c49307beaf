"""Deliberately wrong data is caught: by the compiler's plausible ranges, by the self-check's laws, or by the cross-check."""
import json
import os
import shutil
import subprocess
import sys
import tempfile

ROOT = os.environ.get("POURBOOK_ROOT", os.path.abspath(os.path.join(os.path.dirname(__file__), "../..")))
PROGRAM = os.environ.get("POURBOOK", os.path.join(ROOT, "build/pourbook"))
COMPILE = os.environ.get("POURBOOK_COMPILE", os.path.join(ROOT, "build/pourbook-compile"))
failures = []


def altered(folder, file, change):
    db = os.path.join(folder, "db")
    shutil.copytree(os.path.join(ROOT, "db"), db, ignore=shutil.ignore_patterns("store"))
    path = os.path.join(db, file)
    metal = json.load(open(path, encoding="utf-8"))
    change(metal)
    forget_the_print(metal)
    json.dump(metal, open(path, "w", encoding="utf-8"), ensure_ascii=False)
    return db


def forget_the_print(metal):
    """Ids follow the change and the printed texts go, so that the change is seen by its size alone."""
    count = {}
    for record in metal["records"]:
        record.pop("printed", None)
        record.pop("molar_mass", None)
        count[record["property"]] = count.get(record["property"], 0) + 1
        record["id"] = f"{metal['slug']}.{record['property']}.{count[record['property']]}"


def caught_by(file, change):
    """Names what catches the change: compiler, self-check, cross-check, or nothing."""
    with tempfile.TemporaryDirectory() as folder:
        db, reference = altered(folder, file, change), os.path.join(folder, "r.sqlite")
        if subprocess.run([COMPILE, db, reference], capture_output=True).returncode != 0:
            return "compiler"
        if subprocess.run([PROGRAM, "--reference", reference, "check"], capture_output=True).returncode != 0:
            return "self-check"
        program = os.path.join(folder, "pourbook")
        with open(program, "w", encoding="utf-8") as script:
            script.write(f'#!/bin/sh\nexec "{PROGRAM}" --reference "{reference}" "$@"\n')
        os.chmod(program, 0o755)
        check = os.path.join(ROOT, "tests/data/cross_check.py")
        if subprocess.run([sys.executable, check], capture_output=True, env={**os.environ, "POURBOOK": program}).returncode != 0:
            return "cross-check"
        return "nothing"


def every(metal, prop, change, phase=None):
    for record in metal["records"]:
        if record["property"] == prop and record.get("phase", phase) == phase:
            change(record)


def times(factor):
    def change(record):
        if "value" in record:
            record["value"] = scaled(record["value"], factor)
        record["points"] = [[t, scaled(v, factor)] for t, v in record.get("points", [])] or record.pop("points", None) or []
        if not record["points"]:
            del record["points"]
    return change


def scaled(text, factor):
    return " to ".join(f"{float(part) * factor:.6g}" for part in text.split(" to ")) if text[0] not in "<>" else text


def swap(metal):
    for record in metal["records"]:
        record["property"] = {"solidus": "liquidus", "liquidus": "solidus"}.get(record["property"], record["property"])


def expect(what, file, change):
    by = caught_by(file, change)
    print(f"{what}: caught by {by}")
    if by == "nothing":
        failures.append(what)


expect("density of copper times 10", "elements/copper.json", lambda m: every(m, "density", times(10), "solid"))
expect("density of zinc 20 % high", "elements/zinc.json", lambda m: every(m, "density", times(1.2), "solid"))
expect("melting point of tin in Fahrenheit but called Celsius", "elements/tin.json", lambda m: every(m, "melting_point", times(1.8)))
expect("resistivity of cartridge brass a tenth", "alloys/brass-cartridge.json", lambda m: (every(m, "resistivity", times(0.1), "solid"), every(m, "conductivity", times(10), "solid")))
expect("thermal conductivity of aluminium 6061 in cal/(cm s K) but called W/(m K)", "alloys/aluminium-6061.json", lambda m: every(m, "thermal_conductivity", times(1 / 418.4), "solid"))
expect("solidus and liquidus of sterling silver swapped", "alloys/sterling-silver.json", swap)
expect("solidus and liquidus of cartridge brass swapped", "alloys/brass-cartridge.json", swap)
expect("unit of resistivity lost (ohm.m for uohm.cm)", "elements/silver.json", lambda m: every(m, "resistivity", lambda r: r.update(unit="ohm.m"), "solid"))
unchanged = caught_by("elements/copper.json", lambda m: None)
if unchanged != "nothing":
    failures.append(f"the unchanged data is caught by {unchanged}: the test proves nothing")
for failure in failures:
    print("FAILED:", failure)
print(f"{'failed' if failures else 'passed'}: wrong values, {len(failures)} slipped through")
sys.exit(1 if failures else 0)
