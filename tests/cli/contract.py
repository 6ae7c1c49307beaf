"""The command contract against the built program: exit codes, JSON keys, one-line failures."""
import os

from support.program import Program, check, ended

program = Program()
run, answer, refused = program.run, program.answer, program.refused

# metals
metals = answer("metals")
check(len(metals) >= 153, f"only {len(metals)} metals")
check(all(set(m) >= {"slug", "name", "family", "kind", "aliases", "composition_wt_percent"} for m in metals), "metals: keys")
check([m["slug"] for m in answer("metals", "--where", "family == silver", "--where", "liquidus < 900 degC")].count("sterling-silver") == 1, "metals --where")
for name in ("lead", "copper", "zinc", "tin", "Ag"):
    first = answer("metals", "--find", name)[0]["slug"]
    check(first == {"Ag": "silver"}.get(name, name), f"metals --find {name}: first is {first}")
check(any(m["slug"] == "brass-cartridge" for m in answer("metals", "--find", "cartridge")), "metals --find")

# value
v = answer("value", "copper", "resistivity", "--at", "293.15K")
check({"metal", "property", "value", "unit", "standard_uncertainty", "temperature_K", "condition", "basis", "law", "how_known", "sources", "spread"} <= set(v), "value: keys")
check({"key", "locator", "value", "how_known"} <= set(v["sources"][0]), "value: source keys")
# R. A. Matula, J. Phys. Chem. Ref. Data 8 (1979) 1147: copper 1.678 uohm cm at 293 K.
check(abs(v["value"] - 1.678e-8) <= v["standard_uncertainty"], "copper differs from Matula 1979")
check(answer("value", "copper", "resistivity", "--at", "68degF")["value"] == answer("value", "copper", "resistivity", "--at", "20degC")["value"], "units of --at")
check(answer("value", "copper", "resistivity", "--at", "1360K")["condition"] == "liquid", "liquid copper just above melting")
check("%IACS" in run("value", "copper-etp", "conductivity", "--units", "workshop")[1], "workshop units")
check(answer("value", "copper", "price")["currency"] == "USD", "price: currency")
refused(3, "cited range", "value", "copper", "resistivity", "--at", "5000K")
refused(3, "did you mean", "value", "coper", "resistivity")
refused(3, "unknown property", "value", "copper", "colour")
refused(2, "--at", "value", "copper", "resistivity", "--at", "warm")
refused(2, "--condition", "value", "copper", "resistivity", "--condition", "shiny")
refused(2, "--units", "value", "copper", "resistivity", "--units", "imperial")
refused(5, "pure metal", "value", "sterling-silver", "resistivity", "--purity-rrr", "50")
refused(2, "--purity-rrr", "value", "copper", "resistivity", "--purity-rrr", "0.5")
refused(2, "see `pourbook --help`", "frobnicate")
refused(2, "see `pourbook value --help`", "value", "copper")
refused(4, "no reference database", "--reference", "/nowhere.sqlite", "metals")

# help: a page for every view, in the program itself
pages = run("help")[1]
for view in ("metals", "rank", "curves", "compare", "drop", "mix", "pour", "questions", "trials", "sources"):
    check(f"{view}\t" in pages and run("help", view)[1].startswith("# "), f"help {view}")
check(answer("help", "rank")["text"] == run("help", "rank")[1], "help --json")
refused(3, "see `pourbook help`", "help", "weather")

# rank
r = answer("rank", "--goal", "braking-per-cost")
check(len(r["results"]) >= 40, f"only {len(r['results'])} ranked")
check({"goal", "formula", "unit", "condition", "results", "excluded", "unrankable"} <= set(r), "rank: keys")
check({"rank", "metal", "median", "low90", "high90", "p_first", "rank_low", "rank_high", "tied_with"} <= set(r["results"][0]), "rank: result keys")
check(all(a["low90"] <= a["median"] <= a["high90"] for a in r["results"]), "rank: intervals")
check(abs(sum(a["p_first"] for a in r["results"]) - 1) < 1e-9, "rank: chances of being first sum to 1")
barred = {"lithium", "sodium", "calcium", "magnesium", "beryllium", "mercury", "cadmium", "iron", "nickel", "cobalt"}
check(not barred & {a["metal"] for a in r["results"]}, f"rank: barred metals ranked: {barred & {a['metal'] for a in r['results']}}")
excluded = {a["metal"]: a["reason"] for a in r["excluded"]}
check(barred <= set(excluded) and all(excluded[m] for m in barred), "rank: barred metals are listed with a reason")
check("magnesium" in {a["metal"] for a in answer("rank", "--goal", "strongest-brake", "--include-unusual")["results"]}, "rank --include-unusual")
everything = len(r["results"]) + len(r["excluded"]) + len(r["unrankable"])
check(everything == len(metals), f"rank: {everything} of {len(metals)} metals accounted for")
order = lambda at: [a["metal"] for a in answer("rank", "--goal", "strongest-brake", "--at", at, "--as", "handbook")["results"]]
check(order("293K").index("silver") < order("293K").index("copper"), "silver brakes more at 293 K")
check(order("77K").index("copper") < order("77K").index("silver"), "copper brakes more at 77 K")
sources_page = open(os.path.join(os.environ["POURBOOK_ROOT"], "sources.md"), encoding="utf-8").read()
for result in r["results"]:
    sheet = answer("sheet", result["metal"])
    for name in ("conductivity", "density", "price"):
        chosen = [s["key"] for s in sheet["properties"][name]["sources"] if s["chosen"]]
        check(chosen and all(f"\n## {k}\n" in sources_page for k in chosen), f"{result['metal']} {name}: source not in sources.md")
