"""Questions 1 to 8 of the design, before a project. Each answers (what was done, what was read)."""
import re

from person import SETUP, equal, figures, plain
from window import check

PLAN = ["--part", "tube:18mm:24mm:400mm", "--process", "shell", "--clear", "15mm"]
PINNED = ["copper", "sterling-silver", "aluminium-6061", "brass-cartridge"]
SECONDS = r"falls ([\d.]+) s, 90 % interval ([\d.]+) to ([\d.]+) s"


def same_order(items, told, rows=8, unit=1):
    """The first rows of the table: metal, median, interval, chance of being first, and who is tied with the best."""
    tied = told["results"][0]["tied_with"]
    for row in told["results"][:rows]:
        at = f"rank.{row['rank']}"
        metal = items[f"rank.row.{row['rank']}"]["text"]
        check(metal == row["metal"], f"row {row['rank']} shows {metal}, the command says {row['metal']}")
        equal(items[at + ".median"]["text"], row["median"] / unit, f"median of {metal}")
        low, high = items[at + ".interval"]["text"].split("–")
        equal(low, row["low90"] / unit, f"low end of {metal}")
        equal(high, row["high90"] / unit, f"high end of {metal}")
        first = items[at + ".p_first"]["text"]
        equal(first.removesuffix(" %"), 100 * row["p_first"], f"chance of {metal} to be first")
        marked = "≈" in items.get(at + ".marks", {"text": ""})["text"]
        check(marked == (metal in tied), f"{metal}: tied with the best: {marked}, the command: {metal in tied}")
    check(items.get("excluded", {"text": "0"})["text"] == str(len(told["excluded"])), "another number of metals is left out")


def which_metal(p):
    p.pick("goal", "strongest-brake")
    items = p.window.settled()["items"]
    told = p.told("rank", "--goal", "strongest-brake")
    same_order(items, told, unit=1e6)
    settling = items["rank.settling"]["text"]
    check(settling == told.get("settling", {"sentence": ""})["sentence"], f"what would settle it: {settling!r}")
    tied = told["results"][0]["tied_with"]
    return "goal", f"1st {items['rank.row.1']['text']} {items['rank.1.median']['text']} MS/m; not to be told apart from it: {', '.join(tied) or 'none'}"


def for_my_money(p):
    p.pick("goal", "strongest-brake")
    best = []
    for place, holding in ((1, "mass"), (2, "budget")):
        p.window.click(f"holding.{place}")
        items = p.window.settled()["items"]
        same_order(items, p.told("rank", "--goal", "strongest-brake", "--holding", holding))
        best.append(f"same {holding}: 1st {items['rank.row.1']['text']}, 2nd {items['rank.row.2']['text']}")
    return "goal; same mass; same cost", "; ".join(best)


def fall_for_my_money(p):
    p.pick("goal", "longest-fall")
    p.window.click("holding.2")
    p.fill("fall.budget", "10 USD")
    items = p.window.settled()["items"]
    told = p.told("rank", "--goal", "longest-fall", *SETUP, "--holding", "budget", "--budget", "10 USD")
    same_order(items, told)
    equal(items["rank.1.wall"]["text"], told["results"][0]["wall_m"] * 1e3, "wall of the first")
    p.window.click("holding.1")
    by_mass = p.window.settled()["items"]
    same_order(by_mass, p.told("rank", "--goal", "longest-fall", *SETUP, "--holding", "mass", "--mass", "300 g"))
    return "goal, same cost, budget; same mass", f"10 USD: {items['rank.row.1']['text']} {items['rank.1.median']['text']} s; 300 g: {by_mass['rank.row.1']['text']} {by_mass['rank.1.median']['text']} s"


def from_my_shelf(p):
    w = p.window
    w.key("F8")
    w.click("bench.shelf")
    w.click("shelf.stock")
    for metal, mass, price in (("silver", "200 g", "900 USD/kg"), ("brass-cartridge", "3 kg", "9 USD/kg")):
        if w.text("field.metal"):
            w.click("entry.new")
        w.click("field.metal")
        w.write(metal)
        w.key("Tab")
        w.write(mass)
        w.key("Tab")
        w.write(price)
        w.key("Return")
        w.click("entry.keep")
        check(w.text("shelf.stock").startswith("stock  "), f"{metal} is not on the shelf")
    w.key("F2")
    w.click("candidates.2")
    items = w.settled()["items"]
    told = p.told("rank", "--goal", "braking-per-cost", "--from", "stock")
    check(len(told["results"]) == 2, f"the command ranks {len(told['results'])} metals of the shelf")
    same_order(items, told)
    equal(items["rank.1.price"]["text"], 9, "the price paid")
    return "two lots into stock; my shelf", f"1st {items['rank.row.1']['text']} {items['rank.1.median']['text']}"


