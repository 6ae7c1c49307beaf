"""What the tests of the command line share: the built program run with words, failures gathered and told at the end."""
import json
import os
import subprocess
import sys

PROGRAM = os.environ["POURBOOK"]
failures = []


def check(truth, what):
    if not truth:
        failures.append(what)


def ended(name):
    """Tells every failure and ends with the exit code of a test."""
    for failure in failures:
        print("FAILED:", failure)
    print(f"{'failed' if failures else 'passed'}: {name}, {len(failures)} failures")
    sys.exit(1 if failures else 0)


class Program:
    """The program with words that come first each time."""

    def __init__(self, *first, environment=None):
        self.first = first
        self.environment = {**os.environ, **(environment or {})}

    def run(self, *words):
        done = subprocess.run([PROGRAM, *self.first, *words], capture_output=True, text=True, timeout=120, env=self.environment)
        return done.returncode, done.stdout, done.stderr

    def answer(self, *words):
        """JSON without NaN or infinity."""
        code, out, err = self.run(*words, "--json")
        check(code == 0, f"{words}: exit {code}: {err.strip()}")
        return json.loads(out, parse_constant=lambda c: check(False, f"{words}: {c} in the JSON")) if code == 0 else {}

    def refused(self, expected, contains, *words):
        code, out, err = self.run(*words)
        check(code == expected, f"{words}: exit {code} instead of {expected}: {err.strip()}")
        check(err.count("\n") == 1 and contains in err, f"{words}: not one clear line with '{contains}': {err!r}")
        check(out == "", f"{words}: wrote to standard output")
