"""Every option of every command that answers a question changes an answer: each is tried against the same question without
it. An option that is not listed here fails the test, so that a new one is tried too."""
import functools
import os
import re
import tempfile

from support.program import Program, check, ended

run = functools.lru_cache(maxsize=None)(Program().run)  # the question without an option is asked many times
GENERAL = {"help", "json", "units", "currency", "to", "format"}  # of every command; tried at the end
GENERAL |= {"own-trials", "own-stock"}  # of every question about a part: tried at the end

MAGNET = ["--magnet", "cylinder:15mmx15mm", "--grade", "N42"]
SETUP = [*MAGNET, "--tube", "18mm:24mm:400mm"]
MIX = "mix:Ag 92.5 Cu 7.5"

# option: words that state it, or (words of the question without it, words that state it)
CONDITIONS = {"at": ["--at", "200K"], "condition": ["--condition", "annealed"], "price-form": ["--price-form", "retail"],
              "purity-rrr": ["--purity-rrr", "50"]}
STATE = {"as": ["--as", "handbook"], "feedstock": ["--feedstock", "scrap"], "porosity": ["--porosity", "8%"], "treatment": ["--treatment", "aged"]}
BRIEF = {"short": ["--short"], "plain": ["--plain"]}
MAGNET_OPTIONS = {"magnet": ["--magnet", "cylinder:12mmx10mm"], "grade": ["--grade", "N52"], "recoil-permeability": ["--recoil-permeability", "1.2"],
                  "magnet-mass": ["--magnet-mass", "30g"], "magnet-at": ["--magnet-at", "60degC"]}


def magnet_of(words):
    """The words without the grade, for what is stated instead of it."""
    at = words.index("--grade")
    return words[:at] + words[at + 2:]


def without(words, option):
    """The words without an option and its value."""
    at = words.index(option)
    return words[:at] + words[at + 2:]


def with_strength(base):
    """--br and --surface-field against each other and the grade."""
    bare = magnet_of(base)
    return {"br": ([*bare, "--br", "1.2T"], ["--br", "1.35T"]), "surface-field": ([*bare, "--br", "1.2T"], ["--surface-field", "0.35T@1mm"], bare)}


def setup_options(base):
    return {**MAGNET_OPTIONS, **with_strength(base), "tube": ["--tube", "18mm:30mm:400mm"], "slits": ["--slits", "1"], "off-axis": ["--off-axis", "0.5mm"],
            "release": ["--release", "face"], "stop": ["--stop", "out"]}


DROP = ["drop", *SETUP, "--metal", "copper"]
CORNERS = [(0, 0, 0), (20, 0, 0), (0, 20, 0), (0, 0, 20)]
SIDES = [(0, 2, 1), (0, 1, 3), (0, 3, 2), (1, 2, 3)]
KEPT = tempfile.TemporaryDirectory()
SOLID = os.path.join(KEPT.name, "corner.stl")
with open(SOLID, "w", encoding="ascii") as out:
    facets = ["facet normal 0 0 0\nouter loop\n" + "".join("vertex %d %d %d\n" % CORNERS[c] for c in side) + "endloop\nendfacet\n" for side in SIDES]
    out.write("solid corner\n" + "".join(facets) + "endsolid corner\n")

DRAG = ["drag", *SETUP, "--metal", "copper", "--speed", "0.05m/s"]
SWEEP = ["sweep", *SETUP, "--metal", "copper", "--over", "wall", "1mm:5mm", "--steps", "3", "--samples", "20"]
LENGTHS = ["sweep", *SETUP, "--metal", "copper", "--over", "length", "200mm:400mm", "--steps", "3", "--samples", "20"]
PLATE = ["plate", *MAGNET, "--metal", "copper", "--thickness", "5mm", "--gap", "2mm", "--speed", "0.5m/s"]
DESIGN = ["design", *MAGNET, "--time", "3s", "--longest", "400mm", "--metal", "copper,brass-cartridge", "--samples", "20"]
INFER = ["infer", *SETUP, "--time", "4.2s,4.3s"]
REFERENCE = ["--reference-tube", "18mm:24mm:300mm", "--reference-time", "3.2s", "--reference-resistivity", "58MS/m"]
MEASURE = ["measure", "--magnet", "cylinder:15mmx15mm", "--field", "0.21T@5mm", "--tube", "18mm:24mm:1m", "--current", "5A", "--voltage", "0.5mV",
           "--span", "0.9m"]
