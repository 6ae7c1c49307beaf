"""What the reference promises to hold: melting range and density of every metal, resistivity of 95 % (fillers for brazing apart), curves of the pure metals,
two read sources for the thirty metals most used, and how much of it was read in a text."""
import glob
import json
import os
import subprocess
import sys

ROOT = os.environ.get("POURBOOK_ROOT", os.path.abspath(os.path.join(os.path.dirname(__file__), "../..")))
PROGRAM = os.environ.get("POURBOOK", os.path.join(ROOT, "build/pourbook"))
MOST_USED = """copper silver gold aluminium zinc tin lead iron nickel bismuth copper-etp copper-of copper-dhp silver-999 sterling-silver brass-cartridge
brass-free-cutting brass-naval brass-red-leaded-cast bronze-tin-cast bronze-leaded-tin aluminium-1100 aluminium-1350 aluminium-6061 aluminium-6063
aluminium-a356-cast aluminium-319-cast zamak-3 zamak-5 stainless-304""".split()
failures = []


def ask(*words):
    return json.loads(subprocess.run([PROGRAM, *words, "--json"], capture_output=True, text=True, check=True).stdout)


def files():
    for kind in ("elements", "alloys"):
        for path in glob.glob(os.path.join(ROOT, "db", kind, "*.json")):
            yield json.load(open(path, encoding="utf-8"))


metals = {m["slug"]: m for m in files()}
with_resistivity = 0
without_resistivity = []
for slug in metals:
    properties = ask("sheet", slug)["properties"]
    for name in ("density", "solidus", "liquidus"):
        if properties[name]["value"] is None:
            failures.append(f"{slug}: no {name}")
    if slug.startswith("silver-brazing"):
        continue
    with_resistivity += properties["resistivity"]["value"] is not None
    if properties["resistivity"]["value"] is None:
        without_resistivity.append(slug)
of_parts = sum(not slug.startswith("silver-brazing") for slug in metals)
if with_resistivity < 0.95 * of_parts:
    failures.append(f"resistivity of {with_resistivity} of {len(metals)} metals only; none of: {' '.join(without_resistivity)}")

for slug, metal in metals.items():
    if metal["kind"] != "element" or slug in ("silicon", "mercury"):  # a semiconductor; liquid at room temperature
        continue
    temperatures = set()
    for r in metal["records"]:
        if r["property"] in ("resistivity", "conductivity") and r.get("phase") != "liquid" and r.get("use") not in ("disputed", "superseded"):
            shift = 273.15 if r.get("temperature_unit") == "degC" else 0
            temperatures |= {round(float(t) + shift) for t, _ in r.get("points", [])}
            temperatures |= set(range(5)) if "equation" in r else set()
    if len(temperatures) < 5:
        failures.append(f"{slug}: resistivity at {len(temperatures)} temperatures only")

for slug in MOST_USED:
    for names in (("resistivity", "conductivity"), ("density",), ("solidus", "liquidus", "melting_point")):
        keys = {r["source"] for r in metals[slug]["records"] if r["property"] in names and r.get("phase") != "liquid" and r["how_known"] == "read" and r.get("use") != "disputed"}
        if len(keys) < 2:
            failures.append(f"{slug}: {names[0]} has {len(keys)} read source(s)")

check = ask("check")
published = check["values"] - check["values_computed"]
share = check["core_answers_read"] / check["core_answers"]
if len(metals) < 153 or published < 3000 or share < 0.85 or check["without_source"]:
    failures.append(f"{len(metals)} metals, {published} published values, {100 * share:.1f} % of the core answers read, {check['without_source']} without source")

for failure in failures:
    print("FAILED:", failure)
print(f"{'failed' if failures else 'passed'}: {len(metals)} metals, resistivity of {with_resistivity}, {published} published values, {100 * share:.1f} % of core answers read")
sys.exit(1 if failures else 0)
