"""Magnet and tube against the built program: two set-ups, slits, plate, measuring."""
import math

from support.program import Program, check, ended

program = Program()
run, answer, refused = program.run, program.answer, program.refused

MAGNET = ["--magnet", "cylinder:15mmx15mm", "--grade", "N42"]
SETUP = [*MAGNET, "--tube", "18mm:24mm:400mm"]


# two set-ups: the contract's keys stay, the second has the same ones
one = answer("drop", *SETUP, "--metal", "copper")
two = answer("drop", *SETUP, "--metal", "copper", "--against-metal", "aluminium-6061", "--against-tube", "18mm:30mm:400mm")
check(one["fall_time_s"] == two["fall_time_s"], "a second set-up changes the first")
check(set(one) <= set(two) and set(one) == set(two["against"]), "against: keys")
alone = answer("drop", *MAGNET, "--tube", "18mm:30mm:400mm", "--metal", "aluminium-6061")
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
check(answer("drop", *SETUP, "--metal", "copper", "--off-axis", "0.5mm")["fall_time_s"] > one["fall_time_s"], "off the axis it falls slower")
refused(5, "rub", "drop", *SETUP, "--metal", "copper", "--off-axis", "1.45mm")
refused(2, "--slits", "drop", *SETUP, "--metal", "copper", "--slits", "some")
refused(5, "thin walls", "drop", *MAGNET, "--tube", "18mm:40mm:400mm", "--metal", "copper", "--slits", "1")
refused(5, "one of the two", "drop", *SETUP, "--metal", "copper", "--slits", "1", "--off-axis", "0.2mm")

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

# measuring: the sheet; readings; the words it gives are read by drop
check(len(answer("measure")["sheet"]) > 10 and "............" in run("measure")[1], "measure: the sheet")
m = answer("measure", "--magnet", "cylinder:15mmx15mm", "--field", "0.2T@5mm", "--field", "95mT@10mm", "--tube", "18mm:24mm:400mm",
           "--current", "10A", "--voltage", "0.26mV", "--reversed-voltage", "-0.27mV", "--span", "0.3m")
used = m["magnet"]["use_as"].split()
d = answer("drop", "--magnet", "cylinder:15mmx15mm", *used, "--tube", "18mm:24mm:400mm", *m["tube"]["use_as"].split())
check(abs(d["moment_A_m2"] / m["magnet"]["moment_A_m2"] - 1) < 0.002, "measure: drop takes another moment")
check(abs(d["tube"]["conductivity_S_m"] / m["tube"]["conductivity_S_m"] - 1) < 0.002, "measure: drop takes another conductivity")
refused(2, "0.21T@5mm", "measure", "--magnet", "cylinder:15mmx15mm", "--field", "0.2T")
refused(2, "--voltage", "measure", "--tube", "18mm:24mm:400mm", "--current", "10A")

ended("drop")