RANK = ["rank", "--goal", "strongest-brake", "--top", "5", "--samples", "100"]
FALL = ["rank", "--goal", "longest-fall", *SETUP, "--from", "copper,aluminium-6061", "--samples", "20"]
VERSUS = ["versus", "copper", "silver", "--goal", "strongest-brake", "--samples", "200"]
VERSUS_FALL = ["versus", "copper", "silver", "--goal", "longest-fall", *SETUP, "--samples", "20"]
TRADEOFF = ["tradeoff", "--goal", "strongest-brake", "--and", "light-conductor", "--from", "copper,silver,aluminium-6061,brass-cartridge", "--samples", "50"]
TRADEOFF_FALL = ["tradeoff", "--goal", "longest-fall", *SETUP, "--and", "least-contraction", "--from", "copper,aluminium-6061", "--samples", "20"]
BLEND = ["mix", "1.2kg sterling-silver + 300g silver"]
COMPOSITION = ["mix", "--composition", "Ag 92.5 Cu 7.5"]
POUR = ["pour", "copper", "--part", "tube:12mm:16mm:100mm"]


def fall_options(base, holding_base):
    """Set-up, holding and amount of a goal with a fall."""
    out = {name: words if isinstance(words, tuple) else (base, words) for name, words in setup_options(base).items()}
    out["holding"] = (holding_base, ["--holding", "mass"])
    out["mass"] = ([*base, "--holding", "mass", "--mass", "300g"], ["--mass", "200g"])
    out["budget"] = ([*base, "--holding", "budget", "--budget", "20USD"], ["--budget", "5USD"])
    return out


