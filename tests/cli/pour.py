"""`pourbook pour` against the built program: keys of the contract, refusals, meshes, one-line failures."""
import json
import math
import os
import struct
import tempfile

from support.program import Program, check, ended

run = Program().run
plan, refused = Program("pour").answer, Program("pour").refused

TUBE = ("--part", "tube:12mm:16mm:100mm")
CONTRACT = ("part_volume_m3", "part_mass_kg", "charge_mass_kg", "pattern", "linear_contraction_percent", "contraction_allowance_percent_low",
            "contraction_allowance_percent_high", "pour_temperature_K", "melt_energy_J", "cost", "feeder", "cautions")

# the keys of the contract, the metals of the must-show list
for metal in ("copper", "sterling-silver", "bronze-tin-cast", "aluminium-a356-cast", "za-8", "tin"):
    p = plan(metal, *TUBE)
    check(list(p)[:3] == ["metal", "process", "cautions"], f"{metal}: cautions don't come first")
    for key in CONTRACT:
        check(key in p, f"{metal}: no key {key}")
        check(p.get(key) is not None, f"{metal}: {key} is null")
    check(p["pattern"]["scale"] == 1 + p["linear_contraction_percent"] / 100, f"{metal}: scale is not 1 + contraction")
    check(math.isclose(p["part_volume_m3"], math.pi / 4 * (0.016**2 - 0.012**2) * 0.1), f"{metal}: volume")
    check({"value", "currency", "as_of"} <= set(p["cost"]), f"{metal}: money")
    check(p["charge_mass_kg"] > p["part_mass_kg"], f"{metal}: charge")
    check(all(c["text"] for c in p["cautions"]), f"{metal}: cautions")
    check(any("No limits" in c["text"] for c in p["cautions"]), f"{metal}: no caution on missing limits")
    keys = {s["key"] for s in p["sources"]}
    for traced in (p["density"], p["melt_density"], p["pour"], p["contraction"]["strain"], *[p["melt_heat_J_kg"][k] for k in ("solid", "fusion", "melt")]):
        check(traced["sources"], f"{metal}: a number without a source: {traced}")
        check({s["key"] for s in traced["sources"]} <= keys, f"{metal}: a source is not listed")
    code, text, _ = run("pour", metal, *TUBE)
    check(code == 0 and text.index("CAUTIONS FIRST") < text.index("PATTERN"), f"{metal}: text")
    check(max(len(line) for line in text.splitlines()) <= 130, f"{metal}: a line is too long for the page")

# copper: 1.0 to 2.08 % in print (Westermann; Shop Practice, softer metals), free contraction about 2.15 to 2.19 % (Habashi's coefficients)
copper = plan("copper", *TUBE, "--process", "sand")
check(math.isclose(copper["contraction_allowance_percent_low"], 1.0) and math.isclose(copper["contraction_allowance_percent_high"], 2.08), "copper: allowances")
check(2.1 < copper["linear_contraction_percent"] < 2.2, "copper: free contraction")
check(math.isclose(plan("copper", *TUBE, "--superheat", "80K")["pour_temperature_K"], 1357.77 + 80), "superheat in kelvin")
check(math.isclose(plan("copper", *TUBE, "--superheat", "144degF")["pour_temperature_K"], 1357.77 + 80), "superheat in degF is a difference")
check("°F" in run("pour", "copper", *TUBE, "--units", "workshop")[1], "workshop units")

# parts add up; mass balance
two = plan("copper", "--part", "bar:20mmx50mm", "--part", "sphere:20mm", "--process", "sand")
check(math.isclose(two["part_volume_m3"], (math.pi * 100 * 50 + math.pi / 6 * 8000) * 1e-9), "sum of parts")
c = two["charge"]
check(math.isclose(two["charge_mass_kg"], two["cast_mass_kg"] + c["returns_kg"] + c["lost_kg"] + c["heel_kg"], rel_tol=1e-9), "mass balance")
check(math.isclose(plan("copper", *TUBE, "--yield", "50%")["charge_mass_kg"], 2 * copper["cast_mass_kg"]), "yield")

# refusals
for metal in ("beryllium", "copper-beryllium", "cadmium", "woods-metal", "mercury", "sodium", "lithium"):
    refused(5, "licensed practice", metal, *TUBE)
    refused(5, "licensed practice", metal, *TUBE, "--acknowledge-hazard")
for metal in ("lead", "magnesium"):
    refused(5, "--acknowledge-hazard", metal, *TUBE)
    check(run("pour", metal, *TUBE, "--acknowledge-hazard")[0] == 0, f"{metal}: acknowledged and still refused")
