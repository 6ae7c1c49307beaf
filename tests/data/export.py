"""`pourbook export`: the data package holds what the compiled reference holds, figure by figure."""
import csv
import json
import os
import sqlite3
import subprocess
import sys
import tempfile

ROOT = os.environ.get("POURBOOK_ROOT", os.path.abspath(os.path.join(os.path.dirname(__file__), "../..")))
PROGRAM = os.environ.get("POURBOOK", os.path.join(ROOT, "build/pourbook"))
COMPILE = os.environ.get("POURBOOK_COMPILE", os.path.join(ROOT, "build/pourbook-compile"))
faults = []


def same(a, b):
    """A cell and a value of the database: both empty, the same number to the last digit, or the same text."""
    if b is None or b == "":
        return a == ""
    if isinstance(b, float):
        return a != "" and float(a) == b
    return a == str(b)


def compare(what, rows, wanted):
    """rows of dictionaries against rows of (column, value) pairs, in order."""
    if len(rows) != len(wanted):
        faults.append(f"{what}: {len(rows)} rows, {len(wanted)} in the database")
    for row, want in zip(rows, wanted):
        for column, value in want.items():
            if not same(row[column], value):
                faults.append(f"{what}: {row} {column}: {row[column]!r}, not {value!r}")


def table(folder, name):
    with open(os.path.join(folder, name), encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


with tempfile.TemporaryDirectory() as scratch:
    reference, folder = os.path.join(scratch, "reference.sqlite"), os.path.join(scratch, "package")
    subprocess.run([COMPILE, os.path.join(ROOT, "db"), reference], check=True, stdout=subprocess.DEVNULL)
    call = [PROGRAM, "--reference", reference, "export", "--to", folder]
    done = subprocess.run(call, capture_output=True, text=True)
    if done.returncode:
        sys.exit("FAILED: " + done.stderr)
    again = subprocess.run(call, capture_output=True, text=True)
    if again.returncode == 0:
        faults.append("an existing folder is written over")
    db = sqlite3.connect(reference)
    db.row_factory = sqlite3.Row

    package = json.load(open(os.path.join(folder, "datapackage.json"), encoding="utf-8"))
    names = {r["name"]: r for r in package["resources"]}
    for r in names.values():
        rows = table(folder, r["path"])
        header = [f["name"] for f in r["schema"]["fields"]]
        if rows and list(rows[0]) != header:
            faults.append(f"{r['name']}: columns are not those of the descriptor")
        keys = [tuple(row[k] for k in r["schema"]["primaryKey"]) for row in rows]
        if len(set(keys)) != len(keys):
            faults.append(f"{r['name']}: the primary key is not unique")
        for key in r["schema"].get("foreignKeys", []):
            target = {row[key["reference"]["fields"]] for row in table(folder, names[key["reference"]["resource"]]["path"])}
            lost = {row[key["fields"]] for row in rows} - target - {""}
            if lost:
                faults.append(f"{r['name']}.{key['fields']}: {sorted(lost)[:5]} stand nowhere")
        for field in r["schema"]["fields"]:
            if field["type"] == "number":
                for row in rows:
                    if row[field["name"]]:
                        float(row[field["name"]])

    shared = "phase condition temper process purity text none from_K valid_low_K valid_high_K uncertainty_relative uncertainty_si uncertainty_printed use why note source locator how_known through unit id metal property"
    wanted = []
    for record in db.execute("SELECT * FROM record ORDER BY number"):
        head = {column: record[column] for column in shared.split()}
        points = list(db.execute("SELECT * FROM point WHERE record = ? ORDER BY position", (record["number"],)))
        equation = db.execute("SELECT * FROM equation WHERE record = ?", (record["number"],)).fetchone()
        for point in points:
            wanted.append(head | {"position": point["position"], "temperature_K": point["temperature_K"], "value_si": point["value"], "low_si": point["low"],
                                  "high_si": point["high"], "half_digit_si": point["half_digit"], "printed": point["printed"]})
        if not points:
            more = {"position": 0, "value_si": None}
            if equation:
                more |= {"offset_K": equation["offset_K"], "equation_low_K": equation["low_K"], "equation_high_K": equation["high_K"], "printed": equation["printed"]}
            wanted.append(head | more)
    rows = table(folder, "records.csv")
    compare("records", rows, wanted)
    equations = {r["id"]: [float(c) for c in r["coefficients_si"].split()] for r in rows if r["coefficients_si"]}
    for row in db.execute("SELECT record.id, equation.coefficients FROM equation JOIN record ON record.number = equation.record"):
        if equations.get(row["id"]) != [float(c) for c in row["coefficients"].split()]:
            faults.append(f"{row['id']}: coefficients differ")
    compare("sources", table(folder, "sources.csv"), [dict(r) for r in db.execute("SELECT * FROM reference ORDER BY key")])
    compare("metals", table(folder, "metals.csv"), [{k: r[k] for k in ("slug", "name", "kind", "family", "note")} for r in db.execute("SELECT * FROM metal ORDER BY slug")])
    prices = [{"metal": r["metal"], "usd_per_kg": r["usd_per_kg"], "low_usd_per_kg": r["low"], "high_usd_per_kg": r["high"], "printed": r["printed"], "as_of": r["as_of"]}
              for r in db.execute("SELECT * FROM price ORDER BY price_set, position")]
    compare("prices", table(folder, "prices.csv"), prices)
    print("export:", len(rows), "figures,", len(prices), "prices")

for fault in faults[:40]:
    print("FAILED:", fault)
print("export:", "failed" if faults else "passed", len(faults))
sys.exit(1 if faults else 0)
