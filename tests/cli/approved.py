"""The answers of every command, as approved: one file a call in tests/cli/approved, over a small frozen reference (tests/support/frozen).

A change that is meant is approved, and named in the commit that makes it:
    python3 tests/cli/approved.py --approve [name ...]      (POURBOOK and POURBOOK_COMPILE name the programs; default: build/)
Without --approve the answers are compared and the first difference of each is shown. Numbers of JSON are kept to ten digits and its
keys in alphabetical order; text to the letter.
"""
import difflib
import json
import os
import re
import shlex
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor

ROOT = os.path.abspath(os.path.join(os.path.dirname(__file__), "..", ".."))
for variable, program in (("POURBOOK", "pourbook"), ("POURBOOK_COMPILE", "pourbook-compile")):
    os.environ[variable] = os.path.abspath(os.environ.get(variable, os.path.join(ROOT, "build", program)))

from support.calls import FREE, OWN
from support.program import PROGRAM, check, ended

APPROVED = os.path.join(ROOT, "tests", "cli", "approved")
DAY = str(1795608000)  # noon of 2026-11-25
FINGERPRINT = re.compile(r"\b(?=[0-9]*[a-f])[0-9a-f]{12}\b")  # of the compiled reference: moves with its layout
VERSION = re.compile(r"Pourbook \d+\.\d+\.\d+")


def ten_digits(value):
    if isinstance(value, float):
        return float(f"{value:.10g}")
    if isinstance(value, list):
        return [ten_digits(v) for v in value]
    return {k: ten_digits(v) for k, v in value.items()} if isinstance(value, dict) else value


class Asked:
    def __init__(self, folder):
        self.folder = folder
        self.reference = os.path.join(folder, "frozen.sqlite")
        self.environment = {**os.environ, "SOURCE_DATE_EPOCH": DAY, "XDG_DATA_HOME": folder, "LC_ALL": "C.UTF-8", "TZ": "UTC"}
        self.own = os.path.join(folder, "own.sqlite")
        subprocess.run([os.environ["POURBOOK_COMPILE"], os.path.join(ROOT, "tests", "support", "frozen"), self.reference], check=True)

    def run(self, workshop, words):
        done = subprocess.run([PROGRAM, "--reference", self.reference, "--workshop", workshop, *words], capture_output=True, text=True,
                              timeout=120, env=self.environment, cwd=self.folder)
        return done.returncode, done.stdout.replace(self.folder, "FOLDER"), done.stderr.replace(self.folder, "FOLDER")

    def answer(self, name, call, workshop, as_json):
        words = [w.replace("OUT", os.path.join(self.folder, name)) for w in shlex.split(call)]
        code, out, err = self.run(workshop, words)
        parts = [f"pourbook {call}\n", f"exit {code}\n"]
        for title, text in (("standard output", out), ("standard error", err), *self.written(words)):
            parts += [f"---- {title}\n", text if text.endswith("\n") else text + "\n"] if text else []
        if as_json and code == 0:
            _, out, _ = self.run(workshop, words + ["--json"])
            parts += ["---- json\n", json.dumps(ten_digits(json.loads(out)), indent=1, ensure_ascii=False, sort_keys=True) + "\n"]
        return VERSION.sub("Pourbook VERSION", FINGERPRINT.sub("FINGERPRINT", "".join(parts)))

    def written(self, words):
        for word in words:
            if word.startswith(self.folder):
                with open(word, encoding="utf-8") as file:
                    yield "file", file.read()


def gives_json(call):
    return not any(word in call for word in ("--format", "OUT")) and call != "help"


def answers(asked, names):
    none = os.path.join(asked.folder, "none.sqlite")
    with ThreadPoolExecutor(2) as pool:
        free = {n: pool.submit(asked.answer, n, c, none, gives_json(c)) for n, c in FREE.items() if not names or n in names}
        all_answers = {n: f.result() for n, f in free.items()}
    # A call that changes the file can't be asked twice.
    reads = ("own-stock", "own-value", "own-rank", "own-sheet", "own-trials", "own-pour", "own-log-again")
    if not names or set(OWN) & set(names):
        all_answers.update({n: asked.answer(n, c, asked.own, n in reads) for n, c in OWN.items()})
    return all_answers


def path_of(name):
    return os.path.join(APPROVED, name + ".txt")


def approve(given, whole):
    if whole:
        for file in os.listdir(APPROVED):
            if file.removesuffix(".txt") not in given:
                os.remove(os.path.join(APPROVED, file))
    for name, text in given.items():
        with open(path_of(name), "w", encoding="utf-8") as file:
            file.write(text)
    print(f"approved: {len(given)} answers")


def compare(given, whole):
    for name, text in given.items():
        known = open(path_of(name), encoding="utf-8").read() if os.path.exists(path_of(name)) else ""
        lines = list(difflib.unified_diff(known.splitlines(), text.splitlines(), "approved", "now", lineterm="", n=0))
        check(not lines, f"{name}: {len(lines)} lines differ:\n  " + "\n  ".join(line[:300] for line in lines[2:14]))
    left = {f.removesuffix(".txt") for f in os.listdir(APPROVED)} - set(given)
    check(not whole or not left, f"approved, but no longer asked: {sorted(left)}")
    ended(f"{len(given)} approved answers")


with tempfile.TemporaryDirectory(prefix="pourbook-approved-") as folder:
    wanted = [w for w in sys.argv[1:] if w != "--approve"]
    (approve if "--approve" in sys.argv else compare)(answers(Asked(folder), wanted), not wanted)
