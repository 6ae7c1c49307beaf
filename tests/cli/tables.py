"""Tables of the built program, read again by other readers: Python's csv and json, openpyxl, tidy; LibreOffice and pandoc where they are installed."""
import csv
import io
import json
import os
import shutil
import subprocess
import sys
import tempfile
import warnings

from support.program import PROGRAM, Program, check, ended

FOLDER = tempfile.mkdtemp(prefix=f"pourbook-tables.{os.getpid()}.")
SHOW = ["resistivity", "density", "solidus", "price", "linear_expansion", "magnetic_behaviour"]
COMPARE = ["compare", "copper", "silver", "brass-cartridge", "babbitt-2", "--show", ",".join(SHOW)]
SETUP = ["--magnet", "cylinder:20mmx20mm", "--grade", "N42", "--tube", "22mm:28mm:1m", "--metal", "copper"]
ANSWERS = {
    "compare": COMPARE,
    "rank": ["rank", "--goal", "braking-per-cost", "--top", "8", "--samples", "100"],
    "fall": ["rank", "--goal", "longest-fall", "--magnet", "cylinder:12mmx10mm", "--grade", "N42", "--tube", "13mm:15mm:1m", "--from", "copper,silver", "--samples", "20"],
    "versus": ["versus", "copper", "silver", "--goal", "strongest-brake", "--samples", "100"],
    "tradeoff": ["tradeoff", "--goal", "strongest-brake", "--and", "braking-per-cost"],
    "sheet": ["sheet", "sterling-silver"],
    "sweep": ["sweep", *SETUP, "--over", "wall", "1mm:5mm", "--steps", "3", "--samples", "20"],
}
refused = Program(environment={"SOURCE_DATE_EPOCH": "1795000000"}).refused


def run(*words):
    return subprocess.run([PROGRAM, *words], capture_output=True, text=True, timeout=120, env={**os.environ, "SOURCE_DATE_EPOCH": "1795000000"})


def path(name):
    return os.path.join(FOLDER, name)


def number(text):
    try:
        return float(text)
    except (TypeError, ValueError):
        return None


