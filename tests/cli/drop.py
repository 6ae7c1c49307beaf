"""Magnet and tube against the built program: two set-ups, slits, plate, measuring."""
import math

from support.program import Program, check, ended

program = Program()
run, answer, refused = program.run, program.answer, program.refused

MAGNET = ["--magnet", "cylinder:15mmx15mm", "--grade", "N42"]
SETUP = [*MAGNET, "--tube", "18mm:24mm:400mm"]


# two set-ups: the contract's keys stay, the second has the same ones
one = answer("drop", *SETUP, "--metal", "copper", "--as", "handbook")
two = answer("drop", *SETUP, "--metal", "copper", "--as", "handbook", "--against-metal", "aluminium-6061", "--against-tube", "18mm:30mm:400mm")
check(one["fall_time_s"] == two["fall_time_s"], "a second set-up changes the first")
check(set(one) <= set(two) and set(one) == set(two["against"]), "against: keys")
alone = answer("drop", *MAGNET, "--tube", "18mm:30mm:400mm", "--metal", "aluminium-6061", "--as", "handbook")
check(alone["fall_time_s"] == two["against"]["fall_time_s"], "the second set-up differs from the same one alone")
c = two["comparison"]
check(c["longer"] == "first" and c["p_longer"] > 0.95, f"against: {c['longer']} {c['p_longer']}")
check(1 <= c["ratio_low90"] <= c["ratio_median"] <= c["ratio_high90"], "against: ratio")
check(abs(c["ratio_median"] / (one["fall_time_s"] / alone["fall_time_s"]) - 1) < 0.02, "against: the ratio is not that of the times")
free = math.log(one["fall_time_high90_s"] / one["fall_time_low90_s"]) ** 2 + math.log(alone["fall_time_high90_s"] / alone["fall_time_low90_s"]) ** 2
check(math.log(c["ratio_high90"] / c["ratio_low90"]) < 0.9 * math.sqrt(free), "against: the shared magnet does not cancel")
check(c["equal_wall_m"] is None and "however thick" in c["sentence"], f"against: {c['sentence']}")
thicker = answer("drop", *MAGNET, "--tube", "18mm:20mm:400mm", "--metal", "copper", "--against-metal", "aluminium-6061")["comparison"]
wall = thicker["equal_wall_m"]
same = answer("drop", *MAGNET, "--tube", f"18mm:{18 + 2000 * wall}mm:400mm", "--metal", "aluminium-6061")["fall_time_s"]
thin = answer("drop", *MAGNET, "--tube", "18mm:20mm:400mm", "--metal", "copper")["fall_time_s"]
check(abs(same / thin - 1) < 0.005, f"the equal wall gives {same} s, not {thin} s")
check(answer("drop", *SETUP, "--metal", "copper", "--against-at", "77K")["comparison"]["longer"] == "second", "cold copper holds longer")
refused(5, "second set-up", "drop", *SETUP, "--metal", "copper", "--against-metal", "iron")
refused(3, "second set-up", "drop", *SETUP, "--metal", "copper", "--against-metal", "unobtainium")

# slits and off-axis travel
slit = answer("drop", *SETUP, "--metal", "copper", "--slits", "1")
check(0.6 < slit["drag_relative_to_whole_tube"] < 0.8 and slit["peak_drag_N"] is None, "one slit")
check(slit["fall_time_s"] < one["fall_time_s"], "a slit tube holds the magnet less long")
check(answer("drop", *SETUP, "--metal", "copper", "--as", "handbook", "--off-axis", "0.5mm")["fall_time_s"] > one["fall_time_s"], "off the axis it falls slower")
refused(5, "rub", "drop", *SETUP, "--metal", "copper", "--off-axis", "1.45mm")
refused(2, "--slits", "drop", *SETUP, "--metal", "copper", "--slits", "some")
refused(5, "thin walls", "drop", *MAGNET, "--tube", "18mm:40mm:400mm", "--metal", "copper", "--slits", "1")
refused(5, "one of the two", "drop", *SETUP, "--metal", "copper", "--slits", "1", "--off-axis", "0.2mm")