def same_fall(shown, told, what):
    for figure, key in zip(figures(SECONDS, shown, what), ("fall_time_s", "fall_time_low90_s", "fall_time_high90_s")):
        equal(figure, told[key], f"{key}, {what}")


def fall_time(p):
    w = p.window
    w.key("F5")
    times = []
    for at in ("20 degC", "0 degC", "77 K"):
        if w.text("temperature") != at:
            p.fill("temperature", at)
        last = f"drop.bars.{PINNED[-1]}.0"
        items = w.screen_when(lambda s: last in s["items"], last)["items"]
        for metal in PINNED:
            told, failure = p.asked("drop", *SETUP, "--metal", metal, "--at", at)
            shown = items[f"drop.bars.{metal}.0"]["text"]
            if told is None:
                check(failure.endswith(shown.splitlines()[-1]), f"{metal} at {at}: the window says {shown!r}, the command {failure!r}")
            else:
                same_fall(shown, told, f"{metal} at {at}")
        times.append(f"{at} {items['drop.time']['text']}")
    return "temperature, twice", f"{items['drop.metal']['text']} at " + ", ".join(times)


def thick_enough(p):
    p.window.key("F5")
    items = p.window.settled()["items"]
    told = p.told("sweep", *SETUP, "--metal", ",".join(PINNED), "--over", "wall", "0.5mm:15mm", "--steps", "25")
    for line in told["lines"]:
        for number, point in enumerate(line["points"][:3]):
            same_fall(items[f"drop.sweep.{line['metal']}.{number}"]["text"], point, f"{line['metal']} with a wall of {point['x']} m")
    half, most = figures(r"half at ([\d.]+) mm, nine tenths at ([\d.]+) mm", items["drop.sweep.words"]["text"], "the legend of the sweep")
    equal(half, told["wall_for_half_of_endless_m"] * 1e3, "wall for a half")
    equal(most, told["wall_for_90_percent_of_endless_m"] * 1e3, "wall for nine tenths")
    return "nothing: shown at once", f"an endless wall's half at {half} mm, nine tenths at {most} mm"


def scrap(p):
    w = p.window
    w.key("F6")
    p.fill("mix.stock.0.mass", "2 kg")
    p.fill("mix.stock.0.metal", "brass-cartridge")
    w.click("mix.stock.1.remove")
    p.fill("mix.target", "Cu 85")
    p.fill("mix.with", "copper")
    items = w.settled()["items"]
    told = p.told("mix", "2kg brass-cartridge", "--melt-loss", "1%", "--to", "Cu 85", "--with", "copper")
    per_kg, whole = figures(r"Metal ([\d.]+) USD/kg, ([\d.]+) USD in the melt", items["mix.worth"]["text"], "worth")
    equal(per_kg, told["metal_value"]["value"], "worth of a kilogram")
    equal(whole, told["metal_value_total"]["value"], "worth of the melt")
    added, total = figures(r"Add ([\d.]+) kg copper for 85 % Cu: ([\d.]+) kg", items["mix.addition"]["text"], "addition")
    equal(added, told["addition"]["mass_kg"], "copper to add")
    equal(total, told["addition"]["total_kg"], "all of it")
    return "mass, metal, second stock away, bring to, by adding", f"{per_kg} USD/kg, {whole} USD in the melt; {added} kg copper bring it to 85 % Cu"


def mix_with_that(p):
    w = p.window
    w.key("F6")
    p.fill("mix.stock.0.mass", "2 kg")
    items = w.settled()["items"]
    told = p.told("mix", "2kg sterling-silver + 300g silver", "--melt-loss", "1%", "--at", "870 degC")
    for element in ("Ag", "Cu"):
        equal(items["mix.wt." + element]["text"], told["composition_wt_percent"][element], f"content of {element}")
    equal(items["mix.resistivity"]["text"].split()[0], told["resistivity"]["value"] * 1e8, "resistivity")
    equal(items["mix.density"]["text"].split()[0], told["density"] / 1e3, "density")
    for end in ("solidus", "liquidus"):
        equal(items["mix." + end]["text"].split()[0], told[end + "_K"] - 273.15, end)
    return "mass", f"{items['mix.head']['text']}, {items['mix.resistivity']['text']}, liquidus {items['mix.liquidus']['text']}"


def celsius(text, what):
    return figures(r"(-?\d+) °C", text, what)[0]


def furnace_and_mould(p):
    w = p.window
    w.key("F8")
    w.click("bench.workshop")
    w.click("shelf.profile")
    p.fill("field.furnace_maximum", "1100 degC")
    w.click("entry.keep")
    w.key("F7")
    hot = w.text("pour.refused")
    plan, failure = p.asked("pour", "copper", *PLAN)
    check(plan is None and failure.endswith(hot), f"the window refuses with {hot!r}, the command with {failure!r}")
    p.pick("pour.metal", "brass-cartridge")
    w.settled()
    w.click("pour.face.1")
    w.wheel_to("pour.Temperatures.2", over="pour.Temperatures")
    items = w.settled()["items"]
    told = p.told("pour", "brass-cartridge", *PLAN)
    pour, mould = items["pour.Temperatures"]["text"], items["pour.Temperatures.2"]["text"]
    equal(celsius(pour, "pouring temperature"), told["pour_temperature_K"] - 273.15, "pouring temperature")
    equal(celsius(mould, "mould"), told["mould"]["temperature_K"] - 273.15, "temperature of the mould")
    return "furnace's limit into the workshop; metal", f"copper: {hot.split(':')[0]}; brass: {pour}, {mould.split(' (')[0]}"


