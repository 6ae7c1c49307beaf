"""Somebody at a window just started, with a workshop of their own, and the command line beside it with the same workshop."""
import json
import os
import re
import shlex
import subprocess

from window import Window, check, number

SETUP = ["--magnet", "cylinder:15mmx15mm", "--grade", "N42", "--tube", "18mm:24mm:400mm"]  # of the first start


def last_place(figure):
    """What one step of the last digit written is worth; zeros at the end beyond two digits may only fill up."""
    digits, _, power = figure.lstrip("-").partition("·10")
    whole, _, decimals = digits.partition(".")
    step = 10.0 ** -len(decimals)
    if not decimals:
        step = 10.0 ** min(len(whole) - len(whole.rstrip("0")), max(0, len(whole) - 2))
    return step * (number("1·10" + power) if power else 1)


def equal(shown, told, what):
    """`shown` is the figure of the command, rounded to the digits written."""
    check(abs(number(shown) - told) <= 0.5001 * last_place(shown), f"{what}: the window shows {shown}, the command says {told}")


def figures(pattern, text, what):
    found = re.search(pattern, text)
    check(found, f"{what}: no figures as in '{pattern}' in {text!r}")
    return found.groups()


def plain(text):
    """Signs of print as they are typed."""
    for printed, typed in (("°C", "degC"), ("±", "+-"), ("³", "3"), ("µΩ·cm", "uohm.cm")):
        text = text.replace(printed, typed)
    return text


class Person:
    def __init__(self, program, display, folder):
        for name in ("data", "state", "config", "Pictures", "Documents"):
            os.makedirs(os.path.join(folder, name))
        os.environ.update(HOME=folder, SOURCE_DATE_EPOCH="1795000000",
                          XDG_DATA_HOME=os.path.join(folder, "data"), XDG_STATE_HOME=os.path.join(folder, "state"), XDG_CONFIG_HOME=os.path.join(folder, "config"),
                          XDG_PICTURES_DIR=os.path.join(folder, "Pictures"), XDG_DOCUMENTS_DIR=os.path.join(folder, "Documents"))
        self.program, self.folder, self.commands = program, folder, []
        self.window = self.opened(program, display)

    def opened(self, program, display):
        return Window(program, display, self.folder)

    def run(self, *words):
        self.commands.append(" ".join(["pourbook", *map(shlex.quote, words)]).replace(self.folder + "/", ""))
        return subprocess.run([self.program, *words], capture_output=True, text=True, timeout=300)

    def asked(self, *words):
        """What the command line answers, None where it can't, and its line of failure."""
        done = self.run(*words, "--json")
        return json.loads(done.stdout) if done.returncode == 0 else None, done.stderr.strip()

    def told(self, *words):
        answer, failure = self.asked(*words)
        check(answer is not None, f"{self.commands[-1]}: {failure}")
        return answer

    def pick(self, choice, word):
        self.window.click(choice)
        if self.window.shows(f"{choice}.find"):  # metals are found by typing
            self.window.write(word)
            self.window.key("Return")
        else:
            self.window.click(f"{choice}.{word}")

    def fill(self, field, words):
        """A field with something in it, or empty."""
        if self.window.text(field):
            self.window.click(field)
            self.window.key("Control_L", "a")
        else:
            self.window.click(field)
        self.window.write(words)
        check(self.window.text(field) == words, f"'{field}' holds {self.window.text(field)!r} instead of {words!r}")
        self.window.key("Return")

    def find(self, words):
        """A metal by its name, selected."""
        self.window.key("Control_L", "f")
        self.window.write(words)
