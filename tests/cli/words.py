"""Words in: bare numbers asked back, likely words offered, families of metals, usual goals, the width of the terminal."""
import os
import pty
import re
import shlex
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor

sys.path.insert(0, os.path.dirname(__file__))
from support.calls import FREE
from support.program import PROGRAM, Program, check, ended

folder = tempfile.mkdtemp()
bare = {k: "" for k in ("DISPLAY", "WAYLAND_DISPLAY", "COLUMNS")}
program = Program("--workshop", os.path.join(folder, "own.sqlite"), environment=bare)
plain = Program(environment={**bare, "XDG_DATA_HOME": folder})
refused = program.refused

# Findings' own: a bare number was a metre, a kelvin, a watt. Each is asked back with what was probably meant.
SETUP = ("--magnet", "sphere:24mm", "--grade", "N48", "--tube", "26mm:44mm:300mm")
refused(2, "24 what? 24mm", "drop", "--magnet", "sphere:24", "--grade", "N48", "--tube", "26:44:300", "--metal", "copper")
refused(2, "26 what? 26mm:44mm:300mm", "drop", "--magnet", "sphere:24mm", "--grade", "N48", "--tube", "26:44:300", "--metal", "copper")
refused(2, "13 what? 13mm:15mm:1m", "drop", "--magnet", "sphere:12mm", "--grade", "N48", "--tube", "13:15:1m", "--metal", "copper")
refused(2, "20 what? 20C", "rank", "--goal", "braking-per-cost", "--at", "20")
refused(2, "5 what? 5kg", "mix", "5 copper + 2 tin")
refused(2, "5 what? 5kg", "stock", "add", "copper", "5")
refused(2, "700 what? 700C", "pour", "copper", "--part", "tube:18mm:24mm:400mm", "--mould-temperature", "700")
refused(2, "250 what? 250ml", "pour", "copper", "--part", "tube:18mm:24mm:400mm", "--crucible-volume", "250")
refused(2, "2 what? 2kW", "pour", "copper", "--part", "tube:18mm:24mm:400mm", "--power", "2")
refused(2, "8.1s or 8s and 1s", "infer", *SETUP, "--time", "8,1s")
refused(2, "900 what? 900 degC", "metals", "--where", "liquidus < 900")
refused(2, "5ozt", "mix", "5oz silver")
for words in (("stock", "add", "tin", "0 kg"), ("profile", "set", "--efficiency", "300 %"), ("profile", "set", "--power=-2 kW"),
              ("profile", "set", "--furnace-maximum=-500 degC"), ("rate", "add", "EUR", "0", "--date", "2026-11-25", "--source", "bank")):
    check(program.run(*words)[0] == 2, f"{words}: kept")
check("[]" in program.run("stock", "--json")[1], "a refused lot was kept")
for words in (("value", "copper", "density", "--at", "20C"), ("value", "copper", "density", "--at", "68F"),
              ("value", "copper", "resistivity", "--at", "liquid nitrogen"), ("pour", "copper", "--part", "tube:22:28:400mm"),
              ("pour", "copper", "--part", 'tube:1/2:5/8:12"'), ("mix", "1,5 kg copper + 1/2 lb tin")):
    check(program.run(*words)[0] == 0, f"{words}: refused: {program.run(*words)[2]}")
check(program.run("drop", "--bare-numbers", "si", "--magnet", "sphere:0.024", "--grade", "N48", "--tube", "0.026:0.044:0.3", "--metal", "copper")[0] == 0,
      "--bare-numbers si")

# Misspelt or loose: the right word in at least 95 of 100.
COMMANDS = {"rnak": "rank", "versu": "versus", "vesus": "versus", "shet": "sheet", "valeu": "value", "dorp": "drop", "swep": "sweep", "infre": "infer",
            "poor": "pour", "mixx": "mix", "tradeof": "tradeoff", "comapre": "compare", "cahrt": "chart", "soruces": "sources", "chek": "check",
            "stok": "stock", "prise": "price", "trail": "trial", "crucibel": "crucible", "mold": "mould", "profil": "profile", "bakcup": "backup",
            "imprt": "import", "udno": "undo", "hlep": "help"}
