"""The workshop's own file by commands: add, list, edit, remove, undo, import, export, backup, questions asked again."""
import json
import os
import signal
import subprocess
import tempfile

from support.program import PROGRAM, Program, check, ended

FOLDER = tempfile.TemporaryDirectory(prefix=f"pourbook-workshop-{os.getpid()}-")
FILE = os.path.join(FOLDER.name, "deep", "workshop.sqlite")
own = Program("--workshop", FILE)
run, answer, refused = own.run, own.answer, own.refused


def on(file):
    """From now on the commands use this file."""
    own.first = ("--workshop", file)


def done(*words):
    code, out, err = run(*words)
    check(code == 0, f"{words}: exit {code}: {err.strip()}")
    return out


def write(name, text):
    path = os.path.join(FOLDER.name, name)
    with open(path, "w", encoding="utf-8") as f:
        f.write(text)
    return path


# stock, and nothing written by looking
check(answer("stock") == [] and not os.path.exists(FILE), "looking makes a file")
refused(3, "nothing is on the shelf", "rank", "--goal", "strongest-brake", "--from", "stock")
refused(5, "nothing to undo", "undo")
added = answer("stock", "add", "copper", "2kg", "--price", "12 USD/kg", "--bought", "2026-11-01")[0]
check(added["lot"] == "stock-1" and added["si"]["mass_kg"] == 2, f"stock add: {added}")
done("stock", "add", "Sn", "500 g", "--lot", "tin-bar")
check([s["metal"] for s in answer("stock")] == ["copper", "tin"], "stock list")
done("stock", "edit", "tin-bar", "--mass", "400g", "--note", "short bar")
check(answer("stock")[1]["mass"] == "400g" and answer("stock", "--find", "short")[0]["lot"] == "tin-bar", "stock edit")
done("stock", "remove", "1", "tin-bar")
check(answer("stock") == [], "stock remove")
check("Undone" in done("undo") and len(answer("stock")) == 2, "undo of a removal")
done("undo")
check(answer("stock")[1]["mass"] == "500 g", "undo of an edit")
done("redo")
check(answer("stock")[1]["mass"] == "400g", "redo")
check(sum(c["undone"] for c in answer("changes")) == 1, "changes")
refused(3, "did you mean copper", "stock", "add", "coper", "2kg")
refused(2, "mass", "stock", "add", "copper", "2 furlongs")
refused(3, "no stock 'nix'", "stock", "edit", "nix", "--mass", "1kg")
shelf = answer("rank", "--goal", "braking-per-cost", "--from", "stock")
check({r["metal"] for r in shelf["results"]} == {"copper", "tin"}, "rank --from stock")
sources = json.dumps(shelf)
check("own-stock" in sources, "lot prices are not named as the user's own")

drawn = os.path.join(FOLDER.name, "shelf.svg")
done("chart", "rank", "--goal", "braking-per-cost", "--from", "stock", "--to", drawn)
check(os.path.getsize(drawn) > 1000, "chart rank --from stock")
check("own-stock" in answer("chart", "rank", "--goal", "braking-per-cost", "--from", "stock")["sources"], "chart rank --from stock: its sources")
done("own-metal", "add", "odd-bronze", "--like", "bronze-tin-cast")
done("stock", "add", "odd-bronze", "1kg", "--lot", "odd")
done("own-metal", "remove", "odd-bronze")
for words in (["rank"], ["chart", "rank", "--to", os.path.join(FOLDER.name, "none.svg")]):
    refused(3, "lot 'odd' is of 'odd-bronze', which is no metal", *words, "--goal", "braking-per-cost", "--from", "stock")
check(not os.path.exists(os.path.join(FOLDER.name, "none.svg")), "a chart that is refused leaves a file")
done("stock", "remove", "odd")

# own prices
reference_price = answer("value", "copper", "price")["value"]
done("price", "add", "copper", "10 EUR/kg", "--date", "2026-11-02", "--seller", "scrap yard")
code, out, err = run("value", "copper", "price", "--json")
check(code == 0 and json.loads(out)["value"] == reference_price and "no rate of exchange for EUR" in err, f"price without a rate: {err}")
done("rate", "add", "EUR", "1.10", "--date", "2026-11-02", "--source", "central bank")
v = answer("value", "copper", "price")
check(abs(v["value"] - 11) < 1e-9 and v["how_known"] == "own" and v["sources"][0]["key"] == "own-prices", f"own price: {v}")
check("scrap yard" in v["sources"][0]["locator"] and "central bank" in v["sources"][0]["locator"], "own price: where from")

