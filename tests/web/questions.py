#!/usr/bin/env python3
"""The questions of a founder, each answered on the page in Chromium as tests/gui/questions.py answers them in the real window, and equal to what the
native command line answers; what was entered on the page reaches it by the page's own file.
usage: questions.py FOLDER-OF-THE-PAGE [--only NUMBER] [--report FILE] [--pictures FOLDER]        (POURBOOK names the native program)"""
import argparse
import os
import subprocess
import sys
import tempfile

from page_window import PageWindow, page_browser
from serve import serve

import after_project
import before_project
from person import Person
from window import Failure


class PagePerson(Person):
    """The command line has the file that the page saves."""

    def opened(self, program, display):
        browser, address = display
        return PageWindow(browser, address, self.folder)

    def run(self, *words):
        own = self.window.own_file()
        if own:
            there = os.path.join(self.folder, "data", "pourbook")
            os.makedirs(there, exist_ok=True)
            with open(os.path.join(there, "workshop.sqlite"), "wb") as out:
                out.write(own)
        return super().run(*words)


def answered(program, display, folder, part, pictures):
    number, question, view, ask = part
    person = PagePerson(program, display, folder)
    try:
        done, answer = ask(person)
    except KeyError as missing:
        raise Failure(f"{missing} is not on screen") from missing
    finally:
        if pictures:
            person.window.picture(pictures, f"{number}-{ask.__name__}")
    w = person.window
    return f"| {number} | {question} | {done} | {w.clicks} | {w.keys} | {w.characters} | {answer} |\n".replace("\n", " ").rstrip() + "\n"


def main():
    words = argparse.ArgumentParser()
    words.add_argument("page")
    words.add_argument("--only")
    words.add_argument("--report")
    words.add_argument("--pictures")
    words = words.parse_args()
    server, address = serve(words.page)
    browser, failed, report = page_browser(), 0, ""
    parts = [p for p in before_project.PARTS + after_project.PARTS if words.only in (None, p[0], p[3].__name__)]
    with tempfile.TemporaryDirectory() as folder:
        for place, part in enumerate(parts):
            try:
                report += answered(os.environ["POURBOOK"], (browser, address), os.path.join(folder, str(place)), part, words.pictures)
                print("answered:", part[0], part[1], flush=True)
            except (Failure, AssertionError, subprocess.SubprocessError, OSError, ValueError) as fault:
                failed += 1
                print(f"FAILED: {part[0]} {part[1]}: {fault}", flush=True)
    browser.close()
    server.shutdown()
    if words.report:
        with open(words.report, "w", encoding="utf-8") as file:
            file.write(report)
    print(f"questions on the page: {len(parts) - failed} of {len(parts)} parts passed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
