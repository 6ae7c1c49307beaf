"""Pictures of the built program: sizes, see-through grounds, the same bytes again, sources on them, refusals."""
import json
import os
import shutil
import struct
import subprocess
import tempfile
import xml.etree.ElementTree

from support.program import PROGRAM, Program, check, ended

FOLDER = tempfile.mkdtemp(prefix=f"pourbook-chart.{os.getpid()}.")
refused = Program(environment={"SOURCE_DATE_EPOCH": "1795000000"}).refused
SETUP = ["--magnet", "cylinder:15mmx15mm", "--grade", "N42", "--tube", "18mm:24mm:400mm"]
KINDS = {
    "curve": ["curve", "resistivity", "copper", "silver", "--log"],
    "scatter": ["scatter", "density", "conductivity", "copper", "silver", "aluminium", "zinc"],
    "rank": ["rank", "--goal", "braking-per-cost", "--top", "8", "--samples", "100"],
    "tradeoff": ["tradeoff", "--goal", "strongest-brake", "--and", "light-conductor"],
    "diagram": ["diagram", "AG-CU", "--composition", "Ag 80 Cu 20", "--at", "800degC"],
    "drop": ["drop", *SETUP, "--metal", "copper,aluminium-6061,brass-cartridge"],
    "drag": ["drag", *SETUP, "--metal", "copper,aluminium-6061"],
    "sweep": ["sweep", *SETUP, "--metal", "copper", "--over", "wall", "1mm:8mm"],
    "mix": ["mix", "Ag 92.5 Cu 7.5", "--treatment", "as-cast,quenched,aged"],
}


def run(*words, day="1795000000"):
    return subprocess.run([PROGRAM, *words], capture_output=True, text=True, timeout=120, env={**os.environ, "SOURCE_DATE_EPOCH": day})


def picture(name, *words):
    path = os.path.join(FOLDER, name)
    done = run("chart", *words, "--to", path)
    check(done.returncode == 0, f"{words}: exit {done.returncode}: {done.stderr.strip()}")
    return open(path, "rb").read() if os.path.exists(path) else b""


def png_head(data):
    return struct.unpack(">IIBB", data[16:26]) if data[:8] == b"\x89PNG\r\n\x1a\n" else None


for kind, words in KINDS.items():
    png = picture(f"{kind}.png", *words)
    check(png_head(png) and png_head(png)[:2] == (1600, 1000), f"{kind}: size {png_head(png)}")
    check(len(png) > 20000, f"{kind}: only {len(png)} bytes: blank?")
    check(png == picture(f"{kind}-again.png", *words), f"{kind}.png: other bytes the second time")
    svg = picture(f"{kind}.svg", *words, "--size", "800x500")
    check(svg == picture(f"{kind}-again.svg", *words, "--size", "800x500"), f"{kind}.svg: other bytes the second time")
    root = xml.etree.ElementTree.fromstring(svg)
    check(root.get("width") == "800px" and root.get("height") == "500px", f"{kind}.svg: {root.attrib}")
    pdf = picture(f"{kind}.pdf", *words)
    check(pdf[:5] == b"%PDF-" and pdf == picture(f"{kind}-again.pdf", *words), f"{kind}.pdf: no PDF, or other bytes the second time")
    about = json.loads(run("chart", *words, "--json").stdout)
    check(about["sources"] and about["data_version"] and about["date"] == "2026-11-18", f"{kind}: {about}")
    line = run("chart", *words, "--caption-line").stdout
    check(line.count("\n") == 1 and "Sources: " in line and about["conditions"] and about["conditions"] in line and about["data_version"] in line, f"{kind}: caption line {line!r}")
    for form, size in (("wide", (1920, 1080)), ("tall", (1080, 1920))):
        solid = picture(f"{kind}-{form}.png", *words, "--caption", form, "--dark")
        clear = picture(f"{kind}-{form}-clear.png", *words, "--caption", form, "--dark", "--ground", "transparent")
        check(png_head(solid)[:2] == size and png_head(clear)[:2] == size, f"{kind} {form}: size")
        check(png_head(clear)[3] == 6, f"{kind} {form}: a transparent picture without alpha")

