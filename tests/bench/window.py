#!/usr/bin/env python3
"""Benchmark of the window beside the smallest Dear ImGui + GLFW program, in one run: start to first frame, frame time of each view,
processor time while idle, memory; and each view once more with very many metals. Prints the report.

Usage: window.py BUILD_FOLDER   needs Xvfb; builds tests/bench/smallest_window.cpp and, where it is there, uses BUILD/many-metals.
"""
import json
import os
import shutil
import socket
import statistics
import subprocess
import sys
import tempfile
import time

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "gui"))
from window import Display  # noqa: E402

VIEWS = {"F1": "Metals", "F2": "Rank", "F3": "Curves", "F4": "Compare", "F5": "Drop", "F6": "Mix", "F7": "Pour", "F8": "Trials", "F9": "Sources"}
FRAMES = 60
IDLE_S = 6
RACE_S = 4


class Program:
    """A window that answers a question after its next whole frame."""

    def start(self, words, environment):
        self.began = time.monotonic()
        self.process = subprocess.Popen(words, env=environment, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)

    def frame_ms(self):
        """Of a frame: by the clock, the median, and in processor time of all its threads, the mean."""
        times, before = [], self.processor_s()
        for _ in range(FRAMES):
            at = time.monotonic()
            self.frame()
            times.append(time.monotonic() - at)
        return 1000 * statistics.median(times), 1000 * (self.processor_s() - before) / FRAMES

    def processor_s(self):
        """Of the threads that live, to the nanosecond; other programs on the machine do not count."""
        tasks = f"/proc/{self.process.pid}/task"
        return sum(int(open(f"{tasks}/{t}/schedstat").read().split()[0]) for t in os.listdir(tasks)) / 1e9

    def ticks(self):
        fields = open(f"/proc/{self.process.pid}/stat").read().rsplit(")", 1)[1].split()
        return int(fields[11]) + int(fields[12])

    def idle_percent(self):
        time.sleep(2)
        before = self.ticks()
        time.sleep(IDLE_S)
        return 100 * (self.ticks() - before) / os.sysconf("SC_CLK_TCK") / IDLE_S

    def memory_mb(self):
        return next(int(line.split()[1]) for line in open(f"/proc/{self.process.pid}/status") if line.startswith("VmRSS")) / 1024

    def close(self):
        self.process.terminate()
        self.process.wait(20)


class Smallest(Program):
    def __init__(self, program, environment):
        self.start([program], environment)
        self.process.stdout.readline()
        self.first_frame_s = time.monotonic() - self.began
        self.first_frame_processor_s = self.ticks() / os.sysconf("SC_CLK_TCK")

    def frame(self):
        self.process.stdin.write("frame\n")
        self.process.stdin.flush()
        self.process.stdout.readline()


class Pourbook(Program):
    def __init__(self, program, environment, folder):
        path = os.path.join(folder, "bench.socket")
        self.start([program, "--test-socket", path, "--size", "1440x900", "--scale", "1", "--view", "metals"], environment)
        self.link = self.connect(path)
        self.frame()
        self.first_frame_s = time.monotonic() - self.began
        self.first_frame_processor_s = self.ticks() / os.sysconf("SC_CLK_TCK")
        self.environment = environment

    def connect(self, path):
        while self.process.poll() is None:
            link = socket.socket(socket.AF_UNIX)
            try:
                link.connect(path)
                return link.makefile("rw", encoding="utf-8")
            except OSError:
                time.sleep(0.002)
        raise SystemExit("the window ended at once")

    def ask(self, word):
        self.link.write(word + "\n")
        self.link.flush()
        return self.link.readline()

    def frame(self):
        self.ask("frame")

    def show(self, key):
        for action in ("keydown", "keyup"):
            subprocess.run(["xdotool", action, key], env=self.environment, check=True)
            self.frame()
        while '"working":true' in self.ask("dump"):
            time.sleep(0.05)
        for _ in range(5):
            self.frame()


    def screen(self):
        return json.loads(self.ask("dump"))

    def own_work_ms(self):
        """What a frame costs before it goes to the graphics card: laying out and building what is drawn."""
        return statistics.median(self.screen()["own_work_ms"] for _ in range(FRAMES))

    def race_frames_a_second(self):
        """Of the race of the first start, in 20 times slower than life: it runs as long as it is watched. And how much of a processor that takes."""
        self.show("F12")
        self.click("start.race.pace.2")
        if self.screen()["items"]["start.race.go"]["text"] != "Stop":
            self.click("start.race.go")
        first, before = self.screen(), self.processor_s()
        time.sleep(RACE_S)
        last, spent = self.screen(), self.processor_s() - before
        moved = float(last["items"]["start.race.time"]["text"]) - float(first["items"]["start.race.time"]["text"])
        frames = last["frame"] - first["frame"]
        return (frames / (20 * moved) if moved > 0 else 0), 1000 * spent / max(frames, 1)

    def click(self, name):
        i = self.screen()["items"][name]
        subprocess.run(["xdotool", "mousemove", str(int(i["x"] + i["width"] / 2)), str(int(i["y"] + i["height"] / 2))], env=self.environment, check=True)
        for action in ("mousedown", "mouseup"):
            self.frame()
            subprocess.run(["xdotool", action, "1"], env=self.environment, check=True)
            self.frame()