OPTIONS = {"--gaol": "--goal", "--fromula": "--formula", "--samlpes": "--samples", "--tpo": "--top", "--hodling": "--holding", "--unit": "--units",
           "--wher": "--where", "--form": "--from", "--sed": "--seed", "--curency": "--currency", "--conditon": "--condition",
           "--include-unusal": "--include-unusual", "--jsno": "--json", "--budgte": "--budget", "--bets": "--best", "--magent": "--magnet",
           "--gade": "--grade", "--tub": "--tube", "--slit": "--slits", "--formt": "--format"}
GOALS = {"strongest-break": "strongest-brake", "strongestbrake": "strongest-brake", "brake-strongest": "strongest-brake", "braking-per-costs": "braking-per-cost",
         "braking-pre-cost": "braking-per-cost", "braking": "braking-per-cost", "braking-per-weight": "braking-per-mass", "light-conducter": "light-conductor",
         "lowest-por": "lowest-pour", "longest-fal": "longest-fall", "narow-freezing": "narrow-freezing", "heavy-for-money": "heavy-for-the-money",
         "least-contractoin": "least-contraction", "least-energy": "least-energy-to-melt", "low-drift": "low-drift-resistor"}
PROPERTIES = {"densty": "density", "conductivty": "conductivity", "resistvity": "resistivity", "thermal-conductivity": "thermal_conductivity",
              "thermalconductivity": "thermal_conductivity", "melting": "melting_point", "meltingpoint": "melting_point", "likvidus": "liquidus",
              "solidsu": "solidus", "prise": "price", "latentheat": "latent_heat", "specific-heat": "specific_heat", "boiling": "boiling_point",
              "curie": "curie_temperature", "expansion": "linear_expansion", "contraction": "contraction_allowance", "magnetic": "magnetic_behaviour",
              "pouring": "pouring_temperature", "temperature-coeficient": "temperature_coefficient", "metal-valu": "metal_value"}
METALS = {"coper": "copper", "cooper": "copper", "silvr": "silver", "sterlin-silver": "sterling-silver", "aluminim": "aluminium", "alumnium": "aluminium",
          "zink": "zinc", "tinn": "tin", "leed": "lead", "brass-catridge": "brass-cartridge", "iridum": "iridium", "nikel": "nickel",
          "platinium": "platinum", "paladium": "palladium", "bismut": "bismuth", "invarr": "invar", "manganim": "manganin", "constantin": "constantan",
          "zamak-33": "zamak-3", "tungstn": "tungsten"}
asked = [((typed,), right) for typed, right in COMMANDS.items()]
asked += [(("rank", "--goal", "strongest-brake", typed, "1"), right) for typed, right in OPTIONS.items()]
asked += [(("rank", "--goal", typed), right) for typed, right in GOALS.items()]
asked += [(("value", "copper", typed), right) for typed, right in PROPERTIES.items()]
asked += [(("value", typed, "density"), right) for typed, right in METALS.items()]


def offered(case):
    words, right = case
    code, _, err = program.run(*words)
    return code in (2, 3) and "did you mean" in err and any(right == w.strip("?,.'`") for w in err.split()), words, err.strip()


with ThreadPoolExecutor(2) as pool:
    found = list(pool.map(offered, asked))
wrong = [(words, err) for good, words, err in found if not good]
print(f"right word offered: {len(asked) - len(wrong)} of {len(asked)}")
for words, err in wrong:
    print("  not offered:", words, err)
check(len(asked) >= 100 and len(wrong) * 20 <= len(asked), f"suggestions: {len(wrong)} of {len(asked)} without the right word")