# own metals and goals
done("own-metal", "add", "pipe-copper", "--like", "copper", "--note", "from old pipes")
done("own-value", "add", "pipe-copper", "conductivity", "50 MS/m", "--uncertainty", "1 %", "--from", "four-wire, own trial")
v = answer("value", "pipe-copper", "resistivity")
check(abs(v["value"] - 2e-8) < 1e-16 and v["how_known"] == "own", f"own value: {v}")
refused(5, "own-metal add", "own-value", "add", "copper", "density", "9 g/cm3")
refused(5, "choose another", "own-metal", "add", "silver")
done("goal", "add", "cheap", "density * price", "--best", "low", "--where", "liquidus < 1400 K")
check(answer("rank", "--goal", "cheap")["results"][0]["metal"], "saved goal")
refused(2, "densitty", "goal", "add", "bad", "densitty")

# trials
done("trial", "add", "drop", "--metal", "copper", "--magnet", "sphere:12mm", "--grade", "N42", "--tube", "14mm:20mm:500mm", "--times", "2.0s,2.1s")
done("trial", "add", "four-wire", "--tube", "14mm:20mm:500mm", "--resistance", "0.054 mohm", "--span", "0.45 m")
done("trial", "add", "casting", "--metal", "copper", "--mass", "850 g", "--part", "bar:35mm:100mm", "--pattern", "bar:35.7mm:102mm")
drop, wire, cast = [t["shows"] for t in answer("trial")]
check(drop["predicted_time_low90_s"] < drop["predicted_time_s"] < drop["predicted_time_high90_s"] and abs(drop["measured_time_s"] - 2.05) < 1e-9, f"drop trial: {drop}")
check(wire["iacs_percent"] > 0 and wire["consistent_metals"] is not None, f"four-wire trial: {wire}")
# law: porosity = 1 - density / density of the metal; contraction = pattern / part - 1
check(0 < cast["porosity"] < 0.1 and abs(cast["achieved_contraction_percent"]["length"] - 2) < 1e-9, f"casting trial: {cast}")
check("%IACS" in done("trial") and "porosity" in done("trial"), "trials as text")
refused(2, "magnet", "trial", "add", "drop", "--tube", "14mm:20mm:500mm", "--times", "2s")

# profile in pour
done("profile", "set", "--furnace-maximum", "900degC")
refused(5, "the furnace reaches 900 °C", "pour", "copper", "--part", "bar:20mm:100mm")
done("profile", "set", "--furnace-maximum", "1250degC", "--power", "2kW")
done("crucible", "add", "thimble", "graphite", "--volume", "5 cm3")
done("crucible", "add", "a4", "graphite", "--volume", "400 cm3")
plan = done("pour", "copper", "--part", "bar:20mm:100mm")
check("crucible a4" in plan, "pour takes the crucible that holds the charge")
check(answer("profile")[0]["furnace_maximum"] == "1250degC", "profile")

# questions
done("log", "add", "Why is copper so dear?", "--command", "rank --goal braking-per-cost --top 3", "--name", "dear")
again = answer("log", "again", "dear")
check(again["same"] is True, f"asked again at once: {again['changes'][:3]}")
done("price", "add", "copper", "1 USD/kg", "--date", "2026-11-20")
again = answer("log", "again", "dear")
check(not again["same"] and any("copper" in c["at"] or "copper" in c["after"] for c in again["changes"]), "a new price changes the answer")
check("differences" in done("log", "again", "dear", "--renew") and answer("log", "again", "dear")["same"], "log --renew")
refused(2, "unknown goal", "log", "add", "x", "--command", "rank --goal nix")

