"""`mix` against the built program: keys of the contract, refusals, mass balance."""
import json

from support.program import Program, check, ended

run = Program().run
answer, refused = Program("mix").answer, Program("mix").refused

KEYS = {"composition_wt_percent", "composition_at_percent", "density", "resistivity", "solidus_K", "liquidus_K", "metal_value"}
m = answer("1.2kg sterling-silver + 300g silver", "--treatment", "annealed")
check(KEYS <= set(m), f"keys missing: {KEYS - set(m)}")
check({"value", "standard_uncertainty", "rule"} <= set(m["resistivity"]), "resistivity: keys")
check({"value", "currency", "as_of"} <= set(m["metal_value"]), "metal_value: keys")
check(abs(m["composition_wt_percent"]["Ag"] - 94) < 1e-9, "94 % silver")
check(m["estimate"] is True, "marked as an estimate")
check(abs(sum(m["elements_kg"].values()) - 1.5) < 1e-12 and m["mass_in_kg"] == 1.5, "mass")
check(10000 < m["density"] < 10500 and 1000 < m["solidus_K"] < m["liquidus_K"] < 1235, "sterling's range")
check(all({"key", "locator", "how_known"} <= set(s) for s in m["resistivity"]["sources"]) and m["resistivity"]["sources"], "sources")

# treatments: the more is dissolved, the worse it conducts
rho = {t: answer("--composition", "Ag 92.5 Cu 7.5", "--treatment", t)["resistivity"]["value"] for t in ("quenched", "as-cast", "annealed", "aged")}
check(rho["quenched"] > max(rho["as-cast"], rho["annealed"]) and min(rho["as-cast"], rho["annealed"]) > rho["aged"], f"treatments: {rho}")

# refine, with melt loss: 1.2 (95.8 - 92.5)/(100 - 95.8) = 0.942857 kg
a = answer("1.2kg sterling-silver", "--to", "Ag 95.8", "--with", "silver", "--melt-loss", "2%")
check(abs(a["addition"]["mass_kg"] - 0.9428571) < 1e-6, "addition")
check(abs(a["addition"]["total_kg"] - 2.1428571 * 0.98) < 1e-6 and abs(a["mass_kg"] - 1.176) < 1e-9, "melt loss")

# phases, impurities
p = answer("--composition", "Pb 60 Sn 40", "--at", "150degC")
check([x["phase"] for x in p["phases"]] == ["(Pb)", "(Sn)"] and abs(sum(x["share"] for x in p["phases"]) - 1) < 1e-9, "phases")
i = answer("--composition", "Cu", "--impurity", "P 0.02", "--impurity", "Fe 0.02", "--measured", "85%IACS")
check([x["element"] for x in i["impurities"]] == ["P", "Fe"], "impurities")
check(any(x["element"] == "P" and 0.02 < x["content_wt_percent"] < 0.03 for x in i["equivalent_impurities"]), "equivalent phosphorus")

# no rule is said, with null and a reason
s = answer("--composition", "Fe 70 Cr 18 Ni 12")
check(s["resistivity"]["value"] is None and "no rule" in s["resistivity"]["reason"], "no rule: resistivity")
check(s["solidus_K"] is None and "no rule" in s["melting"]["reason"], "no rule: melting")

