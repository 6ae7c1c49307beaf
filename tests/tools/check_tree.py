"""The tree's own rules: layout of the data files, sources.md current, file lengths, top level."""
import glob
import os
import subprocess
import sys

ROOT = os.environ.get("POURBOOK_ROOT", os.path.abspath(os.path.join(os.path.dirname(__file__), "../..")))
COMPILE = os.environ.get("POURBOOK_COMPILE", os.path.join(ROOT, "build/pourbook-compile"))
faults = []

data = sorted(glob.glob(os.path.join(ROOT, "db/**/*.json"), recursive=True))
layout = subprocess.run([sys.executable, os.path.join(ROOT, "importers/common/format_json.py"), "--check", *data], capture_output=True, text=True)
faults += layout.stdout.splitlines()

page = subprocess.run([COMPILE, "--sources", os.path.join(ROOT, "db")], capture_output=True, text=True).stdout
if page != open(os.path.join(ROOT, "sources.md"), encoding="utf-8").read():
    faults.append("sources.md is not current: build/pourbook-compile --sources db > sources.md")
coverage = subprocess.run([COMPILE, "--coverage", os.path.join(ROOT, "db")], capture_output=True, text=True).stdout
if coverage not in open(os.path.join(ROOT, "db/README.md"), encoding="utf-8").read():
    faults.append("the coverage table of db/README.md is not current: tests/tools/refresh.sh")
for key in (line[3:] for line in page.splitlines() if line.startswith("## ")):
    if f"\n## {key}\n" in page and f"## {key}\n" in page and "- taken: nothing" in page.split(f"\n## {key}\n")[1].split("\n## ")[0]:
        faults.append(f"db/references.json: nothing is taken from '{key}'")

for pattern in ("app/**/*.?pp", "db/**/*.?pp", "importers/**/*.?pp"):
    for file in glob.glob(os.path.join(ROOT, pattern), recursive=True):
        lines = sum(1 for _ in open(file, encoding="utf-8"))
        if lines > 600:
            faults.append(f"{os.path.relpath(file, ROOT)}: {lines} lines, more than one purpose?")

allowed = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "sources.md", "app", "db", "importers", "tests", "third_party", "build"}
for name in os.listdir(ROOT):
    if not name.startswith(".") and name not in allowed and not name.startswith("build-"):
        faults.append(f"{name}: outside the agreed top level")

for fault in faults:
    print("FAILED:", fault)
print("tree:", "failed" if faults else "passed", len(faults))
sys.exit(1 if faults else 0)