# import and export
prices = write("prices.csv", "\ufeffWerkstoff;Preis [EUR/kg];Datum\r\ncopper;9,75;2026-11-21\r\ntin;31,20;2026-11-21\r\n")
refused(2, "no column is known", "import", "price", write("odd.csv", "a;b\n1;2\n"))
maps = ["--map", "Werkstoff=metal", "--map", "Preis [EUR/kg]=price", "--map", "Datum=date"]
before = answer("price")
dry = answer("import", "price", prices, "--dry-run", *maps)
check(dry["added"] == 2 and not dry["written"] and answer("price") == before, "dry run")
check(answer("import", "price", prices, *maps)["written"] and len(answer("price")) == len(before) + 2, "import")
check(answer("import", "price", prices, *maps)["unchanged"] == 2, "the same list again")
done("undo")
check(answer("price") == before, "undo of an import")
bad = write("bad.csv", "metal,price,date\ncopper,8 EUR/kg,2026-11-22\ncoper,8 EUR/kg,2026-11-22\n")
code, out, err = run("import", "price", bad)
check(code == 2 and "bad.csv:3: metal: " in err and "nothing was changed" in err and answer("price") == before, f"rejected row: {err}")
refused(2, "no such file", "import", "price", "/nowhere.csv")
log = write("film.csv", "metal,magnet,grade,tube,frames,fps\ncopper,sphere:12mm,N42,14mm:20mm:500mm,\"123, 125\",60\n")
check(answer("import", "drop", log)["added"] == 1 and answer("trial")[-1]["shows"]["measured_time_s"] > 2, "drop log")
done("mould", "add", "box", "silica sand", "--process", "sand", "--note", "two halves; \"cope\" and drag,\nrammed")
done("pin", "add", "copper")
for i, note in enumerate(("=1+1", "-2 g short", "+ a bit", "@home", "'quoted'", "a, b; c", "two\nlines", "tab\there", "µΩ·cm ± 1 %", " blanks ")):
    done("stock", "add", "zinc", f"{i + 1} kg", "--lot", f"odd-{i}", f"--note={note}", "--seller", "yard, north")
for kind in ("stock", "price", "rate", "trial", "goal", "own-metal", "own-value", "crucible", "profile", "mould", "pin"):
    on(FILE)
    listing, as_csv = answer(kind), done(kind, "--csv")
    for name, text in (("list.json", json.dumps(listing)), ("list.csv", as_csv)):
        on(os.path.join(FOLDER.name, f"again-{kind}-{name}.sqlite"))
        if kind == "own-value":
            run("own-metal", "add", "pipe-copper", "--like", "copper")
        done("import", kind, write(name, text))
        fields = lambda entries: [{k: v for k, v in e.items() if k not in ("number", "shows")} for e in entries]
        check(fields(answer(kind)) == fields(listing), f"{kind}: {name} is not imported again without loss")
on(FILE)
# prices that `compare` wrote are a price list: every figure comes back as it was printed, three digits of a figure that is known no better
table = os.path.join(FOLDER.name, "compared.csv")
done("compare", "copper", "zinc", "aluminium-1350", "--show", "price", "--to", table)
wanted = {m: float(f"{answer('value', m, 'price')['value']:.3g}") for m in ("copper", "zinc", "aluminium-1350")}
on(os.path.join(FOLDER.name, "compared.sqlite"))
check(answer("import", "price", table)["added"] == 3, "a table of prices is not imported")
got = {p["metal"]: p["si"]["price"] for p in answer("price")}
check(all(got[m]["currency"] == "USD" and abs(got[m]["per_kg"] / wanted[m] - 1) < 1e-11 for m in wanted), f"prices of compare: {got} instead of {wanted}")
on(FILE)
cube = write("cube.stl", "solid s\nendsolid s\n")
refused(5, "no triangle", "import", "mesh", cube)

# cancel
big = write("big.csv", "metal,price [USD/kg],date,seller\n" + "".join(f"copper,{i % 97 + 1},2026-01-01,s{i}\n" for i in range(300000)))
program = subprocess.Popen([PROGRAM, "--workshop", FILE, "import", "price", big], stderr=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
first = program.stderr.readline()
program.send_signal(signal.SIGINT)
out, err = program.communicate(timeout=120)
check("rows" in first and program.returncode == 130 and "cancelled" in err, f"cancel: {program.returncode} {err[-200:]}")
check(len(answer("price")) == len(before), "cancel: something was changed")

# backup
backup = os.path.join(FOLDER.name, "safe.sqlite")
done("backup", backup)
refused(4, "not overwritten", "backup", backup)
held = answer("stock")
done("stock", "remove", "tin-bar")
done("backup", "--restore", backup)
check(answer("stock") == held, "restore")
on(FOLDER.name)
refused(4, "is a folder", "stock")

ended("workshop commands")