QUESTIONS = [
    (["metals"], {"where": ["--where", "liquidus < 500 degC"], "find": ["--find", "bronze"],
                  "at": (["metals", "--where", "density > 8.9 g/cm3"], ["--at", "1000K"]),
                  "condition": (["metals", "--where", "conductivity > 50 MS/m"], ["--condition", "cold-worked"]),
                  "price-form": (["metals", "--where", "price < 10 USD/kg"], ["--price-form", "retail"]),
                  "purity-rrr": (["metals", "--where", "resistivity < 0.05 uohm.cm", "--at", "20K"], ["--purity-rrr", "20"]),
                  "as": (["metals", "--where", "conductivity > 50 MS/m"], ["--as", "casting"]), "feedstock": (["metals", "--where", "conductivity > 50 MS/m"], ["--feedstock", "scrap"]),
                  "porosity": (["metals", "--where", "density > 8.9 g/cm3"], ["--porosity", "8%"]),
                  "treatment": (["metals", "--where", "conductivity > 24 MS/m", "--as", "casting"], ["--treatment", "quenched"])}),
    (["value", "copper", "resistivity"], {**BRIEF, **STATE, "as": ["--as", "casting"], "at": ["--at", "200K"], "condition": (["value", "brass-cartridge", "resistivity"], ["--condition", "cold-worked"]),
                                          "price-form": (["value", "copper", "price"], ["--price-form", "retail"]),
                                          "purity-rrr": (["value", "copper", "resistivity", "--at", "20K"], ["--purity-rrr", "20"])}),
    (["sheet", "copper"], {**CONDITIONS, **STATE, "as": ["--as", "casting"], "condition": (["sheet", "brass-cartridge"], ["--condition", "cold-worked"]), "purity-rrr": (["sheet", "copper", "--at", "20K"], ["--purity-rrr", "20"])}),
    (["compare", "copper", "silver", "--show", "resistivity,price"],
     {**CONDITIONS, **STATE, "as": ["--as", "casting"], "show": ["--show", "density"], "purity-rrr": (["compare", "copper", "--show", "resistivity", "--at", "20K"], ["--purity-rrr", "20"])}),
    (RANK, {**BRIEF, **STATE, **fall_options(FALL, RANK), "at": ["--at", "200K"], "condition": ["--condition", "cold-worked"],
            "price-form": (["rank", "--goal", "braking-per-cost", "--top", "5", "--samples", "100"], ["--price-form", "retail"]),
            "purity-rrr": (["rank", "--goal", "strongest-brake", "--from", "copper", "--at", "20K", "--samples", "20"], ["--purity-rrr", "20"]),
            "goal": ["--goal", "light-conductor"], "formula": (["rank", "--formula", "1 / density", "--top", "5", "--samples", "20"], ["--formula", "density"]),
            "best": (["rank", "--formula", "density", "--top", "5", "--samples", "20"], ["--best", "low"]), "where": ["--where", "density < 5 g/cm3"],
            "include-unusual": (["rank", "--goal", "strongest-brake", "--samples", "0"], ["--include-unusual"]), "from": ["--from", "copper,silver"],
            "also": (["rank", "--goal", "strongest-brake", "--samples", "0"], ["--also", MIX]), "top": ["--top", "2"], "samples": ["--samples", "50"], "seed": ["--seed", "7"]}),
    (TRADEOFF, {**STATE, **fall_options(TRADEOFF_FALL, [*TRADEOFF[:4], "least-contraction", *TRADEOFF[5:]]), "at": ["--at", "200K"], "condition": ["--condition", "cold-worked"],
                "price-form": ([*TRADEOFF[:4], "braking-per-cost", *TRADEOFF[5:]], ["--price-form", "retail"]),
                "purity-rrr": ([*TRADEOFF, "--at", "20K", "--from", "copper,silver"], ["--purity-rrr", "20"]),
                "goal": ["--goal", "braking-per-cost"], "and": ["--and", "braking-per-cost"], "where": ["--where", "density < 5 g/cm3"],
                "formula": (["tradeoff", "--formula", "density", "--and", "light-conductor", "--from", "copper,silver", "--samples", "20"], ["--formula", "1 / density"]),
                "best": (["tradeoff", "--formula", "density", "--and", "light-conductor", "--from", "copper,silver", "--samples", "20"], ["--best", "low"]),
                "and-formula": (["tradeoff", "--goal", "strongest-brake", "--and-formula", "density", "--from", "copper,silver", "--samples", "20"], ["--and-formula", "1 / density"]),
                "and-best": (["tradeoff", "--goal", "strongest-brake", "--and-formula", "density", "--from", "copper,silver", "--samples", "20"], ["--and-best", "low"]),
                "include-unusual": (["tradeoff", "--goal", "strongest-brake", "--and", "light-conductor", "--samples", "10"], ["--include-unusual"]),
                "from": ["--from", "copper,silver"], "also": (["tradeoff", "--goal", "strongest-brake", "--and", "light-conductor", "--samples", "10"], ["--also", MIX]),
                "samples": ["--samples", "80"], "seed": ["--seed", "7"]}),
    (VERSUS, {**BRIEF, **STATE, **fall_options(VERSUS_FALL, VERSUS), "at": ["--at", "200K"], "condition": ["--condition", "cold-worked"],
              "price-form": (["versus", "copper", "aluminium-6061", "--goal", "braking-per-cost", "--samples", "200"], ["--price-form", "retail"]),
              "purity-rrr": ([*VERSUS, "--at", "20K"], ["--purity-rrr", "20"]), "goal": ["--goal", "braking-per-cost"],
              "formula": (["versus", "copper", "silver", "--formula", "density", "--samples", "20"], ["--formula", "1 / density"]),
              "best": (["versus", "copper", "silver", "--formula", "density", "--samples", "20"], ["--best", "low"]), "samples": ["--samples", "300"], "seed": ["--seed", "7"]}),
    (DROP, {**BRIEF, **STATE, **setup_options(DROP), "metal": ["--metal", "silver"], "resistivity": ([*DROP[:-2], "--resistivity", "50%IACS"], ["--resistivity", "60%IACS"]),
            "samples": ["--samples", "200"], "seed": ["--seed", "7"], "at": ["--at", "200K"], "price-form": ["--price-form", "retail"],
            "condition": ([*DROP[:-1], "brass-cartridge"], ["--condition", "cold-worked"]), "purity-rrr": ([*DROP, "--at", "20K"], ["--purity-rrr", "20"]),
            "against-tube": ["--against-tube", "18mm:30mm:400mm"], "against-metal": ["--against-metal", "silver"], "against-resistivity": ["--against-resistivity", "50%IACS"],
            "against-magnet": ["--against-magnet", "cylinder:12mmx10mm"], "against-grade": ["--against-grade", "N52"], "against-br": ["--against-br", "1.2T"],
            "against-magnet-mass": ["--against-magnet-mass", "30g"], "against-slits": ["--against-slits", "1"], "against-at": ["--against-at", "200K"],
            "against-condition": ["--against-condition", "annealed"],
            "liner": ["--liner", "0.5mm"], "liner-metal": ([*DROP, "--liner", "0.5mm"], ["--liner-metal", "silver"]),
            "sleeve": ["--sleeve", "1mm"], "sleeve-metal": ([*DROP, "--sleeve", "1mm"], ["--sleeve-metal", "30MS/m"]),
            "below": ["--below", "18mm:24mm:200mm"], "below-metal": ([*DROP, "--below", "18mm:24mm:200mm"], ["--below-metal", "silver"]),
            "lower-end": ["--lower-end", "17mm:24mm"], "slit-width": ["--slit-width", "1mm"], "slit-length": ["--slit-length", "200mm"],
            "seam": ([*DROP, "--slit-width", "0.2mm"], ["--seam", "15uohm.cm"])}),
    (DRAG, {**STATE, **{name: words for name, words in setup_options(DRAG).items() if name not in ("release", "stop")}, "metal": ["--metal", "silver"], "speed": ["--speed", "0.2m/s"], "at": ["--at", "200K"],
            "resistivity": (["drag", *SETUP, "--speed", "0.05m/s", "--resistivity", "50%IACS"], ["--resistivity", "60%IACS"]),
            "condition": (["drag", *SETUP, "--speed", "0.05m/s", "--metal", "brass-cartridge"], ["--condition", "cold-worked"]),
            "purity-rrr": ([*DRAG, "--at", "20K"], ["--purity-rrr", "20"]), "tube": ["--tube", "18mm:30mm:400mm"]}),
    (INFER, {**STATE, **setup_options(INFER), "time": ["--time", "5s"], "time-uncertainty": ["--time-uncertainty", "0.5s"], "at": ["--at", "200K"],
             "frames": (["infer", *SETUP, "--frame-rate", "60", "--frames", "252"], ["--frames", "300"]),
             "frame-rate": (["infer", *SETUP, "--frames", "252", "--frame-rate", "60"], ["--frame-rate", "50"]),
             "resistance": (["infer", *SETUP, "--resistance", "0.05mohm", "--span", "0.3m"], ["--resistance", "0.1mohm"]),
             "span": (["infer", *SETUP, "--resistance", "0.05mohm", "--span", "0.3m"], ["--span", "0.2m"]), "tube-mass": ["--tube-mass", "700g"],
             "reference-tube": (INFER, ["--reference-tube", "18mm:24mm:300mm", "--reference-time", "3.2s", "--reference-resistivity", "58MS/m"]),
             "reference-time": ([*INFER, *REFERENCE], ["--reference-time", "3.4s"]), "reference-resistivity": ([*INFER, *REFERENCE], ["--reference-resistivity", "50MS/m"]),
             "likely": ["--likely", "gold"], "also": ["--also", "mix:Cu 97 Zn 3"], "samples": ["--samples", "500"], "seed": ["--seed", "7"], "condition": ["--condition", "cold-worked"]}),
    (SWEEP, {**STATE, "treatment": (["aluminium-6061" if w == "copper" else w for w in SWEEP], ["--treatment", "aged"]), **setup_options(SWEEP), "metal": ["--metal", "silver"], "over": ["--over", "wall", "1mm:8mm"], "steps": ["--steps", "4"], "samples": ["--samples", "40"], "seed": ["--seed", "7"],
             "hold": (LENGTHS, ["--hold", "mass"]), "mass": ([*LENGTHS, "--hold", "mass"], ["--mass", "300g"]),
             "budget": ([*LENGTHS, "--hold", "budget", "--budget", "5USD"], ["--budget", "8USD"]),
             "resistivity": (["sweep", *SETUP, "--over", "wall", "1mm:5mm", "--steps", "3", "--samples", "20", "--resistivity", "50%IACS"], ["--resistivity", "60%IACS"]),
             "at": ["--at", "200K"], "price-form": (["sweep", *SETUP, "--metal", "copper", "--over", "budget", "5USD:50USD", "--steps", "3", "--samples", "20"], ["--price-form", "retail"]),
             "condition": (["sweep", *SETUP, "--metal", "brass-cartridge", "--over", "wall", "1mm:5mm", "--steps", "3", "--samples", "20"], ["--condition", "cold-worked"]),
             "purity-rrr": ([*SWEEP, "--at", "20K"], ["--purity-rrr", "20"])}),
    (DESIGN, {**STATE, **MAGNET_OPTIONS, **with_strength(DESIGN), "time": ["--time", "2s"], "mass": (without(DESIGN, "--time") + ["--mass", "300g"], ["--mass", "500g"]),
              "budget": (without(DESIGN, "--time") + ["--budget", "10USD"], ["--budget", "5USD"]), "clear": ["--clear", "1mm"], "longest": ["--longest", "150mm"],
              "least-wall": ["--least-wall", "3mm"], "crucible-volume": (without(DESIGN, "--time") + ["--budget", "100USD"], ["--crucible-volume", "60cm3"]),
              "lift": (without(DESIGN, "--time") + ["--budget", "100USD"], ["--lift", "500g"]), "process": ["--process", "sand"], "metal": ["--metal", "copper"],
              "top": ["--top", "1"], "samples": ["--samples", "40"], "seed": ["--seed", "7"], "at": ["--at", "200K"], "price-form": ["--price-form", "retail"],
              "condition": ["--condition", "cold-worked"], "purity-rrr": ([*DESIGN, "--at", "20K"], ["--purity-rrr", "20"])}),
    (PLATE, {**STATE, **MAGNET_OPTIONS, **with_strength(PLATE), "axis": (["plate", "--magnet", "sphere:20mm", *PLATE[3:]], ["--axis", "along"]), "metal": ["--metal", "silver"], "thickness": ["--thickness", "2mm"], "gap": ["--gap", "5mm"],
             "height": ([w for w in PLATE if w not in ("--gap", "2mm")] + ["--height", "12mm"], ["--height", "15mm"]), "speed": ["--speed", "1m/s"],
             "steps": (["plate", *MAGNET, "--metal", "copper", "--thickness", "5mm", "--gap", "2mm", "--speed", "0.1m/s:1m/s"], ["--steps", "4"]),
             "slope": ["--slope", "30"], "friction": ([*PLATE, "--slope", "30"], ["--friction", "0.2"]), "pendulum": ["--pendulum", "1m"],
             "swing": ([*PLATE[:-2], "--pendulum", "1m"], ["--swing", "20mm"]), "drop-from": ([*PLATE[:-4], "--drop-from", "20mm"], ["--drop-from", "30mm"]),
             "block": ([*PLATE[:-4], "--drop-from", "20mm"], ["--block", "30mm"]),
             "resistivity": (["plate", *MAGNET, "--thickness", "5mm", "--gap", "2mm", "--speed", "0.5m/s", "--resistivity", "50%IACS"], ["--resistivity", "60%IACS"]),
             "at": ["--at", "200K"], "condition": (["plate", *MAGNET, "--metal", "brass-cartridge", "--thickness", "5mm", "--gap", "2mm", "--speed", "0.5m/s"], ["--condition", "cold-worked"]),
             "purity-rrr": ([*PLATE, "--at", "20K"], ["--purity-rrr", "20"])}),
    (MEASURE, {"magnet": ["--magnet", "cylinder:12mmx10mm"], "magnet-mass": ["--magnet-mass", "20g"], "field": ["--field", "0.1T@10mm"], "meter-error": ["--meter-error", "5%"],
               "tube": ["--tube", "18mm:30mm:1m"], "current": ["--current", "4A"], "voltage": ["--voltage", "0.6mV"], "reversed-voltage": ["--reversed-voltage", "-0.49mV"], "span": ["--span", "0.8m"]}),
    (BLEND, {"composition": (COMPOSITION, ["--composition", "Ag 80 Cu 20"], ["mix"]), "atomic": (COMPOSITION, ["--atomic"]), "treatment": (COMPOSITION, ["--treatment", "annealed"]),
             "melt-loss": ["--melt-loss", "2%"], "to": ["--to", "Ag 95.8"], "with": ([*BLEND, "--to", "Ag 94.5"], ["--with", "(Ag 99 Cu 1)"]), "at": (COMPOSITION, ["--at", "800degC"]),
             "impurity": (["mix", "--composition", "Cu 100"], ["--impurity", "P 0.02"]), "measured": (["mix", "--composition", "Cu 100"], ["--measured", "85%IACS"])}),
    (POUR, {"part": ["--part", "sphere:20mm"], "count": ["--count", "3"], "process": ["--process", "sand"], "stock": ["--stock", "1mm"], "clear": ["--clear", "11mm"],
            "superheat": ["--superheat", "60K"], "mould-temperature": ["--mould-temperature", "500degC"], "shell-wall": ["--shell-wall", "12mm"], "sprue": ["--sprue", "200mm:12mm"],
            "gating": ["--gating", "150g"], "no-feeder": ["--no-feeder"], "melt-loss": ["--melt-loss", "5%"], "heel": ["--heel", "100g"], "yield": ["--yield", "40%"],
            "start": ["--start", "300degC"], "condition": (["pour", "bronze-silicon-cast", "--part", "bar:20mmx50mm"], ["--condition", "cold-worked"]),
            "stl-unit": (["pour", "copper", "--part", "stl:" + SOLID], ["--stl-unit", "in"]), "price-form": ["--price-form", "retail"],
            "power": ["--power", "2kW"], "efficiency": ([*POUR, "--power", "2kW"], ["--efficiency", "10%"]), "furnace-max": ["--furnace-max", "1300degC"],
            "crucible": ["--crucible", "graphite"], "crucible-volume": ["--crucible-volume", "500cm3"], "mould": ["--mould", "fused silica"], "mould-max": ["--mould-max", "1000degC"],
            "lift-max": ["--lift-max", "10kg"], "acknowledge-hazard": (["pour", "lead", "--part", "bar:20mmx50mm"], ["--acknowledge-hazard"])}),
]


