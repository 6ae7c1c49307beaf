"""Every header of the rooms compiles alone."""
import glob
import os
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

ROOT = os.environ.get("POURBOOK_ROOT", os.path.abspath(os.path.join(os.path.dirname(__file__), "../..")))
headers = sorted(h for p in ("app", "db/store", "importers") for h in glob.glob(os.path.join(ROOT, p, "**/*.hpp"), recursive=True))
FLAGS = subprocess.run(["pkg-config", "--cflags", "imgui", "cairo"], capture_output=True, text=True, check=True).stdout.split()


def fault(header):
    name = os.path.relpath(header, ROOT)
    name = name[4:] if name.startswith("app/") else name
    command = ["g++", "-std=c++20", "-fsyntax-only", *FLAGS, "-I", os.path.join(ROOT, "app"), "-I", ROOT, "-x", "c++", "-"]
    done = subprocess.run(command, input=f'#include "{name}"\n', capture_output=True, text=True)
    return f"{name}: {done.stderr.splitlines()[0]}" if done.returncode else None


with ThreadPoolExecutor(2) as pool:
    faults = [f for f in pool.map(fault, headers) if f]
for f in faults:
    print("FAILED:", f)
print(f"headers: {'failed' if faults else 'passed'}, {len(headers)} alone")
sys.exit(1 if faults else 0)
