"""Every data file follows its JSON Schema (db/schema), and the schema of a metal refuses what it must."""
import copy
import glob
import json
import os
import sys

import jsonschema

ROOT = os.environ.get("POURBOOK_ROOT", os.path.abspath(os.path.join(os.path.dirname(__file__), "../..")))
FILES = {
    "metal": ["elements/*.json", "alloys/*.json"],
    "references": ["references.json"],
    "properties": ["properties.json"],
    "known_names": ["known_names.json"],
    "withdrawn_ids": ["withdrawn_ids.json"],
    "cautions": ["cautions.json"],
    "price_forms": ["price_forms.json"],
    "prices": ["prices/*.json"],
    "goal": ["goals/*.json"],
    "practices": ["casting/*.json"],
    "magnets": ["magnets.json"],
    "atomic_masses": ["atomic_masses.json"],
    "increments": ["increments.json"],
    "diagram": ["diagrams/*.json"],
    "version": ["version.json"],
}


def load(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file)


def checker(name):
    schema = load(os.path.join(ROOT, "db/schema", name + ".schema.json"))
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def broken_metals():
    """A sound metal and, beside each name, a change that must be refused."""
    sound = load(os.path.join(ROOT, "db/elements/copper.json"))
    changes = {
        "no id": lambda r: r.pop("id"),
        "no source": lambda r: r.pop("source"),
        "a number without quotation marks": lambda r: r.update(value=1),
        "an unknown key": lambda r: r.update(colour="red"),
        "preferred without a why": lambda r: (r.pop("why"), r.update(use="preferred")),
        "two contents": lambda r: r.update(text="non-magnetic"),
    }
    for name, change in changes.items():
        metal = copy.deepcopy(sound)
        change(next(r for r in metal["records"] if r["property"] == "melting_point" and r.get("use") == "preferred"))
        yield name, metal


faults = []
seen = set()
for name, patterns in FILES.items():
    check = checker(name)
    for pattern in patterns:
        for path in sorted(glob.glob(os.path.join(ROOT, "db", pattern))):
            seen.add(path)
            faults += [f"{os.path.relpath(path, ROOT)}: {'/'.join(map(str, e.absolute_path))}: {e.message[:200]}" for e in check.iter_errors(load(path))]
everything = {p for p in glob.glob(os.path.join(ROOT, "db/**/*.json"), recursive=True) if not p.endswith(".schema.json")}
faults += [f"{os.path.relpath(path, ROOT)}: no schema" for path in sorted(everything - seen)]
metal = checker("metal")
faults += [f"the schema of a metal accepts {name}" for name, broken in broken_metals() if metal.is_valid(broken)]

for fault in faults:
    print("FAILED:", fault)
print("schemas:", "failed" if faults else "passed", len(seen), "files")
sys.exit(1 if faults else 0)