def options_of(words):
    code, text, err = run(words[0], "--help")
    check(code == 0, f"{words[0]} --help: {err}")
    return set(re.findall(r"^\s+(?:-h,)?--([a-z-]+)", text, re.M)) - GENERAL


def restated(base, words):
    """The question with the option stated in place of what it stated of it before."""
    name = words[0]
    if name not in base:
        return [*base, *words]
    at = base.index(name)
    return base[:at] + words + base[at + len(words):]


for base, tried in QUESTIONS:
    command = base[0]
    declared = options_of(base)
    own_to = {"to"} if command == "mix" else set()
    for missing in (declared | own_to) - set(tried):
        check(False, f"{command} --{missing}: no question here tries it")
    for gone in set(tried) - declared - own_to - ({"tube"} if command == "plate" else set()):
        check(False, f"{command} --{gone}: the command has no such option")
    for option, words in tried.items():
        if isinstance(words, tuple):
            asked, stated = words[0], words[1]
            with_it = [*words[2], *stated] if len(words) > 2 else restated(asked, stated)
        else:
            asked, with_it = base, restated(base, words)
        before, after = run(*asked), run(*with_it)
        check(after[0] == 0, f"{with_it}: exit {after[0]}: {after[2].strip()}")
        if after[:2] == before[:2]:
            check(run(*asked, "--json")[1] != run(*with_it, "--json")[1], f"{command} --{option}: changes nothing: {asked} against {with_it}")