# clear refusals
refused(2, "sums to 110", "--composition", "Ag 92.5 Cu 17.5")
refused(3, "unknown element 'Xx'", "--composition", "Ag 92.5 Xx 7.5")
refused(2, "positive mass", "0kg silver")
refused(2, "negative", "--composition", "Ag 107.5 Cu -7.5")
refused(3, "did you mean", "1kg sterling-silvr")
refused(2, "either stocks", "--treatment", "annealed")
refused(2, "--treatment", "--composition", "Cu", "--treatment", "burnt")
refused(5, "between the two", "1kg sterling-silver", "--to", "Ag 99", "--with", "(Ag 95 Cu 5)")
refused(2, "melt loss", "1kg silver", "--melt-loss", "100%")
refused(3, "no coefficient", "--composition", "Cu", "--impurity", "Hg 0.1")
refused(5, "no impurity", "--composition", "Cu", "--measured", "110%IACS")
hundred = answer(" + ".join(f"{n}g {'copper' if n % 2 else 'brass-80'}" for n in range(1, 101)))
check(hundred["mass_in_kg"] == 5.05 and abs(hundred["composition_wt_percent"]["Zn"] - 100 * 2.55 * 0.2 / 5.05) < 1e-9, "a hundred stocks")
code, out, _ = run("mix", "1kg sterling-silver", "--units", "workshop")
check(code == 0 and "ESTIMATE" in out and "%IACS" in out and "rule" in out and "Sources" in out, "text in workshop units")
check(run("mix", "--help")[0] == 0, "help")

# a stated impurity enters the main estimate; the table of its own stays
pure, doped = answer("--composition", "Cu"), answer("--composition", "Cu", "--impurity", "P 0.02")
check(abs(doped["composition_wt_percent"]["P"] - 0.02) < 1e-9, "the impurity is part of the composition")
added = doped["resistivity"]["value"] - pure["resistivity"]["value"]
check(abs(added / (0.02 * doped["impurities"][0]["per_wt_percent"]) - 1) < 0.005, "the impurity enters the resistivity")

# a mix in words where a metal is expected
MIX = "mix:1.2kg sterling-silver + 300g silver"


def json_from(*words):
    code, out, err = run(*words, "--json")
    check(code == 0, f"{words}: exit {code}: {err.strip()}")
    return json.loads(out) if code == 0 else {}


v = json_from("value", MIX, "resistivity")
direct = answer(MIX.removeprefix("mix:"))["resistivity"]
check(abs(v["value"] / direct["value"] - 1) < 1e-9 and v["how_known"] == "computed", "value of a mix is mix's estimate")
check(v["metal"] == MIX, "the metal is named by its words")
r = json_from("rank", "--goal", "strongest-brake", "--from", MIX + ",copper")
check({x["metal"] for x in r["results"]} == {MIX, "copper"}, "rank --from a mix")
r = json_from("rank", "--goal", "strongest-brake", "--also", MIX)
check(MIX in {x["metal"] for x in r["results"]} and len(r["results"]) > 50, "rank --also a mix")
check("winner" in json_from("versus", MIX, "copper", "--goal", "strongest-brake"), "versus a mix")
TUBE = ["--magnet", "cylinder:12mmx10mm", "--grade", "N42", "--tube", "13mm:15mm:1m"]
check(json_from("drop", *TUBE, "--metal", MIX)["fall_time_s"] > 1, "drop through a mix")
check(json_from("pour", MIX, "--part", "bar:20mmx100mm")["charge_mass_kg"] > 0, "pour a mix")
poured, cited = (json_from("pour", metal, "--part", "bar:20mmx100mm") for metal in ("mix:Ag 92.5 Cu 7.5", "sterling-silver"))
check(abs(poured["linear_contraction_percent"] / cited["linear_contraction_percent"] - 1) < 0.05, "a mix has a pattern scale")
for words, expected, contains in [(["value", "mix:Xx 100", "density"], 3, "unknown element"),
                                  (["value", "mix:", "density"], 2, "needs a mix"),
                                  (["value", "mix:Ag 92.5", "density"], 2, "92.5"),
                                  (["sheet", "mix:-1kg silver"], 2, "positive mass"),
                                  (["value", "mix:Fe 64 Ni 36", "resistivity"], 3, "no rule"),
                                  (["rank", "--goal", "strongest-brake", "--also", "copper"], 2, "mix")]:
    code, out, err = run(*words)
    check(code == expected and contains in err and err.count("\n") == 1 and not out, f"{words}: {code} {err!r}")

ended("mix")