check(answer("rank", "--formula", "density", "--best", "low", "--top", "3")["results"][0]["rank"] == 1, "rank --formula")
check(len(answer("rank", "--goal", "strongest-brake", "--from", "copper,silver,sterling-silver")["results"]) == 3, "rank --from")
bare = answer("rank", "--goal", "strongest-brake", "--samples", "0", "--top", "3")["results"]
check([x["metal"] for x in bare][0] == "silver" and all(x[k] is None for x in bare for k in ("low90", "high90", "p_first", "rank_low", "rank_high")), f"rank without samples: {bare[0]}")
refused(2, "--samples", "rank", "--goal", "strongest-brake", "--samples", "5")
refused(2, "column 9", "rank", "--formula", "density + conductivity")
refused(2, "column 1:", "rank", "--formula", "densitty")
refused(2, "unknown goal", "rank", "--goal", "nonsense")
refused(2, "condition", "rank", "--goal", "strongest-brake", "--where", "liquidus <")
refused(3, "unknown metal", "rank", "--goal", "strongest-brake", "--from", "copper,unobtainium")
refused(2, "column 2001", "rank", "--formula", "1" * 10000)

# a fall as a goal, a range of temperatures
setup = ["--magnet", "cylinder:12mmx10mm", "--grade", "N42", "--tube", "13mm:17mm:0.5m"]
falls = answer("rank", "--goal", "longest-fall", *setup, "--holding", "budget", "--budget", "20USD", "--samples", "100", "--from", "copper-etp,aluminium-1350,iron")
check([abs(r["cost_usd"] - 20) < 1e-6 and r["wall_m"] > 0 and r["tube_mass_kg"] > 0 for r in falls["results"]] == [True, True], "rank: the wall that the budget buys")
check(falls["excluded"][0]["metal"] == "iron" and "ferromagnetic" in falls["excluded"][0]["reason"], "rank: iron has no fall")
alone = answer("drop", *setup, "--metal", "copper", "--samples", "400")
ranked = answer("rank", "--goal", "longest-fall", *setup, "--samples", "400", "--from", "copper")["results"][0]
check(abs(ranked["low90"] / alone["fall_time_low90_s"] - 1) < 1e-9, "rank and drop give the same fall")
refused(2, "--magnet", "rank", "--goal", "longest-fall")
refused(2, "--budget 20USD", "rank", "--goal", "longest-fall", *setup, "--holding", "budget")
refused(2, "fall_time", "rank", "--goal", "strongest-brake", *setup)
refused(2, "column 9", "rank", "--formula", "density / 0")
refused(2, "--formula: is empty", "rank", "--formula", "")
over = answer("rank", "--goal", "strongest-brake", "--at", "77K:300K", "--from", "copper,pewter", "--samples", "100")
check(over["over_the_range"] == "worst" and over["results"][0]["metal"] == "copper", "rank over a range")
check(over["unrankable"] and "no value found" in over["unrankable"][0]["reason"], "a metal without a figure over the range is named")
at = {t: len(answer("rank", "--goal", "strongest-brake", "--at", t, "--samples", "0")["results"]) for t in ("20degC", "25degC", "77K")}
check(at["25degC"] >= at["20degC"] > 100 and at["77K"] > 90, f"every temperature ranks: {at}")
for words, basis in ((("copper", "resistivity"), "cited"), (("aluminium-6061", "resistivity", "--at", "77K"), "carried"), (("brass-67", "latent_heat"), "estimated")):
    check(answer("value", *words)["basis"] == basis, f"{words}: basis")
refused(2, "rise", "rank", "--goal", "strongest-brake", "--at", "300K:77K")

