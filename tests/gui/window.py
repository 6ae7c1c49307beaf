"""A display of its own, and the real window on it: real pointer, real keys, and what is on screen read back through the test socket."""
import json
import os
import socket
import subprocess
import time


# What the scripts speak of; the first start shows a scenario of its own (face.tests.cpp).
SETUP = {"magnet": "cylinder:15mmx15mm", "grade": "N42", "tube": "18mm:24mm:400mm"}
USUAL = {
    "view": "rank", "pins": ["copper", "sterling-silver", "aluminium-6061", "brass-cartridge"], "selected": "copper",
    "drop_setup": SETUP, "drop": {"face": "charts", "second": {**SETUP, "tube": "18mm:30mm:400mm"}, "second_metal": "aluminium-6061"},
    "curves": {"celsius": False}, "pour_face": "sheet", "pour": {"question": "pour", "metal": "copper", "part": ["tube:18mm:24mm:400mm"], "clear": "15mm"},
    "mix": {"words": {"stocks": [{"mass": "1.2 kg", "metal": "sterling-silver", "paid": ""}, {"mass": "300 g", "metal": "silver", "paid": ""}],
                      "composition": "Ag 92.5 Cu 7.5", "melt_loss": "1 %", "target": "Ag 95.8", "with": "silver", "phases_at": "870 degC"}}}


def with_usual_state(folder, words):
    """The words with a state file that holds what is usual, where it does not hold anything yet."""
    words = list(words)
    if "--state" not in words:
        words += ["--state", os.path.join(folder, "usual.json")]
    file = words[words.index("--state") + 1]
    if not os.path.exists(file):
        with open(file, "w", encoding="utf-8") as out:
            json.dump(USUAL, out)
    return words


def with_usual_size(words):
    return words if "--size" in words else ["--size", "1440x900", "--scale", "1", *words]


class Failure(Exception):
    pass


def check(truth, what):
    if not truth:
        raise Failure(what)