# those of every command
asked = ["value", "copper", "liquidus"]
check(run(*asked)[1] != run(*asked, "--units", "workshop")[1], "--units changes nothing")
check(run(*asked)[1] != run(*asked, "--json")[1], "--json changes nothing")
check(run("compare", "copper", "--show", "density")[1] != run("compare", "copper", "--show", "density", "--format", "csv")[1], "--format changes nothing")
with tempfile.TemporaryDirectory() as folder:
    own = ["--workshop", os.path.join(folder, "own.sqlite")]
    check(run(*own, "rate", "add", "EUR", "1.08", "--date", "2026-11-25", "--source", "a bank")[0] == 0, "a rate could not be kept")
    money = ["value", "copper", "price"]
    check(run(*own, *money)[1] != run(*own, *money, "--currency", "EUR")[1], "--currency changes nothing")
    file = os.path.join(folder, "table.csv")
    check(run("compare", "copper", "--show", "density", "--to", file)[0] == 0 and os.path.getsize(file) > 100, "--to wrote nothing")

# the form of the price is heeded wherever money is: 5 USD buys as much copper in a sweep as in a ranking
swept = [run("sweep", *SETUP, "--metal", "copper", "--over", "budget", "5USD:50USD", "--steps", "3", "--samples", "20", "--price-form", form)[1] for form in ("exchange", "retail", "scrap")]
check(len(set(swept)) == 3, "sweep --over budget: the form of the price changes nothing")

