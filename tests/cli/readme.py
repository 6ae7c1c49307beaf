"""Every command that README.md shows is answered, in its order, by one person's fresh file; every picture is there, and none that is not shown."""
import os
import re
import shlex
import subprocess
import tempfile

from support.program import PROGRAM, check, ended

ROOT = os.environ["POURBOOK_ROOT"]
PICTURES = "app/help/pictures"
page = open(os.path.join(ROOT, "README.md"), encoding="utf-8").read()
lines = re.findall(r"^build/pourbook (.*)$", page, re.MULTILINE)
check(len(lines) > 12, f"only {len(lines)} commands found")
with tempfile.TemporaryDirectory(prefix=f"pourbook-readme.{os.getpid()}.") as folder:
    with open(os.path.join(folder, "list.csv"), "w", encoding="utf-8") as file:
        file.write("metal,price,date\nzinc,4.10 USD/kg,2026-11-25\n")
    for line in lines:
        done = subprocess.run([PROGRAM, *shlex.split(line)], capture_output=True, text=True, timeout=120, cwd=folder, env={**os.environ, "XDG_DATA_HOME": folder})
        check(done.returncode == 0, f"{line}: exit {done.returncode}: {done.stderr.strip()}")

pages = [open(os.path.join(ROOT, "app/help", name), encoding="utf-8").read() for name in os.listdir(os.path.join(ROOT, "app/help")) if name.endswith(".md")]
shown = set(re.findall(r"pictures/([a-z-]+\.(?:png|svg))", "\n".join([page, *pages])))
held = set(os.listdir(os.path.join(ROOT, PICTURES)))
check(shown == held, f"pictures shown but not held {shown - held}, held but not shown {held - shown}")
ended("readme")
