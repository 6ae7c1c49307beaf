"""Every C++ file is as clang-format 14 leaves it (Debian 12's, on which CI runs); another version lays out otherwise and is left alone."""
import glob
import os
import shutil
import subprocess
import sys

ROOT = os.environ.get("POURBOOK_ROOT", os.path.abspath(os.path.join(os.path.dirname(__file__), "../..")))
if not shutil.which("clang-format"):
    print("failed: clang-format is missing: third_party/install.sh test")
    sys.exit(1)
version = subprocess.run(["clang-format", "--version"], capture_output=True, text=True).stdout
if " 14." not in version:
    print("format: not looked at:", version.strip())
    sys.exit(77)
files = [f for p in ("app", "db", "importers", "tests") for e in ("cpp", "hpp") for f in glob.glob(os.path.join(ROOT, p, f"**/*.{e}"), recursive=True)]
done = subprocess.run(["clang-format", "--dry-run", "--Werror", *files], capture_output=True, text=True)
lines = sorted({line.split(":")[0] for line in done.stderr.splitlines() if "error:" in line or "warning:" in line})
for line in lines:
    print("FAILED: not formatted:", os.path.relpath(line, ROOT))
print("format:", "failed" if lines else "passed")
sys.exit(1 if lines else 0)
