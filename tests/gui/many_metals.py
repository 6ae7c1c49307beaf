#!/usr/bin/env python3
"""The Rank view of the real window over very many made-up metals: it never freezes, progress shows, Cancel stops it, a newer question
takes the place of the older, the order is the command line's, and the window ends while it still works.

Usage: many_metals.py [COUNT] [--report]   COUNT 20000 unless said; --report writes tests/reports/many-metals.md.
Uses $POURBOOK or build/pourbook, the reference and `many-metals` beside it. Needs Xvfb and xdotool.
"""
import json
import os
import statistics
import subprocess
import sys
import tempfile
import time

from window import Display, Failure, Window, check

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")
PATIENCE = 20000  # looks at the screen before giving up: far more than any answer needs
START = 200  # looks until a click has begun the work
LOOKS = 40
ROWS = 10
SAMPLES = 2000  # of the window and the command where nothing else is asked


class Watch:
    """What the screen said, look after look."""

    def __init__(self, window):
        self.window = window
        self.screens, self.answers_s = [], []

    def look(self):
        began = time.monotonic()
        self.screens.append(self.window.dump())
        self.answers_s.append(time.monotonic() - began)
        return self.screens[-1]

    def until(self, true, what, looks=PATIENCE):
        return self.window.screen_when(true, what, looks, self.look)

    def progress(self):
        """(frame, per cent) wherever progress was on screen."""
        shown = [(s["frame"], s["items"].get("rank.work.done")) for s in self.screens]
        return [(frame, int(item["text"].split()[0])) for frame, item in shown if item]


def done_percent(screen):
    return int(screen["items"].get("rank.work.done", {"text": "-1 %"})["text"].split()[0])


def idle(screen):
    return not screen["working"]


def ask(window, goal):
    """Chooses a goal without waiting for answers."""
    window.press("goal")
    window.dump()
    window.press(f"goal.{goal}")
    check(window.dump()["items"]["goal"]["text"] == goal, f"'{goal}' was not chosen while other work goes on")


def until_progress(watch):
    watch.until(lambda s: s["working"], "the work that was asked for", START)
    screen = watch.until(lambda s: done_percent(s) > 0 or idle(s), "progress")
    check(done_percent(screen) > 0, "the answer came before any progress was shown: ask for more metals")


def rows_on(screen):
    return [screen["items"].get(f"rank.row.{i + 1}", {"text": "nothing"})["text"] for i in range(ROWS)]


class Command:
    """The same questions to the command line."""

    def __init__(self, program, reference, folder):
        self.words = [program, "--reference", reference, "--workshop", os.path.join(folder, "none.sqlite"), "rank", "--top", str(ROWS), "--json"]
        self.told = {}

    def first_rows(self, goal, samples):
        if (goal, samples) not in self.told:
            words = [*self.words, "--goal", goal, "--samples", str(samples)]
            answer = json.loads(subprocess.run(words, capture_output=True, text=True, check=True).stdout)
            self.told[goal, samples] = [r["metal"] for r in answer["results"]]
        return self.told[goal, samples]

    def agrees(self, screen, goal, samples=SAMPLES):
        shown = rows_on(screen)
        check(shown == self.first_rows(goal, samples), f"{goal}: the window's first {ROWS} are {shown}, the command's {self.first_rows(goal, samples)}")


def answers_while_working(window, goal):
    """The window through a whole ranking."""
    watch = Watch(window)
    ask(window, goal)
    until_progress(watch)
    screen = watch.until(idle, "the end of the ranking")
    steps = watch.progress()
    check(all(a[1] <= b[1] for a, b in zip(steps, steps[1:])), f"progress falls: {steps}")
    check(len({percent for _, percent in steps}) >= 3, f"progress does not move: {steps}")
    check(all(a[0] < b[0] for a, b in zip(steps, steps[1:])), "no frame was drawn between two looks")
    return screen, watch, steps


def stops_when_told(window, goal):
    """Cancel, another view meanwhile, and the same question once more. Gives the last screen, and how long Cancel took."""
    watch = Watch(window)
    before = watch.look()["items"]["rank.row.1"]["text"]
    ask(window, goal)
    until_progress(watch)
    asked, began = watch.screens[-1]["frame"], time.monotonic()
    window.press("rank.work.cancel")
    screen = watch.until(lambda s: "rank.work.stopped" in s["items"], "that it was stopped")
    stopped = screen["frame"] - asked, time.monotonic() - began
    check(screen["items"]["rank.row.1"]["text"] == before, "stopped work changed the order shown")
    watch.until(idle, "the end of stopped work")
    window.key("F3")
    check(window.dump()["items"]["view"]["text"] == "curves", "after Cancel another view can't be opened")
    window.key("F2")
    window.press("rank.work.again")
    until_progress(watch)
    return watch.until(idle, "the answer that was asked for again"), stopped


def newest_wins(window, older, newer):
    watch = Watch(window)
    ask(window, older)
    until_progress(watch)
    ask(window, newer)
    return watch.until(idle, "the answer to the newer question")