def rows_of_csv(name):
    with open(path(name), encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


for name, words in ANSWERS.items():
    for ending in ("csv", "md", "html", "json", "xlsx", "txt"):
        done = run(*words, "--to", path(f"{name}.{ending}"))
        check(done.returncode == 0 and done.stdout == "", f"{words} to {ending}: exit {done.returncode} {done.stderr!r}")
        check(run(*words, "--to", path("again." + ending)).returncode == 0 and open(path("again." + ending), "rb").read() == open(path(f"{name}.{ending}"), "rb").read(), f"{name}.{ending}: other bytes the second time")
    rows = rows_of_csv(name + ".csv")
    check(len({len(r) for r in rows}) == 1 and len(rows) > 1, f"{name}.csv: rows of different length")
    at = rows[0].index("date")
    check(all(r[at] == "2026-11-18" for r in rows[1:]), f"{name}.csv: date")
    data = json.load(open(path(name + ".json"), encoding="utf-8"))
    check(data["sources"] and data["data_version"] and data["data_version"] in data["cite_as"] and data["date"] == "2026-11-18" and data["conditions"]["temperature_K"] == "293.15", f"{name}.json: heads")
    check(json.loads(run(*words, "--format", "json").stdout) == data, f"{name}: --format json differs from the file")

# what has no temperature or file name of its own
for words, part, first in ((["sources"], "Sources", "key"), (["check"], "Coverage", "metal"), (["mix", "1kg sterling-silver + 1kg silver"], "Estimates", "property")):
    got = json.loads(run(*words, "--format", "json").stdout)
    check(got["parts"][0]["title"] == part and got["parts"][0]["rows"] and list(got["parts"][0]["rows"][0])[0] == first, f"{words}: --format json: {str(got)[:200]}")
    rows = list(csv.reader(io.StringIO(run(*words, "--format", "csv").stdout)))
    check(len(rows) > 5 and len({len(r) for r in rows}) == 1, f"{words}: --format csv")
    for name in ("md", "html", "xlsx"):
        check(subprocess.run([PROGRAM, *words, "--format", name], capture_output=True, timeout=120).returncode == 0, f"{words}: --format {name}")
mix = {r["property"]: r["value"] for r in json.loads(run("mix", "1kg sterling-silver + 1kg silver", "--format", "json").stdout)["parts"][0]["rows"]}
told = json.loads(run("mix", "1kg sterling-silver + 1kg silver", "--json").stdout)
for key, value in (("resistivity", told["resistivity"]["value"]), ("density", told["density"]), ("liquidus", told["liquidus_K"])):
    check(abs(mix[key]["value"] - value) <= 1e-11 * value and mix[key]["sources"], f"mix: {key} in the table is not what --json says")
check(run("sources", "--to", path("sources.csv")).returncode == 0 and len(rows_of_csv("sources.csv")) == len(json.loads(run("sources", "--json").stdout)) + 1, "sources.csv")

# each JSON cell is the figure that `value` gives, to the last digit that is not noise of converting
data = json.load(open(path("compare.json"), encoding="utf-8"))
for row in data["parts"][0]["rows"]:
    for p in SHOW:
        answer = run("value", row["metal"], p, "--json")
        if answer.returncode == 3:
            check(row[p]["value"] is None and row[p]["reason"], f"{row['metal']} {p}: no reason for no value")
            continue
        value = json.loads(answer.stdout)
        same = row[p]["value"] == value["value"] or abs(row[p]["value"] - value["value"]) <= 1e-11 * abs(value["value"])
        check(same and row[p]["how_known"] == value["how_known"], f"{row['metal']} {p}: {row[p]} is not {value['value']}")
        check(row[p]["sources"][0] == value["sources"][0]["key"], f"{row['metal']} {p}: sources")
check(data["parts"][0]["rows"][0]["resistivity"]["value"] < 1e-7, "compare.json is not in SI")

# XLSX beside CSV: the same numbers, as numbers; units in a row of their own; a sheet of sources, one of conditions
sys.path.append("/usr/lib/python3/dist-packages")  # Debian's packages, whichever python3 stands first on the path
warnings.simplefilter("ignore")  # of openpyxl about its own age
import openpyxl  # noqa: E402

for name in ANSWERS:
    book = openpyxl.load_workbook(path(name + ".xlsx"))
    check({"Sources", "Conditions"} <= set(book.sheetnames), f"{name}.xlsx: sheets {book.sheetnames}")
    check(book["Sources"].max_row >= 1 and book["Sources"]["B1"].value, f"{name}.xlsx: no sources")
    about = {r[0].value: r[1].value for r in book["Conditions"].iter_rows()}
    check(about["date"] == "2026-11-18" and about["data version"] in about["cite as"], f"{name}.xlsx: {about}")
    sheet, rows = book.worksheets[0], rows_of_csv(name + ".csv")
    heads = {}
    for column in range(1, sheet.max_column + 1):
        unit = sheet.cell(2, column).value
        heads[sheet.cell(1, column).value + (f" ({unit})" if unit else "")] = column
    numbers = 0
    for i, row in enumerate(rows[1:sheet.max_row - 1]):
        for head, column in heads.items():
            cell, text = sheet.cell(i + 3, column), row[rows[0].index(head)]
            if isinstance(cell.value, (int, float)):
                numbers += 1
                check(float(text) == cell.value, f"{name}.xlsx: {head} row {i}: {cell.value} is not {text}")
            else:
                check((cell.value or "") == text, f"{name}.xlsx: {head} row {i}: {cell.value!r} is not {text!r}")
    check(numbers >= 4, f"{name}.xlsx: only {numbers} numbers")

if shutil.which("tidy"):
    for name in ANSWERS:
        done = subprocess.run(["tidy", "-q", "-e", path(name + ".html")], capture_output=True, text=True)
        check(done.returncode == 0, f"{name}.html: {done.stderr.strip()}")
else:
    print("skipped: no tidy here to check the HTML")

if shutil.which("pandoc"):
    for name in ANSWERS:
        done = subprocess.run(["pandoc", "-f", "gfm", "-t", "json", path(name + ".md")], capture_output=True, text=True)
        tables = [b for b in json.loads(done.stdout)["blocks"] if b["t"] == "Table"] if done.returncode == 0 else []
        check(len(tables) >= 2, f"{name}.md: pandoc finds {len(tables)} tables")
        expected = json.load(open(path(name + ".json"), encoding="utf-8"))["parts"][0]["rows"]
        check(tables and len(tables[0]["c"][4][0][3]) == len(expected), f"{name}.md: pandoc finds another number of rows")
else:
    print("skipped: no pandoc here to read the Markdown")

if shutil.which("soffice"):
    for name in ANSWERS:
        done = subprocess.run(["soffice", f"-env:UserInstallation=file://{FOLDER}/office", "--headless", "--convert-to",
                               "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false", "--outdir", path("office-out"), path(name + ".xlsx")],
                              capture_output=True, text=True, timeout=120)
        out = os.path.join(FOLDER, "office-out", name + ".csv")
        if not os.path.exists(out):
            failures.append(f"{name}.xlsx: LibreOffice did not open it: {done.stderr.strip()}")
            continue
        theirs = list(csv.reader(io.StringIO(open(out, encoding="utf-8").read())))
        sheet = openpyxl.load_workbook(path(name + ".xlsx")).worksheets[0]
        numbers = 0
        for i, row in enumerate(sheet.iter_rows(values_only=True)):
            for j, value in enumerate(row):
                if isinstance(value, (int, float)):
                    numbers += 1
                    read = number(theirs[i][j])
                    check(read is not None and abs(read - value) <= 1e-14 * abs(value), f"{name}.xlsx in LibreOffice: {theirs[i][j]!r} is not {value}")
        print(f"LibreOffice gives back {numbers} numbers of {name}.xlsx")
else:
    print("skipped: no LibreOffice here to open the spreadsheets (libreoffice-calc-nogui)")

refused(2, ".csv, .md, .html, .json, .xlsx or .txt", *COMPARE, "--to", path("x.ods"))
refused(2, "--format 'ods'", *COMPARE, "--format", "ods")
refused(3, "unknown property", "compare", "copper", "--show", "colour")
refused(3, "did you mean", "compare", "coper", "--show", "density")
refused(4, "can't be written", *COMPARE, "--to", path("no-folder/x.csv"))
check(not [f for f in os.listdir(FOLDER) if f.startswith("x.") or f.endswith(".part")], "a refused table left a file")

shutil.rmtree(FOLDER)
ended("tables")