# Families take the usual grade and say so; a metal by itself is its sheet.
for word, slug in {"brass": "brass-cartridge", "sterling": "sterling-silver", "925": "sterling-silver", "stainless": "stainless-304", "C110": "copper-etp",
                   "LM25": "aluminium-a356-cast", "18ct": "gold-18k-yellow", "cast iron": "iron-grey"}.items():
    code, out, err = program.run("value", word, "density")
    check(code == 0, f"{word}: {err}")
    check(program.answer("value", word, "density").get("metal") == slug, f"{word}: not {slug}")
check("is taken as brass-cartridge" in program.run("value", "brass", "density")[2], "brass: the grade taken is not said")
check(program.run("sterling-silver")[1] == program.run("sheet", "sterling-silver")[1] != "", "METAL is not its sheet")
check("no display" in plain.run()[2] and "strongest" in plain.run("--help")[1], "no display: nothing is shown")
check(plain.run()[0] == 0 and plain.run()[1].count("\n") > 5, "no display: no answer")

# Usual goals, said.
for words in (("rank", "--top", "3"), ("versus", "copper", "silver")):
    code, out, err = program.run(*words)
    check(code == 0 and "braking-per-cost" in err, f"{words}: the goal taken is not said: {err}")
check(program.run("compare", "copper", "silver")[0] == 0, "compare without --show")

# The right help in every error; a formula of one's own leaves out what burns.
refused(2, "pourbook pour --help", "pour", "copper")
refused(2, "pourbook stock add --help", "stock", "add", "copper", "1kg", "--prise", "5 EUR/kg")
refused(2, "bash", "value", "copper", "density", "bash", "completion")
order = [r["metal"] for r in program.answer("rank", "--formula", "conductivity/density")["results"]]
check(order[0].startswith("aluminium") and not {"sodium", "lithium", "calcium", "beryllium"} & set(order), f"own formula: {order[:4]}")
check(program.answer("rank", "--formula", "conductivity/density", "--include-unusual")["results"][0]["metal"] == "sodium", "--include-unusual")
leaded = [r for r in program.answer("rank", "--goal", "strongest-brake")["results"] if r["metal"] == "lead"]
check(leaded and leaded[0]["hazards"] == ["Pb"], f"hazard mark of lead: {leaded[:1]}")


# No line beyond the terminal.
def too_long(case):
    name, call, columns = case
    narrow = Program("--workshop", os.path.join(folder, "none.sqlite"), environment={"COLUMNS": str(columns)})
    _, out, _ = narrow.run(*shlex.split(call.replace("OUT", os.path.join(folder, name))))
    return [f"{name} at {columns}: {line}" for line in out.splitlines() if len(line) > columns]


text_calls = [(n, c) for n, c in FREE.items() if "--format csv" not in c and "--format html" not in c and "--format md" not in c and "--format json" not in c
              and "--caption-line" not in c]
every = "POURBOOK_ALL_COLUMNS" in os.environ  # by hand: all calls at all three widths
cases = [(n, c, columns) for i, (n, c) in enumerate(text_calls) for columns in ((80, 100, 140) if every or not i % 3 else (80,))]
with ThreadPoolExecutor(2) as pool:
    for lines in pool.map(too_long, cases):
        for line in lines[:2]:
            check(False, line)

# Bold and colour on a terminal only, and not where NO_COLOR is set (no-color.org).
def on_terminal(*words, **environment):
    parent, child = pty.openpty()
    done = subprocess.Popen([PROGRAM, *words], stdout=child, stderr=subprocess.DEVNULL, env={**os.environ, **bare, "XDG_DATA_HOME": folder, **environment})
    os.close(child)
    out = b""
    try:
        while chunk := os.read(parent, 65536):
            out += chunk
    except OSError:  # the program has ended
        pass
    os.close(parent)
    done.wait()
    return out.decode().replace("\r\n", "\n")


