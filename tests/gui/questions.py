#!/usr/bin/env python3
"""The questions of a founder, each answered in the real window from its first start by pointer and keyboard, and equal to the command line's answer.

Usage: questions.py [--report FILE] [--only NUMBER] [PROGRAM]   the program is $POURBOOK or build/pourbook.
Needs Xvfb, xdotool and pdftotext. Every question has a window, a workshop and folders of its own. The last line says what failed, if anything.
"""
import argparse
import os
import re
import subprocess
import sys
import tempfile

import after_project
import before_project
from person import Person
from window import Display, Failure

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")
HEAD = """# The twelve questions in the window

Each answered in the real window under Xvfb by a scripted pointer and keyboard, from the first start with an empty workshop, and equal to what the command line answers (to the digits shown).
Made by tests/gui/questions.py --report. A click is a press of the button or a notch of the wheel, a key is a key or chord that types nothing, letters are what is typed into fields.
Pointing at something counts as nothing. Where a question has several parts, each starts afresh.

| # | question | view | done | clicks | keys | letters | answer | equal to |
|---|---|---|---|---|---|---|---|---|
"""


def commands_of(person):
    """Two of them; where there are more, they ask for other metals or temperatures."""
    kinds = list(dict.fromkeys(re.sub(r"(\S{60})\S+", r"\1 …", c.removesuffix(" --json")) for c in person.commands))
    return "; ".join(f"`{c}`" for c in kinds[:2]) + (f" and {len(kinds) - 2} more like it" if len(kinds) > 2 else "")


def row_of(number, question, view, done, person, answer):
    w = person.window
    cells = [number, question, view, done, w.clicks, w.keys, w.characters, answer, commands_of(person)]
    return "| " + " | ".join(str(c).replace("|", "\\|").replace("\n", " ") for c in cells) + " |\n"


def answered(program, display, folder, part):
    number, question, view, ask = part
    person = Person(program, display, folder)
    try:
        done, answer = ask(person)
        return row_of(number, question, view, done, person, answer)
    except KeyError as missing:
        raise Failure(f"{missing} is not on screen") from missing
    finally:
        person.window.close()


def main():
    words = argparse.ArgumentParser()
    words.add_argument("--report")
    words.add_argument("--only")
    words.add_argument("program", nargs="?", default=os.environ.get("POURBOOK", os.path.join(ROOT, "build", "pourbook")))
    words = words.parse_args()
    parts = [p for p in before_project.PARTS + after_project.PARTS if words.only in (None, p[0])]
    report, failed = HEAD, 0
    with tempfile.TemporaryDirectory() as folder, Display() as display:
        for place, part in enumerate(parts):
            try:
                report += answered(words.program, display, os.path.join(folder, str(place)), part)
            except (Failure, subprocess.SubprocessError, OSError, ValueError) as fault:
                failed += 1
                print(f"FAILED: {part[0]} {part[1]}: {fault}")
    if failed:
        return 1
    if words.report:
        with open(words.report, "w", encoding="utf-8") as file:
            file.write(report)
    print(f"questions: {len(parts)} parts passed")
    return 0


if __name__ == "__main__":
    sys.exit(main())