# what the other tools say of them
if shutil.which("pdftotext"):
    for kind in KINDS:
        text = subprocess.run(["pdftotext", "-layout", os.path.join(FOLDER, kind + ".pdf"), "-"], capture_output=True, text=True).stdout
        check("Sources: " in text and "2026-11-18" in text and ("condition" in text or "equilibrium" in text or "as cast" in " ".join(text.split())), f"{kind}.pdf: no sources in its text: {text!r}")
        check("�" not in text, f"{kind}.pdf: letters that can't be read")
else:
    print("skipped: no pdftotext here to read the PDFs (poppler-utils)")
if shutil.which("rsvg-convert"):
    for kind in KINDS:
        done = subprocess.run(["rsvg-convert", os.path.join(FOLDER, kind + ".svg")], capture_output=True)
        check(done.returncode == 0 and png_head(done.stdout)[:2] == (800, 500) and len(done.stdout) > 10000, f"{kind}.svg is not drawn by rsvg-convert")
else:
    print("skipped: no rsvg-convert here to draw the SVGs (librsvg2-bin)")

# workshop units change the figures, not the sources
check(run("chart", *KINDS["scatter"], "--caption-line", "--units", "workshop").returncode == 0, "chart --units workshop")

# a diagram alone, its elements in any order; a mix by its two main elements, of stocks, as resistivity
for words in (["diagram", "cu-ag"], ["diagram", "Cu-Sn", "--composition", "Cu 88 Sn 8 Zn 4"], ["mix", "1kg sterling-silver + 300g silver", "--resistivity"], ["mix", "Cu 88 Sn 8 Zn 4 annealed"]):
    check(run("chart", *words, "--caption-line").returncode == 0, f"chart {words}")
refused(2, "two elements are expected", "chart", "diagram", "silver", "--caption-line")
refused(3, "Xx", "chart", "diagram", "Ag-Xx", "--caption-line")
refused(3, "no diagram", "chart", "diagram", "Cu-W", "--caption-line")
refused(2, "not Ag and Cu", "chart", "diagram", "Ag-Cu", "--composition", "Cu 88 Sn 12", "--caption-line")
refused(2, "--at", "chart", "diagram", "Ag-Cu", "--composition", "Ag 92.5 Cu 7.5", "--at", "hot", "--caption-line")
refused(2, "--at", "chart", "diagram", "Ag-Cu", "--at", "600degC", "--caption-line")
refused(3, "single element", "chart", "mix", "Cu 100", "--caption-line")
refused(2, "--treatment", "chart", "mix", "Ag 92.5 Cu 7.5", "--treatment", "burnt", "--caption-line")

# refusals, and nothing half-written
R = KINDS["rank"]
refused(2, ".png, .svg or .pdf", "chart", *R)
refused(2, ".png, .svg or .pdf", "chart", *R, "--to", os.path.join(FOLDER, "x.jpg"))
refused(2, "--size", "chart", *R, "--to", os.path.join(FOLDER, "x.png"), "--size", "large")
refused(2, "--scale", "chart", *R, "--to", os.path.join(FOLDER, "x.png"), "--size", "400x400", "--scale", "9")
refused(2, "--caption", "chart", *R, "--to", os.path.join(FOLDER, "x.png"), "--caption", "round")
refused(2, "see `pourbook chart --help`", "chart")
refused(3, "copperr", "chart", "curve", "resistivity", "copperr", "--to", os.path.join(FOLDER, "x.png"))
refused(3, "unknown property", "chart", "scatter", "density", "colour", "--to", os.path.join(FOLDER, "x.png"))
refused(2, "told in words", "chart", "scatter", "density", "magnetic_behaviour", "--to", os.path.join(FOLDER, "x.png"))
refused(4, "can't be written", "chart", *R, "--to", os.path.join(FOLDER, "no-folder", "x.png"))
os.mkdir(os.path.join(FOLDER, "folder.png"))
refused(4, "can't be written", "chart", *R, "--to", os.path.join(FOLDER, "folder.png"))
check(not [f for f in os.listdir(FOLDER) if f.startswith("x.") or f.endswith(".part")], "a refused picture left a file")

shutil.rmtree(FOLDER)
ended("chart")