def ends_while_working(window):
    """Quits during the ranking that goes on."""
    until_progress(Watch(window))
    began = time.monotonic()
    window.xdotool("keydown", "Control_L", "keydown", "q")
    code = window.process.wait(PATIENCE)
    window.xdotool("keyup", "q", "keyup", "Control_L")
    check(code == 0, f"the window ended with {code}")
    return time.monotonic() - began


def memory_mb(window):
    lines = open(f"/proc/{window.process.pid}/status", encoding="utf-8").read().splitlines()
    return {key: int(line.split()[1]) // 1024 for line in lines for key in ["VmRSS", "VmHWM"] if line.startswith(key)}


def run(program, reference, folder, display):
    began = time.monotonic()
    command = Command(program, reference, folder)
    window = Window(program, display, folder, "--reference", reference, "--workshop", os.path.join(folder, "own.sqlite"), "--view", "rank")
    told = {}
    try:
        first = Watch(window).until(idle, "the first answer")
        told["first"] = time.monotonic() - began
        command.agrees(first, "braking-per-cost")
        told["memory"] = memory_mb(window)
        still = Watch(window)
        for _ in range(LOOKS):
            still.look()
        began = time.monotonic()
        screen, working, told["steps"] = answers_while_working(window, "light-conductor")
        told["ranking"] = time.monotonic() - began
        command.agrees(screen, "light-conductor")
        told.update(idle_s=still.answers_s, working_s=working.answers_s, frames=working.screens[-1]["frame"] - working.screens[0]["frame"])
        screen, told["stopped"] = stops_when_told(window, "strongest-brake")
        command.agrees(screen, "strongest-brake")
        command.agrees(newest_wins(window, "braking-per-cost", "light-conductor"), "light-conductor")
        window.press("samples.0")
        plain = command.first_rows("light-conductor", 0)  # it is there too soon for its progress to be seen
        Watch(window).until(lambda s: idle(s) and rows_on(s) == plain, f"the order without samples, {plain}", START)
        told["memory_after"] = memory_mb(window)
        window.press("samples.1")
        told["end"] = ends_while_working(window)
    finally:
        if window.process.poll() is None:
            window.close()
    return told


def report(count, told):
    def ms(seconds):
        return f"{1000 * statistics.median(seconds):.0f} ms", f"{1000 * max(seconds):.0f} ms"

    idle_ms, working_ms = ms(told["idle_s"]), ms(told["working_s"])
    ratio = [f"{f(told['working_s']) / f(told['idle_s']):.2f}" for f in (statistics.median, max)]
    percents = sorted({percent for _, percent in told["steps"]})
    lines = [f"# The Rank view over {count:,} metals", "",
             f"{count:,} invented metals beside the shipped ones, ranked with {SAMPLES:,} samples each in the real window (1440x900, software renderer under Xvfb,",
             f"{os.cpu_count()} processors); made by `tests/gui/many_metals.py {count} --report` in one run. The first {ROWS} rows were the command line's each time, also without samples.", "",
             "| | |", "|---|---|",
             f"| one ranking, asked to answered | {told['ranking']:.1f} s |",
             f"| frames drawn meanwhile | {told['frames']} |",
             f"| looks at the screen answered meanwhile | {len(told['working_s'])} |",
             f"| steps of progress seen | {len(percents)}, from {percents[0]} % to {percents[-1]} % |",
             f"| Cancel to \"stopped\" on screen | {told['stopped'][0]} frames, {told['stopped'][1]:.2f} s |",
             f"| start to the first answer | {told['first']:.1f} s |",
             f"| Ctrl+Q during a ranking to the end of the program | {told['end']:.1f} s |",
             f"| memory after the first answer, and most until then | {told['memory']['VmRSS']} MB, {told['memory']['VmHWM']} MB |",
             f"| memory after the others, and most until then | {told['memory_after']['VmRSS']} MB, {told['memory_after']['VmHWM']} MB |", "",
             "An answer of the window to \"what is on screen\" comes after one more whole frame:", "",
             "| | idle | while it ranks | ratio |", "|---|---:|---:|---:|",
             f"| median | {idle_ms[0]} | {working_ms[0]} | {ratio[0]} |", f"| longest | {idle_ms[1]} | {working_ms[1]} | {ratio[1]} |"]
    return "\n".join(lines) + "\n"


def main():
    words = [w for w in sys.argv[1:] if w != "--report"]
    count = int(words[0]) if words else 20000
    program = os.environ.get("POURBOOK", os.path.join(ROOT, "build", "pourbook"))
    beside = os.path.dirname(program)
    try:
        with tempfile.TemporaryDirectory() as folder, Display() as display:
            reference = os.path.join(folder, "many.sqlite")
            subprocess.run([os.path.join(beside, "many-metals"), os.path.join(beside, "pourbook-reference.sqlite"), reference, str(count)], check=True)
            told = run(program, reference, folder, display)
    except (Failure, subprocess.CalledProcessError, OSError) as fault:
        print(f"FAILED: {fault}")
        return 1
    if "--report" in sys.argv:
        with open(os.path.join(ROOT, "tests", "reports", "many-metals.md"), "w", encoding="utf-8") as out:
            out.write(report(count, told))
    print("many metals: passed")
    return 0


if __name__ == "__main__":
    sys.exit(main())
