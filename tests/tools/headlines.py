#!/usr/bin/env python3
"""What kind of source the answers at 20 degC rest on: a table for db/README.md, printed.

headlines.py PROGRAM [--reference FILE]: for every element and for thirty casting and workshop alloys, the source that answers for seven properties.
"""
import json
import pathlib
import subprocess
import sys

DB = pathlib.Path(__file__).resolve().parents[2] / "db"
PROPERTIES = ["melting_point", "density", "resistivity", "thermal_conductivity", "specific_heat", "linear_expansion_at", "latent_heat"]
FOR_ALLOYS = ["solidus", "liquidus", "density", "resistivity", "thermal_conductivity", "specific_heat", "linear_expansion"]
ALLOYS = """aluminium-6061 aluminium-6063 aluminium-a356-cast aluminium-319-cast aluminium-380-cast aluminium-413-cast brass-cartridge brass-67 brass-85
brass-free-cutting brass-red-leaded-cast brass-yellow-85400 bronze-tin-cast bronze-gunmetal-88-10-2 bronze-silicon-cast bronze-aluminium-cast
bronze-leaded-tin bronze-manganese-cast copper-etp copper-dhp nickel-silver-18 pewter solder-60-40 zamak-3 za-12 za-27 sterling-silver iron-grey
steel-1020 stainless-304""".split()
LETTER = {"standard": "S", "evaluated review": "E", "agency": "A", "handbook": "H", "paper": "P", "textbook": "T", "compilation": "C", "data sheet": "D",
          "general text": "G", "trade practice": "K", "memory": "M"}
LIBRARIES = {"libelemental", "pymatgen", "periodictable"}
references = {r["key"]: r for r in json.loads((DB / "references.json").read_text(encoding="utf-8"))}
elements = [p.stem for p in sorted((DB / "elements").glob("*.json"))]


def coverage(call):
    answer = json.loads(subprocess.run([*call, "check", "--coverage", "--json"], capture_output=True, text=True).stdout)
    return {(c["metal"], c["property"]): c for c in answer["coverage"]}


# A value printed as the one answers for the other.
STANDS_IN = {"resistivity": "conductivity", "linear_expansion": "linear_expansion_at"}


def mark(cell):
    """One letter for the source; L for a library of element data; small where it is rated C."""
    key = cell["preferred"] if cell else ""
    if not key:
        return ""
    if key in LIBRARIES:
        return "L"
    letter = LETTER[references[key]["kind"]]
    return letter.lower() if references[key]["reliability"] == "C" else letter


def table(cells, metals, properties):
    rows = [[mark(cells.get((m, p)) or cells.get((m, STANDS_IN.get(p)))) for p in properties] for m in metals]
    marks = [x for row in rows for x in row if x]
    weak = sum(x == "L" or x.islower() for x in marks)
    lines = ["| metal | " + " | ".join(properties) + " |", "|---" * (len(properties) + 1) + "|"]
    lines += [f"| {m} | " + " | ".join(row) + " |" for m, row in zip(metals, rows)]
    share = f"{weak} of {len(marks)} answers ({100 * weak / len(marks):.1f} %) rest on a library or a source rated C; {sum(x == 'M' for x in marks)} on memory."
    return lines, share


def main():
    cells = coverage(sys.argv[1:])
    for title, metals, properties in (("Elements", elements, PROPERTIES), ("Thirty alloys", ALLOYS, FOR_ALLOYS)):
        lines, share = table(cells, metals, properties)
        print(f"**{title}**: {share}\n")
        print("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