# walls of several parts, and slits that are more than a cut
BARE = [*MAGNET, "--tube", "18mm:22mm:400mm", "--metal", "copper", "--as", "handbook"]
plain = answer("drop", *BARE)
check(plain["solver"] == "steady_law" and plain["tube"]["parts"] == [], f"a plain tube: {plain['solver']}")
thick = answer("drop", *MAGNET, "--tube", "18mm:24mm:400mm", "--metal", "copper", "--as", "handbook")
for words in (["--sleeve", "1mm"], ["--sleeve", "22mm:24mm", "--sleeve-metal", "copper"]):
    coated = answer("drop", *BARE, *words)
    check(abs(coated["fall_time_s"] / thick["fall_time_s"] - 1) < 1e-3, f"{words}: {coated['fall_time_s']} against {thick['fall_time_s']}")
    check(abs(coated["tube_mass_kg"] / thick["tube_mass_kg"] - 1) < 1e-6 and coated["terminal_speed_m_s"], f"{words}: mass, speed")
lined = answer("drop", *BARE, "--liner", "16mm:17mm", "--liner-metal", "30+-1MS/m")
check(plain["fall_time_s"] < lined["fall_time_s"] and lined["tube_mass_kg"] is None and "3.333" in lined["tube"]["parts"][0], "a liner of a stated conductivity")
two = answer("drop", *BARE, "--below", "18mm:22mm:400mm", "--below-metal", "brass-cartridge")
check(two["terminal_speed_m_s"] is None and "differs along" in two["regime"] and plain["fall_time_s"] < two["fall_time_s"] < 2 * plain["fall_time_s"], f"two metals: {two['regime']}")
check(two["fall_time_low90_s"] < two["fall_time_s"] < two["fall_time_high90_s"], "two metals: the interval")
taper = answer("drop", *BARE, "--lower-end", "17mm:22mm")
check(plain["fall_time_s"] < taper["fall_time_s"] < answer("drop", *MAGNET, "--tube", "17mm:22mm:400mm", "--metal", "copper", "--as", "handbook")["fall_time_s"], "a taper")
lined_taper, thick_taper = (answer("drop", *MAGNET, "--tube", tube, "--metal", "copper", "--as", "handbook", *words)
                            for tube, words in (("18mm:22mm:400mm", ("--lower-end", "20mm:24mm", "--liner", "1mm")), ("16mm:22mm:400mm", ("--lower-end", "18mm:24mm"))))
check(abs(lined_taper["fall_time_s"] / thick_taper["fall_time_s"] - 1) < 3e-3, f"a liner follows its taper: {lined_taper['fall_time_s']} against {thick_taper['fall_time_s']}")
refused(5, "--lower-end", "drop", *BARE, "--lower-end", "15mm:22mm")
short = answer("drop", *MAGNET, "--tube", "18mm:22mm:12mm", "--metal", "copper", "--at", "77K", "--sleeve", "1mm", "--sleeve-metal", "silver")
check(short["solver"] == "currents_in_time", f"a short cold tube of two metals: {short['solver']}")
cut, wide, soldered, part = (answer("drop", *BARE, *words) for words in (["--slits", "1"], ["--slit-width", "2mm"], ["--slit-width", "0.2mm", "--seam", "15uohm.cm"],
                                                                       ["--slit-length", "200mm"]))
check(wide["fall_time_s"] < cut["fall_time_s"] < part["fall_time_s"] < plain["fall_time_s"], "slits: wide, narrow, half as long, none")
check(cut["fall_time_s"] < soldered["fall_time_s"] < plain["fall_time_s"], "a soldered seam lies between slit and whole")
measured = answer("drop", *BARE, "--seam", "0.075+-0.004uohm@200mm")
check(abs(measured["fall_time_s"] / soldered["fall_time_s"] - 1) < 0.01, f"0.2 mm of 15 uohm.cm are 0.075 uohm over 200 mm of a 2 mm wall: {measured['fall_time_s']}")
refused(5, "does not fit", "drop", *BARE, "--sleeve", "21mm:24mm")
refused(5, "as wide as the bore", "drop", *BARE, "--liner", "2mm")
refused(2, "needs the sizes", "drop", *BARE, "--sleeve-metal", "silver")
refused(2, "--slit-width", "drop", *BARE, "--seam", "15uohm.cm")
refused(5, "one part", "drop", *BARE, "--sleeve", "1mm", "--slits", "1")