# versus
HANDBOOK = ["--goal", "strongest-brake", "--as", "handbook"]
refused(2, "samples", "versus", "copper", "tin", "--samples", "0")
w = answer("versus", "copper", "sterling-silver", *HANDBOOK)
check({"winner", "ratio_median", "ratio_low90", "ratio_high90", "p_winner", "reason", "sentence", "sources"} <= set(w), "versus: keys")
check(w["winner"] == "copper" and w["p_winner"] > 0.95 and 1 <= w["ratio_low90"] <= w["ratio_median"] <= w["ratio_high90"], f"versus: {w['winner']} {w['p_winner']}")
check("solid-solution scattering" in w["sentence"] and ", annealed" in w["sentence"], f"versus: sentence: {w['sentence']}")
check(answer("versus", "sterling-silver", "copper", *HANDBOOK)["ratio_median"] == w["ratio_median"], "versus: the order of the words matters")
check(answer("versus", "copper", "silver", *HANDBOOK)["winner"] == "silver", "fine silver beats copper at 20 degC")
check(answer("versus", "copper", "silver", *HANDBOOK, "--at", "77K")["winner"] == "copper", "copper beats silver at 77 K")
over = answer("versus", "copper", "silver", "--goal", "strongest-brake", "--at", "77K:300K")
check(over["winner"] == "silver" and over["temperature_to_K"] == 300 and "at the warm end" in over["sentence"], f"versus over a range: {over['sentence']}")
refused(2, "rise", "versus", "copper", "silver", "--goal", "strongest-brake", "--at", "300K:77K")
same = answer("versus", "copper", "copper", "--goal", "strongest-brake")
check(same["winner"] is None and same["ratio_median"] == 1, "a metal against itself ties")
refused(3, "unknown metal", "versus", "copper", "kryptonite", "--goal", "strongest-brake")
refused(3, "no value", "versus", "copper", "pewter", "--goal", "strongest-brake")
refused(2, "column 9", "versus", "copper", "silver", "--formula", "density + conductivity")

# two goals at once: formulas, a range of temperatures
two = answer("tradeoff", "--formula", "conductivity", "--and-formula", "density", "--and-best", "low", "--from", "copper,silver,lead,aluminium")
check({p["metal"] for p in two["results"] if p["on_front"]} == {"silver", "copper", "aluminium"} and two["second"]["best"] == "low", f"tradeoff: the front of conductivity and lightness: {two['results']}")
two = answer("tradeoff", "--formula", "conductivity", "--and-formula", "resistivity", "--and-best", "low", "--from", "copper,silver", "--at", "77K:300K")
check(two["temperature_to_K"] == 300 and [p["metal"] for p in two["results"] if p["on_front"]] == ["silver"], "tradeoff over a range")
named = answer("tradeoff", "--goal", "strongest-brake", "--and", "light-conductor", "--from", "copper,silver,aluminium")
written = answer("tradeoff", "--goal", "strongest-brake", "--and-formula", "density * resistivity", "--and-best", "low", "--from", "copper,silver,aluminium")
check([p["second"] for p in named["results"]] == [p["second"] for p in written["results"]], "tradeoff: a goal and its formula differ")
refused(2, "column 9", "tradeoff", "--goal", "strongest-brake", "--and-formula", "density + conductivity")
refused(2, "--and", "tradeoff", "--goal", "strongest-brake", "--and", "light-conductor", "--and-formula", "density")
refused(2, "rise", "tradeoff", "--goal", "strongest-brake", "--and", "light-conductor", "--at", "300K:77K")
refused(2, "77K:300K", "value", "copper", "density", "--at", "77K:300K")

# holding: per mass and per budget are the named goals' formulas
by_mass = [x["metal"] for x in answer("rank", "--goal", "strongest-brake", "--holding", "mass")["results"]]
check(by_mass == [x["metal"] for x in answer("rank", "--goal", "braking-per-mass")["results"]], "--holding mass")
by_budget = [x["metal"] for x in answer("rank", "--goal", "strongest-brake", "--holding", "budget")["results"]]
check(by_budget == [x["metal"] for x in r["results"]], "--holding budget")
refused(2, "holds it already", "rank", "--goal", "braking-per-cost", "--holding", "budget")

# sources, check, help
check(answer("sources", "matula-1979")[0]["key"] == "matula-1979", "sources KEY")
refused(3, "unknown source", "sources", "nobody-1900")
c = answer("check", "--coverage", "--conflicts")
check(c["without_source"] == 0 and c["faults"] == [], f"check: {c['faults']}")
check(c["values"] > 3000 and c["coverage"] and isinstance(c["conflicts"], list), "check: contents")
for words in (["--help"], ["rank", "--help"], ["--version"]):
    check(run(*words)[0] == 0, f"{words}")
lines = run("--version")[1].splitlines()
check(len(lines) == 3 and lines[0].startswith("pourbook ") and lines[1].startswith("data ") and lines[1][5:] in lines[2] and lines[0][9:] in lines[2],
      f"--version: {lines}")
code, out, _ = run("--reference", "/nowhere.sqlite", "--version")
check(code == 0 and out.splitlines()[0] == lines[0] and "no reference database" in out, f"--version without a reference: {code}: {out}")

ended("command contract")