def measured(window):
    frames, own = {}, {}
    for key, view in VIEWS.items():
        window.show(key)
        frames[view] = window.frame_ms()
        own[view] = window.own_work_ms()
    race = window.race_frames_a_second()
    window.show("F1")
    return {"first": window.first_frame_s, "first_processor": window.first_frame_processor_s, "frames": frames, "own": own, "race": race, "idle": window.idle_percent(), "memory": window.memory_mb()}


def with_many_metals(build, environment, folder):
    """The same program beside a reference of very many made-up metals."""
    maker = os.path.join(build, "many-metals")
    if not os.path.exists(maker):
        return None
    shutil.copy(os.path.join(build, "pourbook"), folder)
    subprocess.run([maker, os.path.join(build, "pourbook-reference.sqlite"), os.path.join(folder, "pourbook-reference.sqlite"), "100000"], check=True)
    window = Pourbook(os.path.join(folder, "pourbook"), environment, folder)
    try:
        return measured(window)
    finally:
        window.close()


def report(small, ours, many):
    lines = ["# Benchmark of the window", "",
             f"1440x900, software renderer under Xvfb; made by tests/bench/window.py in one run, load of the machine {os.getloadavg()[0]:.1f} on {os.cpu_count()} processors. The smallest program draws one line of text with the same libraries.", "",
             "| | smallest program | Pourbook | ratio |", "|---|---:|---:|---:|",
             f"| start to first frame | {small['first'] * 1000:.0f} ms | {ours['first'] * 1000:.0f} ms | {ours['first'] / small['first']:.2f} |",
             f"| start to first frame, processor time | {small['first_processor'] * 1000:.0f} ms | {ours['first_processor'] * 1000:.0f} ms | {ours['first_processor'] / small['first_processor']:.2f} |",
             f"| idle, share of a processor | {small['idle']:.2f} % | {ours['idle']:.2f} % | {ours['idle'] - small['idle']:+.2f} points |",
             f"| memory | {small['memory']:.0f} MB | {ours['memory']:.0f} MB | {ours['memory'] / small['memory']:.2f} |"]
    lines.append(f"| race of five tubes, frames a second of its own clock | | {ours['race'][0]:.0f} | |")
    lines.append(f"| race of five tubes, processor time of a frame | | {ours['race'][1]:.1f} ms | |")
    for view, ms in ours["own"].items():
        lines.append(f"| own work of a frame of {view} (before the graphics) | | {ms:.2f} ms | |")
    for view, (ms, processor_ms) in ours["frames"].items():
        lines.append(f"| frame of {view} | {small['frame'][0]:.1f} ms | {ms:.1f} ms | {ms / small['frame'][0]:.2f} |")
        lines.append(f"| the same, processor time | {small['frame'][1]:.1f} ms | {processor_ms:.1f} ms | {processor_ms / small['frame'][1]:.2f} |")
    if many:
        lines += ["", "With 100,000 made-up metals beside the shipped ones:", "", "| | shipped data | with 100,000 more | ratio |", "|---|---:|---:|---:|"]
        for view, (ms, _) in many["frames"].items():
            lines.append(f"| frame of {view} | {ours['frames'][view][0]:.1f} ms | {ms:.1f} ms | {ms / ours['frames'][view][0]:.2f} |")
        lines.append(f"| start to first frame | {ours['first'] * 1000:.0f} ms | {many['first'] * 1000:.0f} ms | {many['first'] / ours['first']:.2f} |")
        lines.append(f"| memory | {ours['memory']:.0f} MB | {many['memory']:.0f} MB | {many['memory'] / ours['memory']:.2f} |")
    return "\n".join(lines) + "\n"


def build_smallest(folder):
    flags = subprocess.run(["pkg-config", "--cflags", "--libs", "imgui", "glfw3", "freetype2"], capture_output=True, text=True, check=True).stdout.split()
    program = os.path.join(folder, "smallest")
    source = os.path.join(HERE, "smallest_window.cpp")
    subprocess.run(["g++", "-std=c++20", "-O2", source, "-o", program, *flags, "-lfreetype", "-ldl", "-lpthread"], check=True)
    return program


def main():
    if len(sys.argv) < 2:
        print(__doc__)
        return 2
    build = sys.argv[1]
    with tempfile.TemporaryDirectory() as folder, Display() as display:
        environment = dict(os.environ, DISPLAY=display.name, LIBGL_ALWAYS_SOFTWARE="1", XDG_STATE_HOME=folder, XDG_DATA_HOME=folder)
        window = Smallest(build_smallest(folder), environment)
        small = {"first": window.first_frame_s, "first_processor": window.first_frame_processor_s, "frame": window.frame_ms(), "idle": window.idle_percent(), "memory": window.memory_mb()}
        window.close()
        window = Pourbook(os.path.join(build, "pourbook"), environment, folder)
        ours = measured(window)
        window.close()
        many = with_many_metals(build, environment, folder)
    text = report(small, ours, many)
    print(text, end="")
    return 0


if __name__ == "__main__":
    sys.exit(main())