# plate
p = answer("plate", *MAGNET, "--gap", "2mm", "--thickness", "5mm", "--metal", "copper", "--speed", "0.1m/s:20m/s")
check(len(p["points"]) == 15 and all(a["lift_N"] < b["lift_N"] for a, b in zip(p["points"], p["points"][1:])), "plate: lift grows with speed")
check(all(a["drag_N"] <= p["peak_drag_N"] * 1.0001 for a in p["points"]), "plate: drag above its peak")
twice = answer("plate", *MAGNET, "--gap", "2mm", "--thickness", "5mm", "--resistivity", "29MS/m", "--speed", "0.4m/s")
once = answer("plate", *MAGNET, "--gap", "2mm", "--thickness", "5mm", "--resistivity", "58MS/m", "--speed", "0.2m/s")
check(abs(twice["points"][0]["drag_N"] / once["points"][0]["drag_N"] - 1) < 1e-9, "plate: conductivity times speed is what counts")
refused(5, "lies along", "plate", *MAGNET, "--gap", "2mm", "--thickness", "5mm", "--metal", "copper", "--speed", "1m/s", "--axis", "along")
refused(2, "--speed", "plate", *MAGNET, "--gap", "2mm", "--thickness", "5mm", "--metal", "copper", "--speed", "fast")
refused(5, "ferromagnetic", "plate", *MAGNET, "--gap", "2mm", "--thickness", "5mm", "--metal", "iron", "--speed", "1m/s")

# a ball: the height or the diameter counts as it does (moment squared, sixth power), and nothing else is uncertain here
exact = ["--br", "1.3+-0.0001T", "--recoil-permeability", "1", "--magnet-mass", "6.8g"]
ball = answer("plate", "--magnet", "sphere:12+-1mm", *exact, "--height", "20+-0.001mm", "--thickness", "5+-0.001mm", "--speed", "1m/s",
              "--resistivity", "58+-0.001MS/m")["points"][0]
check(abs(ball["drag_low90_N"] / 7.4e-3 - 1) < 0.02 and abs(ball["drag_high90_N"] / 19.2e-3 - 1) < 0.02, f"plate: a ball's interval {ball}")

# what was once wrong: short, thick, strong and cold tubes (own integration, LSODA, and own rings in time; Python)
STRONG = ["--magnet", "cylinder:20mmx20mm", "--grade", "N42"]
WASHER = ["--magnet", "cylinder:50mmx30mm", "--grade", "N52"]
for words in ([*STRONG, "--tube", "22mm:28mm:8mm", "--metal", "copper", "--at", "80K"],
              [*WASHER, "--tube", "52mm:150mm:14mm", "--metal", "copper"], [*WASHER, "--tube", "52mm:150mm:12mm", "--metal", "copper"],
              [*WASHER, "--tube", "52mm:150mm:10mm", "--metal", "copper"], [*STRONG, "--tube", "22mm:66mm:5mm", "--metal", "copper", "--at", "77K"],
              [*STRONG, "--tube", "22mm:66mm:5mm", "--metal", "copper"]):
    d = answer("drop", *words)
    check(0.94 * d["free_fall_time_s"] <= d["fall_time_low90_s"] <= d["fall_time_s"] <= d["fall_time_high90_s"], f"{words}: {d['fall_time_s']}")
    check(d["fall_time_s"] >= d["free_fall_time_s"], f"{words}: quicker than free fall") # the tube's length is uncertain in the samples
    check(d["exit_speed_m_s"] <= 9.80665 * d["free_fall_time_s"] and d["heat_J"] >= 0, f"{words}: leaves at {d['exit_speed_m_s']}")
    check(d["terminal_speed_m_s"] is None and not d["settles"] and 0 <= d["effective_length_m"], f"{words}: speaks of a terminal speed")
    check(d["felt_extra_weight_N"] >= 0 and "evenly" not in run("drop", *words)[1], f"{words}: weighs evenly")
FIXED = ["--br", "1.3T", "--recoil-permeability", "1"]
d = answer("drop", "--magnet", "cylinder:20mmx20mm", *FIXED, "--magnet-mass", "47g", "--tube", "22mm:28mm:8mm", "--resistivity", "477MS/m")
check(abs(d["fall_time_s"] / 0.0959 - 1) < 0.01 and d["currents_followed"], f"short and cold: {d['fall_time_s']}")
d = answer("drop", "--magnet", "cylinder:50mmx30mm", *FIXED, "--magnet-mass", "442g", "--tube", "52mm:150mm:15mm", "--resistivity", "58MS/m")
check(abs(d["fall_time_s"] / 0.096 - 1) < 0.02, f"a thick washer: {d['fall_time_s']}")
s = answer("sweep", *STRONG, "--tube", "22mm:28mm:8mm", "--metal", "copper", "--over", "temperature", "40K:300K", "--steps", "14")
times = [p["fall_time_s"] for p in s["lines"][0]["points"]]
check(all(a > b for a, b in zip(times, times[1:])), f"warmer copper brakes less: {times}")
check(all(p["fall_time_low90_s"] <= p["fall_time_s"] <= p["fall_time_high90_s"] for p in s["lines"][0]["points"]), "a value outside its interval")