def number(text):
    """"8.7·10⁻⁶" -> 8.7e-6."""
    return float(text.replace("·10", "e").translate(str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-")))


class Display:
    """An Xvfb on the first free number; no window manager."""

    def __init__(self, size="1600x1000"):
        self.size = size

    def __enter__(self):
        first = int(os.environ.get("POURBOOK_DISPLAY", "81"))
        for number in range(first, 99):
            if os.path.exists(f"/tmp/.X{number}-lock"):
                continue
            self.name = f":{number}"
            words = ["Xvfb", self.name, "-screen", "0", self.size + "x24", "-noreset", "-nolisten", "tcp"]
            self.server = subprocess.Popen(words, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            for _ in range(100):
                if os.path.exists(f"/tmp/.X11-unix/X{number}"):
                    return self
                if self.server.poll() is not None:
                    break
                time.sleep(0.05)
        raise Failure("no display could be started")

    def __exit__(self, *_):
        self.server.terminate()
        self.server.wait()


class Window:
    """Counts what a person does: clicks (a notch of the wheel is one), keys (a chord is one) and typed characters."""

    def __init__(self, program, display, folder, *words):
        self.clicks = self.keys = self.characters = 0
        self.environment = dict(os.environ, DISPLAY=display.name, LIBGL_ALWAYS_SOFTWARE="1")
        self.socket_path = os.path.join(folder, "window.socket")
        words = [program, "--test-socket", self.socket_path, *with_usual_size(with_usual_state(folder, words))]
        self.process = subprocess.Popen(words, env=self.environment, stderr=subprocess.PIPE, text=True)
        self.stream = self.connect()

    def connect(self):
        for _ in range(1200):
            if self.process.poll() is not None:
                raise Failure(f"the window ended at once: {self.process.stderr.read().strip()}")
            try:
                link = socket.socket(socket.AF_UNIX)
                link.connect(self.socket_path)
                link.settimeout(30)
                return link.makefile("rw", encoding="utf-8")
            except OSError:
                time.sleep(0.05)
        raise Failure("the window did not open its test socket")

    def dump(self):
        """What is on screen, after at least one more whole frame."""
        self.stream.write("dump\n")
        self.stream.flush()
        return json.loads(self.stream.readline())

    def settled(self):
        """What is on screen once nothing was being worked out in three looks on end: what a key asks for begins a frame later."""
        calm = 0
        for _ in range(1200):
            screen = self.dump()
            calm = 0 if screen["working"] else calm + 1
            if calm == 3:
                return screen
            if calm == 0:
                time.sleep(0.02)
        raise Failure("the window never finished working")

    def text(self, name):
        items = self.settled()["items"]
        check(name in items, f"'{name}' is not on screen")
        return items[name]["text"]

    def screen_when(self, true, what, looks=100, look=None):
        """The first screen of which this is true: on a busy machine a chart comes some frames after its answer."""
        look = look or self.settled
        for _ in range(looks):
            screen = look()
            if true(screen):
                return screen
        raise Failure(f"never seen: {what}")

    def shows(self, name):
        return name in self.settled()["items"]

    def xdotool(self, *words):
        subprocess.run(["xdotool", *map(str, words)], env=self.environment, check=True)

    def point_at(self, name):
        items = self.settled()["items"]
        check(name in items, f"'{name}' is not on screen")
        i = items[name]
        check(i["width"] > 0, f"'{name}' has no place on screen")
        self.xdotool("mousemove", int(i["x"] + i["width"] / 2), int(i["y"] + i["height"] / 2))
        self.dump()
        self.dump()

    def press(self, name):
        """A click where the thing was a moment ago; it may be gone."""
        items = self.dump()["items"]
        if name not in items:
            return
        i = items[name]
        self.xdotool("mousemove", int(i["x"] + i["width"] / 2), int(i["y"] + i["height"] / 2))
        for action in ("mousedown", "mouseup"):
            self.dump()
            self.xdotool(action, 1)
        self.dump()

    def click(self, name):
        self.point_at(name)
        self.clicks += 1
        for action in ("mousedown", "mouseup"):
            self.xdotool(action, 1)
            self.dump()
            self.dump()

    def turn_wheel(self):
        """A notch down, where the pointer is."""
        self.clicks += 1
        self.xdotool("click", 5)
        self.dump()
        self.dump()

    def wheel_to(self, wanted, over):
        """The wheel turned down over a thing until another comes into sight."""
        self.point_at(over)
        for _ in range(40):
            if wanted in self.dump()["items"]:
                return
            self.turn_wheel()
        raise Failure(f"'{wanted}' did not come into sight")

    def key(self, *names):
        """Down and up with a frame between: a key pressed and released within one frame is lost."""
        self.keys += 1
        for action, order in (("keydown", names), ("keyup", reversed(names))):
            for name in order:
                self.xdotool(action, name)
                self.dump()

    def keys_in_a_row(self, key, count, held=None):
        """One key several times, another held meanwhile; each press counts, and none is lost on a busy machine."""
        self.keys += count
        if held:
            self.xdotool("keydown", held)
        for _ in range(count):
            for action in ("keydown", "keyup"):
                self.xdotool(action, key)
                self.dump()
        if held:
            self.xdotool("keyup", held)
            self.dump()

    def write(self, words):
        self.characters += len(words)
        self.xdotool("type", "--delay", "30", "--", words)
        self.dump()

    def saved(self, file):
        """Where a file lies that the window says it has saved."""
        return file

    def resize(self, width, height):
        found = subprocess.run(["xdotool", "search", "--pid", str(self.process.pid)], env=self.environment, capture_output=True, text=True)
        for window in found.stdout.split():
            subprocess.run(["xdotool", "windowsize", window, str(width), str(height)], env=self.environment, capture_output=True)
        for _ in range(6):
            self.dump()

    def picture(self, folder, name):
        self.settled()
        subprocess.run(["import", "-window", "root", "-crop", "1440x900+0+0", os.path.join(folder, name + ".png")], env=self.environment, check=True)

    def close(self):
        self.process.terminate()
        self.process.wait(60)
