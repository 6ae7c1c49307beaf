"""An answer that could not be written is no success: every command with its output full or closed ends with one line and
exit code 4, whatever it answers with."""
import os
import re
import subprocess
import tempfile

from support.program import PROGRAM, Program, check, ended

FALL = ["--magnet", "sphere:12mm", "--grade", "N42", "--tube", "14mm:20mm:500mm", "--metal", "copper"]
CALLS = [
    ["--help"], ["--version"], ["metals"], ["value", "copper", "density"], ["value", "copper", "density", "--json"], ["sheet", "copper"],
    ["rank", "--goal", "braking-per-cost", "--samples", "0"], ["compare", "copper", "tin", "--show", "density", "--format", "xlsx"],
    ["versus", "copper", "tin", "--goal", "strongest-brake", "--samples", "100"], ["sources"], ["check"], ["drop", *FALL],
    ["mix", "1kg copper + 100g tin"], ["pour", "bronze-silicon-cast", "--part", "tube:22mm:28mm:300mm"], ["defect"], ["help"], ["help", "rank"],
    ["stock", "add", "copper", "1kg"], ["stock"], ["stock", "--csv"], ["changes"], ["undo"], ["redo"], ["log"], ["stock", "--help"],
]


def end_of(words, output):
    done = subprocess.run([PROGRAM, "--workshop", FILE, *words], stdout=output, stderr=subprocess.PIPE, text=True, timeout=60)
    return done.returncode, done.stderr


def written_to(words, where, reason, open_output):
    with open_output() as output:
        code, err = end_of(words, output)
    check(code == 4 and re.fullmatch("pourbook: .*could not be written: .*\n", err.splitlines(True)[-1] if err else "") and reason in err,
          f"{words} {where}: exit {code}: {err!r}")


def closed(words):
    script = 'exec "$0" "$@" >&-'
    done = subprocess.run(["sh", "-c", script, PROGRAM, "--workshop", FILE, *words], stderr=subprocess.PIPE, text=True, timeout=60)
    check(done.returncode == 4 and "Bad file descriptor" in done.stderr, f"{words} closed: exit {done.returncode}: {done.stderr!r}")


with tempfile.TemporaryDirectory(prefix="pourbook-lost-") as folder:
    FILE = os.path.join(folder, "w.sqlite")
    commands = re.findall(r"^  ([a-z][a-z-]*) {2,}", Program().run("--help")[1], re.MULTILINE)
    check(len(commands) > 30, f"only {len(commands)} commands found")
    for call in CALLS + [[command, "--help"] for command in commands]:
        written_to(call, "to a full device", "No space left on device", lambda: open("/dev/full", "w", encoding="utf-8"))
    for call in (["value", "copper", "density"], ["--version"], ["stock"], ["help"]):
        closed(call)
    check(Program("--workshop", FILE).run("stock", "--csv")[1].count("copper") == 1, "a change whose answer was lost stands")

ended("lost answers")