refused(5, "the furnace reaches", "copper", *TUBE, "--furnace-max", "1100degC")
refused(5, "two heats", "copper", *TUBE, "--crucible-volume", "3cm3")
refused(5, "dissolve carbon", "stainless-304", *TUBE, "--crucible", "graphite")
refused(5, "closes the bore", "copper", *TUBE, "--stock", "6mm")
refused(3, "did you mean", "coper", *TUBE)
refused(2, "see `pourbook pour --help`", "copper")
refused(2, "bore must be smaller", "copper", "--part", "tube:16mm:12mm:100mm")
refused(2, "the diameter must be", "copper", "--part", "bar:0:10mm")
refused(2, "the diameter must be", "copper", "--part", "bar:-5mm:10mm")
refused(2, "100 what? 100mmx50mmx5mm", "copper", "--part", "plate:100x50x5")
refused(2, "--superheat", "copper", *TUBE, "--superheat", "hot")
refused(2, "superheat", "copper", *TUBE, "--superheat", "-20K")
refused(2, "--melt-loss", "copper", *TUBE, "--melt-loss", "3kg")
refused(2, "see `pourbook pour --help`", "copper", *TUBE, "--process", "knitting")


def write_stl(path, triangles, text=False):
    with open(path, "wb") as file:
        if text:
            file.write(b"solid t\n")
            for t in triangles:
                file.write(b"facet normal 0 0 0\nouter loop\n" + b"".join(b"vertex %g %g %g\n" % c for c in t) + b"endloop\nendfacet\n")
            file.write(b"endsolid t\n")
        else:
            file.write(b"cube".ljust(80) + struct.pack("<I", len(triangles)))
            for t in triangles:
                file.write(struct.pack("<12fH", 0, 0, 0, *[x for corner in t for x in corner], 0))


def cube(a):
    v = [(x, y, z) for x in (0, a) for y in (0, a) for z in (0, a)]
    quads = [(0, 1, 3, 2), (4, 6, 7, 5), (0, 4, 5, 1), (2, 3, 7, 6), (0, 2, 6, 4), (1, 5, 7, 3)]
    return [(v[i], v[j], v[k]) for a_, b_, c_, d_ in quads for i, j, k in ((a_, b_, c_), (a_, c_, d_))]


with tempfile.TemporaryDirectory() as folder:
    whole, words, broken, tall = (os.path.join(folder, n) for n in ("cube.stl", "text.stl", "broken.stl", "big.stl"))
    write_stl(whole, cube(20))
    write_stl(words, cube(20), text=True)
    write_stl(broken, cube(20)[:-1])
    write_stl(tall, cube(20000))
    for file in (whole, words):
        p = plan("copper", "--part", "stl:" + file)
        check(math.isclose(p["part_volume_m3"], 8e-6, rel_tol=1e-9), f"{file}: volume {p['part_volume_m3']}")
        check(any("no unit" in c["text"] for c in p["cautions"]), "the unit of the mesh is not mentioned")
    inch = plan("copper", "--part", "stl:" + whole, "--stl-unit", "in", "--process", "sand")
    check(math.isclose(inch["part_volume_m3"], 8000 * 0.0254**3, rel_tol=1e-6), "unit of the mesh")
    refused(5, "it leaks: 3 edges", "copper", "--part", "stl:" + broken)
    refused(5, "is the unit right?", "copper", "--part", "stl:" + tall)
    refused(2, "can't be opened", "copper", "--part", "stl:" + os.path.join(folder, "none.stl"))
    refused(2, "--stl-unit", "copper", "--part", "stl:" + whole, "--stl-unit", "kg")

# the defect key: asked by what was seen, all without a word, one line where nothing looks like it
code, out, err = run("defect", "jagged", "holes", "--json")
check(code == 0 and json.loads(out)[0]["name"] == "shrinkage", f"defect by its look: {out}")
code, out, err = run("defect", "--json")
check(len(json.loads(out)) >= 40, "not every defect")
check(all(d["cause"] and d["tell"] and d["change"] and d["source"] for d in json.loads(out)), "a defect without a remedy or a source")
code, out, err = run("defect", "sunk", "top", "--metal", "copper", "--part", "plate:50mmx50mmx50mm")
check(code == 0 and "this part:" in out and "cm3 are missing" in out, f"a defect beside its plan: {out}{err}")
code, out, err = run("defect", "kangaroos")
check(code == 3 and err.count("\n") == 1 and "ask for one of" in err, f"an unknown defect: {code} {err}")

ended("pour")