# a ball is free to turn; a disc may turn over; where the timing begins and ends
b = answer("drop", "--magnet", "sphere:24mm", "--grade", "N48", "--tube", "26mm:28mm:300mm", "--metal", "copper")
check(0.67 < b["fall_time_across_s"] / b["fall_time_s"] < 0.71 and any("free to turn" in w for w in b["warnings"]), "a ball's two times")
i = answer("infer", "--magnet", "sphere:24mm", "--grade", "N48", "--tube", "26mm:28mm:300mm", "--time", "2.95s")
check(i["conductivity_if_across_S_m"] > 1.4 * i["conductivity_S_m"], "a ball across, inferred")
check(any("turn over" in w for w in answer("drop", "--magnet", "cylinder:24mmx2mm", "--grade", "N48", "--tube", "26mm:28mm:300mm", "--metal", "copper")["warnings"]), "a disc that turns over")
check(not any("turn over" in w for w in one["warnings"]), "a magnet that can't turn over")
held = answer("drop", *SETUP, "--metal", "copper", "--as", "handbook", "--release", "face", "--stop", "out")
check(one["fall_time_s"] < held["fall_time_s"] and "lower face" in held["timing"], "timing from the face until it is out")
check(held["free_fall_time_s"] > one["free_fall_time_s"], "the way without a tube grows too")

# riding: at most what the option itself gives
for magnet, tube, off in (("cylinder:15mmx3mm", "17mm:19mm:1m", "0.9"), ("cylinder:20mmx3mm", "23mm:25mm:1m", "1.35"), ("cylinder:12mmx10mm", "15mm:17mm:1m", "1.35")):
    free = answer("drop", "--magnet", magnet, "--grade", "N42", "--tube", tube, "--metal", "copper")
    words = next(w for w in free["left_out"] if w.startswith("off-axis"))
    most = float(words.split("at most ")[1].split(" %")[0])
    ridden = answer("drop", "--magnet", magnet, "--grade", "N42", "--tube", tube, "--metal", "copper", "--off-axis", off + "mm")
    check(abs(100 * (ridden["drag_relative_to_whole_tube"] - 1) / most - 1) < 0.06, f"{magnet}: at most {most} %, the option gives {ridden['drag_relative_to_whole_tube']}")
    check(ridden["fall_time_s"] < free["fall_time_s"] * (1 + (most + 0.5) / 100), f"{magnet}: riding")

# sizes, tolerances and resistivities outside the model
refused(2, "what?", "drop", *MAGNET, "--tube", "13:15:1", "--metal", "copper")
refused(5, "unit", "drop", *MAGNET, "--tube", "13m:15m:1m", "--metal", "copper")
refused(5, "third", "drop", "--magnet", "cylinder:12mmx10mm", "--br", "1.3+-1.4T", "--tube", "13mm:15mm:1m", "--metal", "copper")
refused(5, "third", "drop", "--magnet", "cylinder:12mmx10mm", "--br", "1.3T", "--tube", "13mm:15mm:0.01+-0.02m", "--metal", "copper")
refused(5, "unit", "drop", *MAGNET, "--tube", "18mm:24mm:1nm", "--metal", "copper")
refused(5, "unit", "drop", *SETUP, "--resistivity", "1e-30ohm.m")
refused(5, "rub", "drop", "--magnet", "sphere:12.9999999mm", "--br", "1.3T", "--tube", "13mm:15mm:1m", "--metal", "copper")
check(any("does not fit" in w for w in answer("drop", "--magnet", "cylinder:12mmx10mm", "--grade", "N42", "--tube", "13+-2mm:15mm:1m", "--metal", "copper")["warnings"]), "may not fit")