with tempfile.TemporaryDirectory() as folder:
    own = ["--workshop", os.path.join(folder, "own.sqlite")]
    kept = run(*own, "trial", "add", "drop", *SETUP, "--metal", "copper", "--times", "4.2s,4.3s,4.25s")
    check(kept[0] == 0, "a trial could not be kept: " + kept[2])
    for base in (DROP, DRAG, RANK, VERSUS, SWEEP, PLATE, [*TRADEOFF], ["value", "copper", "resistivity", "--as", "casting"]):
        check(run(*own, *base, "--json")[1] != run(*own, *base, "--own-trials", "off", "--json")[1], f"{base[0]} --own-trials: changes nothing")
    poured = ["pour", "copper", "--part", "tube:12mm:16mm:100mm"]
    kept = [run(*own, "trial", "add", "casting", "--metal", "copper", "--mass", "850 g", "--part", "bar:35mm:100mm", "--pattern", "bar:35.5mm:101mm", "--process", "shell"),
            run(*own, "stock", "add", "copper", "100 g")]
    check(all(code == 0 for code, _, _ in kept), f"a casting or a lot could not be kept: {kept}")
    for option in ("own-trials", "own-stock"):
        check(run(*own, *poured)[1] != run(*own, *poured, f"--{option}", "off")[1], f"pour --{option}: changes nothing")

# what is said of a casting stands not beside the handbook's metal
refused = run("drop", *SETUP, "--metal", "copper", "--as", "handbook", "--feedstock", "pipe")
check(refused[0] == 2 and "not beside --as handbook" in refused[2] and refused[2].count("\n") == 1, f"--as handbook beside --feedstock: {refused}")
ended("options")