def charge_and_cost(p):
    w = p.window
    w.key("F7")
    p.fill("pour.gating", "150g")
    items = w.settled()["items"]
    told = p.told("pour", "copper", *PLAN, "--gating", "150g")
    charge, cost = items["pour.Charge"]["text"], items["pour.Heat and cost"]["text"]
    kg = told["charge_mass_kg"]
    equal(charge.split()[0], kg if charge.endswith("kg") else kg * 1e3, "charge")
    equal(cost.removesuffix(" USD"), told["cost"]["value"], "cost")
    return "sprue and cup", f"{charge}, {cost}"


def pattern_and_sink(p):
    w = p.window
    w.key("F7")
    w.click("pour.face.1")
    scale = w.text("pour.Pattern")
    cells = {n: i["text"] for n, i in w.settled()["items"].items() if re.fullmatch(r"pour\.Pattern\.\d+\.\d+\.[04]", n)}
    w.wheel_to("pour.Feeder.0", over="pour.Temperatures")
    items = w.settled()["items"]
    told = p.told("pour", "copper", *PLAN)
    equal(scale.removeprefix("scale "), told["pattern"]["scale"], "scale of the pattern")
    sizes = {cells[n]: cells[n[:-1] + "4"] for n in cells if n.endswith(".0")}
    wanted = told["pattern"]["pieces"][0]["dimensions"]
    check(len(sizes) == len(wanted), f"the pattern's table shows {sizes}")
    for d in wanted:
        equal(sizes[d["name"]], d["pattern_mm"], f"{d['name']} of the pattern")
    last = figures(r"freezes last(?:, and sinks if not fed)?: (.*) \(modulus", items["pour.Feeder.0"]["text"], "feeder")[0]
    check(last == told["feeder"]["freezes_last"], f"freezes last: {last}")
    return "the wheel down to the feeder", f"{scale}: " + ", ".join(f"{n} {s} mm" for n, s in sizes.items()) + f"; sinks: {last}"


def what_can_hurt(p):
    w = p.window
    w.click("pin.brass-cartridge")
    items = w.settled()["items"]
    hazards = p.told("sheet", "brass-cartridge")["hazards"]
    check(len(hazards) > 0, "the command knows no hazard of brass")
    for number, hazard in enumerate(hazards):
        check(items[f"hazard.{number}"]["text"] == hazard["text"], f"the sheet says {items[f'hazard.{number}']['text']!r}")
    w.key("F7")
    p.pick("pour.metal", "brass-cartridge")
    w.settled()
    w.click("pour.face.1")
    cautions = p.told("pour", "brass-cartridge", *PLAN)["cautions"]
    shown = []
    w.point_at("pour.Temperatures")
    for _ in range(6):  # cautions stand first; the wheel brings the last of them
        shown += [plain(i["text"]) for n, i in w.settled()["items"].items() if n.startswith("pour.")]
        w.turn_wheel()
    for caution in cautions:
        check(any(text.startswith(plain(caution["text"])) for text in shown), f"Pour does not show: {caution['text']!r}")
    return "pinned metal; metal in Pour", f"{len(hazards)} on the sheet ({', '.join(h['element'] for h in hazards)}), {len(cautions)} at the top of the pour sheet"


PARTS = [
    ("1", "Which metal does the job best, and is the difference real?", "Rank", which_metal),
    ("2", "The same for my money", "Rank", for_my_money),
    ("2", "The longest fall for 10 USD, and for 300 g", "Rank", fall_for_my_money),
    ("2", "Only what is on my shelf, at what I paid", "Trials, Rank", from_my_shelf),
    ("3", "How long does the magnet fall, warm, in ice, in liquid nitrogen?", "Drop", fall_time),
    ("3", "How thick is thick enough?", "Drop", thick_enough),
    ("4", "2 kg of scrap brass: worth, and refined", "Mix", scrap),
    ("4", "Mixed with that", "Mix", mix_with_that),
    ("5", "Can furnace and mould take it? How hot do I pour?", "Trials, Pour", furnace_and_mould),
    ("6", "How much do I melt, and what does it cost?", "Pour", charge_and_cost),
    ("7", "How much bigger must the pattern be? Where will it sink?", "Pour", pattern_and_sink),
    ("8", "What can hurt me?", "Metals, Pour", what_can_hurt),
]