# the magnet's temperature: said, bounded in the cold, with a caution for a flat one
check(any("magnet at 20 degC" in a for a in one["assumptions"]), "the magnet's temperature is not said")
cold = answer("drop", *SETUP, "--metal", "copper", "--at", "77K", "--magnet-at", "77K")
check(cold["fall_time_high90_s"] / cold["fall_time_low90_s"] > 1.2, "deep cold: a wide interval")
check(any("takes on" in w for w in answer("drop", *SETUP, "--metal", "copper", "--at", "77K")["warnings"]), "a cold tube cools the magnet")
check(any("flat" in w for w in answer("drop", "--magnet", "cylinder:20mmx2mm", "--grade", "N52", "--magnet-at", "79degC", "--tube", "22mm:24mm:1m", "--metal", "copper")["warnings"]), "a flat warm magnet")

# one reading by two ways has one uncertainty
byfield = answer("drop", "--magnet", "cylinder:12mmx10mm", "--surface-field", "0.40T@1mm", "--tube", "13mm:15mm:1m", "--metal", "copper")["magnet"]["remanence_T"]
measured = answer("measure", "--magnet", "cylinder:12mmx10mm", "--field", "0.40T@1mm")["magnet"]
check(abs(byfield["standard_uncertainty"] / measured["standard_uncertainty_T"] - 1) < 1e-9 and abs(byfield["value"] / measured["remanence_T"] - 1) < 1e-9, "two ways, two uncertainties")

# price forms are heeded in a sweep over money: 5 USD buy 5 / 30.7 of a kilogram at retail
money = [answer("sweep", *STRONG, "--tube", "22mm:28mm:1m", "--metal", "copper-etp", "--over", "budget", "5USD:50USD", "--steps", "2", "--price-form", form)["lines"][0]["points"][0] for form in ("exchange", "retail")]
cost = [m["cost_usd"] for m in money]
check(all(abs(c / 5 - 1) < 1e-3 for c in cost) and money[0]["tube_mass_kg"] > 2 * money[1]["tube_mass_kg"], f"sweep: the price form {money}")

# stacks
pair = answer("drop", "--magnet", "2 x cylinder:12mmx10mm opposed gap 5mm", "--grade", "N42", "--tube", "13mm:15mm:1m", "--metal", "copper")
single = answer("drop", "--magnet", "cylinder:12mmx10mm", "--grade", "N42", "--tube", "13mm:15mm:1m", "--metal", "copper")
check(pair["fall_time_s"] > single["fall_time_s"] and pair["magnet"]["pieces"] == 2 and any("spring apart" in w for w in pair["warnings"]), "an opposed pair")
refused(2, "2 x cylinder", "drop", "--magnet", "2.5 x cylinder:12mmx10mm", "--grade", "N42", "--tube", "13mm:15mm:1m", "--metal", "copper")

# measuring: the sheet; readings; the words it gives are read by drop
check(len(answer("measure")["sheet"]) > 10 and "............" in run("measure")[1], "measure: the sheet")
m = answer("measure", "--magnet", "cylinder:15mmx15mm", "--field", "0.2T@5mm", "--field", "95mT@10mm", "--tube", "18mm:24mm:400mm",
           "--current", "10A", "--voltage", "0.26mV", "--reversed-voltage", "-0.27mV", "--span", "0.3m")
used = m["magnet"]["use_as"].split()
d = answer("drop", "--magnet", "cylinder:15mmx15mm", *used, "--tube", "18mm:24mm:400mm", *m["tube"]["use_as"].split())
check(abs(d["moment_A_m2"] / m["magnet"]["moment_A_m2"] - 1) < 0.002, "measure: drop takes another moment")
check(abs(d["tube"]["conductivity_S_m"] / m["tube"]["conductivity_S_m"] - 1) < 0.002, "measure: drop takes another conductivity")
three = answer("measure", "--magnet", "cylinder:12mmx10mm", "--field", "187mT@5mm", "--field", "107mT@7.5mm", "--field", "65mT@10mm")["magnet"]
check(abs(three["remanence_T"] / 1.3 - 1) < 0.03 and abs(three["sensor_depth_m"]) < 0.5e-3, f"three readings: {three}")
refused(2, "other sign", "measure", "--tube", "18mm:24mm:400mm", "--current", "10A", "--voltage", "1.8mV", "--reversed-voltage", "0.2mV", "--span", "0.3m")
refused(2, "0.21T@5mm", "measure", "--magnet", "cylinder:15mmx15mm", "--field", "0.2T")
refused(2, "--voltage", "measure", "--tube", "18mm:24mm:400mm", "--current", "10A")

ended("drop")
