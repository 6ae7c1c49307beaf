"""Every --help holds an example that runs; the manual page is sound (completions: completion.py)."""
import os
import re
import shlex
import shutil
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.dirname(__file__))
from support.program import PROGRAM, Program, check, ended

folder = tempfile.mkdtemp()
os.chdir(folder)
with open("shelf.csv", "w") as shelf:
    shelf.write("metal,mass\ncopper,2 kg\n")
program = Program("--workshop", os.path.join(folder, "own.sqlite"))

manual = program.run("help", "--manual")[1]
commands = [name.replace("\\-", "-") for name in re.findall(r'^\.SS "pourbook (.*)"$', manual, re.M)]
check(len(commands) > 60, f"only {len(commands)} commands in the manual page")

examples = {}
for name in commands:
    code, out, err = program.run(*name.split(), "--help")
    check(code == 0 and f"Usage: pourbook {name}" in out, f"{name} --help: {err}{out[:200]}")
    found = re.search(r"^Example:\n  pourbook (.*)$", out, re.M)
    check(found, f"{name} --help: no example")
    if found:
        check(found.group(1).startswith(name), f"{name} --help: an example of something else: {found.group(1)}")
        examples[name] = found.group(1)


def turn(name):
    """Entries are added, then changed, then removed; what is undone must have been done."""
    last = name.split()[-1]
    return {"add": 1, "set": 1, "edit": 3, "again": 3, "remove": 4, "undo": 5, "redo": 6}.get(last, 2), name.startswith("own-metal") and last == "remove"


for name in sorted(examples, key=turn):
    small = ["--size", "320x320", "--rate", "2"] if name == "film" else []  # a thousand pictures of the usual size take minutes
    code, out, err = program.run(*shlex.split(examples[name]), *small)
    check(code == 0, f"pourbook {examples[name]}: exit {code}: {err.strip()}")

with open("pourbook.1", "w") as page:
    page.write(manual)
if shutil.which("man"):
    done = subprocess.run(["man", "--warnings", "-l", "pourbook.1"], capture_output=True, text=True, env={**os.environ, "MANPAGER": "cat", "LC_ALL": "C.UTF-8"})
    check(done.returncode == 0 and not done.stderr.strip(), f"man --warnings: {done.stderr[:400]}")
elif shutil.which("groff"):
    done = subprocess.run(["groff", "-man", "-ww", "-Tutf8", "pourbook.1"], capture_output=True, text=True)
    check(done.returncode == 0 and not done.stderr.strip(), f"groff -ww: {done.stderr[:400]}")
else:
    print("not checked: neither man nor groff is here")

ended("help")
