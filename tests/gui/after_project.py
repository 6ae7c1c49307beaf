"""Questions 9 to 12 of the design, after a project. Each answers (what was done, what was read)."""
import os
import re
import subprocess

from person import SETUP, equal, figures, plain
from window import check

MICROOHM_CM = 1e8  # in an ohm metre


def back_to_keep(w, over):
    """The form may be longer than the window; what keeps it stands at its head."""
    w.point_at(over)
    for _ in range(40):
        if "entry.keep" in w.dump()["items"]:
            return
        w.xdotool("click", 4)


def times_entered(p, **fields):
    """A drop trial with the magnet and tube of Drop."""
    w = p.window
    w.key("F8")
    p.pick("field.type", "drop")
    before = "field.type"
    for name, words in fields.items():
        if "field." + name not in w.dump()["items"]:
            w.wheel_to("field." + name, over=before)
        before = "field." + name
        p.fill(before, words)
    back_to_keep(w, before)
    w.click("entry.keep")
    return w.text("trial.trial-1")


def fell_faster(p):
    said = times_entered(p, metal="copper", times="9.5 s, 9.7 s, 9.6 s")
    shows = p.told("trial", "list")[0]["shows"]
    told = p.told("infer", *SETUP, "--time", "9.5s,9.7s,9.6s", "--samples", "400")
    conductivity, iacs, like = figures(r"^([\d.]+) ± [\d.]+ MS/m, ([\d.]+) %IACS .*; like (.*)", said, "what the trial shows")
    for from_command in (shows, told):
        equal(conductivity, from_command["conductivity_S_m"] / 1e6, "conductivity")
        equal(iacs, from_command["iacs_percent"], "%IACS")
        check(like.split(", ") == [m["metal"] for m in from_command["consistent_metals"][:4]], f"metals that have it: {like}")
    predicted = figures(r"predicted for copper ([\d.]+) s", said, "the predicted time")[0]
    equal(predicted, shows["predicted_time_s"], "predicted time")
    if not told["copper_impurities"]:  # the likeliest metal is no copper
        check("copper with one dissolved impurity" not in said, f"impurities of a base that is not the likeliest: {said}")
        return "type, metal, times, keep", f"{conductivity} MS/m, {iacs} %IACS instead of {predicted} s: like {like}"
    impurities = figures(r"one dissolved impurity: (.*)", said, "impurities")[0]
    for shown, impurity in zip(impurities.split(", "), told["copper_impurities"]):
        element, content, _ = shown.split()
        check(element == impurity["element"], f"impurities: {impurities}")
        equal(content, impurity["content_wt_percent"], f"content of {element}")
    return "type, metal, times, keep", f"{conductivity} MS/m, {iacs} %IACS instead of {predicted} s: like {like}; or copper with {impurities}"


def porous(p):
    said = times_entered(p, metal="brass-cartridge", times="3.3 s, 3.4 s", mass="620 g")
    told = p.told("infer", *SETUP, "--time", "3.3s,3.4s", "--tube-mass", "620g", "--samples", "400")
    like = figures(r"like (.*)", said, "what the trial shows")[0].split(", ")
    for shown, metal in zip(like, told["consistent_metals"]):
        slug, porosity = figures(r"^(\S+) \(porosity (-?[\d.]+) %\)$", shown, "porosity")
        check(slug == metal["metal"], f"metals that have it: {like}")
        equal(porosity, 100 * metal["porosity"], f"porosity if it is {slug}")
    return "type, metal, times, mass, keep", "like " + ", ".join(like)


def sentence_beside(p, second):
    """What Compare says of copper and the second, held to the command's."""
    said = p.window.text("versus.sentence")
    told = p.told("versus", "copper", second, "--goal", "braking-per-cost")
    check(said == told["sentence"], f"Compare says {said!r}")
    return said


def why_worse(p):
    p.window.key("F4")
    return "nothing: shown at once", sentence_beside(p, "sterling-silver")


def what_about_this(p):
    p.find("bismuth")
    p.window.key("Return")
    p.window.key("F4")
    p.pick("versus.second", "bismuth")
    return "found and pinned; second metal", sentence_beside(p, "bismuth")


