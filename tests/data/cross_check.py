"""Every pure metal's melting point, boiling point and density against open element data that the reference was not made from.

A difference beyond three standard uncertainties of ours plus the rounding of theirs must be explained in explained.json, and an
explanation that no longer applies is a failure too. No explanation excuses a difference beyond what old scales and old tables differ by:
3 %, and 40 % for boiling points (old ones were extrapolated).
"""
import json
import os
import subprocess
import sys

ROOT = os.environ.get("POURBOOK_ROOT", os.path.abspath(os.path.join(os.path.dirname(__file__), "../..")))
sys.path.insert(0, os.path.join(ROOT, "importers/elements"))
sys.path.insert(0, "/usr/lib/python3/dist-packages")  # Debian's packages, whichever python3 stands first on the path
import open_elements  # noqa: E402

PROGRAM = os.environ.get("POURBOOK", os.path.join(ROOT, "build/pourbook"))
SETS = {"bodr": open_elements.read_bodr(), "periodictable": open_elements.read_periodictable()}

explained = json.load(open(os.path.join(ROOT, "importers/elements/explained.json"), encoding="utf-8"))
reasons = {(e["metal"], e["property"], e["set"]): e["why"] for e in explained}
failures, used, compared = [], set(), 0
for metal in json.loads(subprocess.run([PROGRAM, "metals", "--where", "kind == element", "--json"], capture_output=True, text=True, check=True).stdout):
    symbol = next(iter(metal["composition_wt_percent"]))
    sheet = json.loads(subprocess.run([PROGRAM, "sheet", metal["slug"], "--json"], capture_output=True, text=True, check=True).stdout)["properties"]
    for name, elements in SETS.items():
        for prop, (theirs, half_digit) in elements.get(symbol, {}).items():
            ours = sheet[prop]
            if ours["value"] is None:
                continue
            compared += 1
            allowed = 3 * ours["standard_uncertainty"] + half_digit
            if abs(ours["value"] - theirs) <= allowed:
                continue
            key = (metal["slug"], prop, name)
            used.add(key)
            if key not in reasons or abs(ours["value"] / theirs - 1) > (0.4 if prop == "boiling_point" else 0.03):
                failures.append(f"{metal['slug']} {prop}: ours {ours['value']:.6g} (u {ours['standard_uncertainty']:.2g}), {name} {theirs:.6g}")
failures += [f"explained.json: {key} no longer differs" for key in reasons if key not in used]
if compared < 90:
    failures.append(f"only {compared} figures compared")
for failure in failures:
    print("FAILED:", failure)
print(f"{'failed' if failures else 'passed'}: {compared} figures of open element data, {len(used)} explained differences")
sys.exit(1 if failures else 0)