DROP = ("drop", *SETUP, "--metal", "copper", "--samples", "50")
dressed = on_terminal(*DROP, TERM="xterm")
check("\x1b[1mfall time" in dressed, f"on a terminal the answer is not bold: {dressed[:200]!r}")
piped = plain.run(*DROP)[1]
check("\x1b" not in piped, "in a pipe: signs of a terminal")
check(re.sub("\x1b\\[[0-9]*m", "", dressed) == piped, "the words on a terminal are not those in a pipe")
check("\x1b" not in on_terminal(*DROP, TERM="xterm", NO_COLOR="1"), "NO_COLOR is not heeded")
check("\x1b" not in on_terminal(*DROP, "--json", TERM="xterm"), "JSON is dressed")
check("\x1b[33m" in on_terminal("value", "lead", "density", "--short", TERM="xterm"), "a caution is not in colour")

# --short: the first few, one line of caution.
short = program.run("rank", "--goal", "braking-per-cost", "--short")[1]
check(short.count("\n") <= 4 and " more." in short, f"rank --short is not short: {short}")

# --top cuts what follows from it.
top = program.run("rank", "--goal", "braking-per-cost", "--top", "3")[1]
for head in ("Left out", "Can't be ranked"):
    lines = top.split(head + "\n")[1].split("\n\n")[0].splitlines() if head in top else []
    check(sum(line.startswith("  ") and not line.startswith("      ") for line in lines) <= 4, f"--top 3: {head}: {len(lines)} lines")
check("more" in top and len(top.splitlines()) < 45, f"--top 3: {len(top.splitlines())} lines")

# --units workshop: no unit of the bench in what is said of a fall, a plate, a pour or a mix (but in sources and what is typed).
BENCH = re.compile(r"(?<![\w.])[0-9.]+ (mm|cm|m|cm3|mm2|N|g|kg|degC|°C|degF|mm/s|m/s|m/min|kg/m3|g/cm³|kJ/kg|USD/kg|K)(?![\w/])")
for words in (DROP, ("plate", "--magnet", "cylinder:20mmx20mm", "--grade", "N42", "--gap", "2mm", "--thickness", "5mm", "--metal", "copper", "--speed",
               "0.1m/s:10m/s"),
              ("pour", "bronze-gunmetal-88-10-2", "--part", "tube:22mm:28mm:400mm", "--superheat", "80K", "--clear", "20mm", "--stock", "1mm"),
              ("pour", "aluminium-a356-cast", "--part", "plate:50mmx50mmx50mm", "--process", "sand", "--sprue", "200mm:12mm", "--power", "2kW", "--heel", "100g"),
              ("pour", "gold-18k-yellow", "--part", "bar:20mmx50mm", "--process", "plaster", "--furnace-max", "1100degC", "--crucible-volume", "250cm3"),
              ("mix", "1.2kg gold-18k-yellow", "--to", "Au 80", "--with", "gold", "--melt-loss", "2%"), ("mix", "2kg brass-cartridge"),
              ("mix", "--composition", "Cu 70 Zn 30")):
    said = program.run(*words, "--units", "workshop")[1]
    said = said.replace("\n    ", " ")  # a line that was folded
    said = re.split(r"\nsources\n", said, flags=re.I)[0] + (said.split("\nStrong magnets\n") + [""])[1]
    said = re.sub(r"\[[^\]]*\]", "", said)
    left = [line for line in said.splitlines() if BENCH.search(line) and " = " not in line]
    check(said and not left, f"{words[0]} --units workshop: {left[:3]}")
    check("°F" in said, f"{words[0]} --units workshop: no temperature in °F")
    check("degF" not in said.replace("1e-6/degF", ""), f"{words[0]} --units workshop: both degF and °F")
refused(5, "1832 °F", "pour", "copper", "--part", "bar:20mmx50mm", "--furnace-max", "1000degC", "--units", "workshop")
said = re.sub(r"\[[^\]]*\]", "", program.run("pour", "copper", "--part", "tube:22mm:28mm:400mm")[1])
check("degC" not in said and "°C" in said, "pour: both degC and °C")

ended("words")