def table_for_a_sheet(p):
    w = p.window
    w.key("F4")
    w.key("Control_L", "Shift_L", "s")
    file = w.text("comparison.table.file")
    w.key("Return")
    check("saved as" in w.text("comparison.table.told"), w.text("comparison.table.told"))
    properties = p.told("sheet", "copper")["properties"]
    p.commands.clear()
    same = os.path.join(p.folder, "by-command.csv")
    done = p.run("compare", "copper", "sterling-silver", "aluminium-6061", "brass-cartridge", "--show", ",".join(properties), "--to", same)
    check(done.returncode == 0, f"compare: {done.stderr}")
    with open(w.saved(file), "rb") as window, open(same, "rb") as command:
        ours, theirs = window.read(), command.read()
    check(ours == theirs and len(ours) > 1000, f"the table saved by the window has {len(ours)} bytes, the command's {len(theirs)}; they differ")
    return "Ctrl+Shift+S", f"{os.path.basename(file)}, {len(ours.splitlines())} lines, byte for byte"


def rows_of(pdf):
    """Metals and figures of a ranking's picture, below the numbers of its axis."""
    text = subprocess.run(["pdftotext", "-raw", pdf, "-"], capture_output=True, text=True, check=True).stdout
    return re.findall(r"^(\D.*\S) ([\d.]+)$", text, re.MULTILINE)


def picture_for_the_video(p):
    w = p.window
    w.settled()
    w.key("Control_L", "s")
    w.key("End")
    for _ in "png":
        w.key("BackSpace")
    w.write("pdf")
    file = w.text("rank.chart.file")
    w.key("Return")
    check("saved as" in w.text("rank.chart.told"), w.text("rank.chart.told"))
    same = os.path.join(p.folder, "by-command.pdf")
    done = p.run("chart", "rank", "--goal", "braking-per-cost", "--to", same)
    check(done.returncode == 0, f"chart: {done.stderr}")
    ours, theirs = rows_of(w.saved(file)), rows_of(same)
    check(min(len(ours), len(theirs)) > 9, f"rows on the picture: {ours}; on the command's: {theirs}")
    for one, other in zip(ours, theirs):  # the larger picture has room for more
        check(one == other, f"the window's picture says {one}, the command's {other}")
    return "Ctrl+S, ending", f"{os.path.basename(file)}: " + "; ".join(" ".join(row) for row in ours[:3])


def where_from(p):
    w = p.window
    p.find("copper")
    w.point_at("sheet.resistivity")
    hover = w.text("hover")
    told = p.told("value", "copper", "resistivity")
    value, u = figures(r"([\d.]+) ± ([\d.]+) µΩ·cm", hover, "the value")
    equal(value, told["value"] * MICROOHM_CM, "value")
    equal(u, 1.6449 * told["standard_uncertainty"] * MICROOHM_CM, "90 % uncertainty")
    w.click("sheet.resistivity")
    items = w.settled()["items"]
    check(items["evidence.of"]["text"] == "copper.resistivity", f"a click on the number shows the evidence of {items['evidence.of']['text']}")
    for number, source in enumerate(told["sources"][:1]):  # the others stand further down
        check(items[f"evidence.source.{number}.open"]["text"] == source["key"], f"source {number} of the evidence is {items[f'evidence.source.{number}.open']['text']}")
    sure = items["evidence.sure"]["text"]
    w.click("evidence.source.0.open")
    check(w.text("source.shown") == told["sources"][0]["key"], f"the evidence opens {w.text('source.shown')}")
    answer = f"{value} ± {u} µΩ·cm (90 %), {told['condition']}, {told['how_known']}; {sure}; {told['sources'][0]['key']}, {told['sources'][0]['locator']}"
    return "name, pointer on the number; a click shows the evidence, another opens the source", answer


PARTS = [
    ("9", "It fell faster than you said: what conductivity, which metal or impurity?", "Trials", fell_faster),
    ("9", "Is it porous?", "Trials", porous),
    ("10", "Why is A worse than B?", "Compare", why_worse),
    ("10", "What about C?", "Metals, Compare", what_about_this),
    ("11", "A table for a spreadsheet", "Compare", table_for_a_sheet),
    ("11", "A picture for the video", "Rank", picture_for_the_video),
    ("12", "Where does that number come from, who disagrees, how sure is it?", "Metals", where_from),
]
