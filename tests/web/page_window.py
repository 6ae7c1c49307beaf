"""The page in the browser as the scripts of tests/gui know the real window: pointer, keys, and what is on screen."""
import json
import os
import sys
import time

from browser import Browser

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "gui"))
from window import USUAL, Failure, Window, check  # noqa: E402

# A key as X names it: as the page's events name it, and its number there.
KEYS = {"Return": ("Enter", 13), "Tab": ("Tab", 9), "BackSpace": ("Backspace", 8), "End": ("End", 35), "Escape": ("Escape", 27), "space": (" ", 32),
        "Down": ("ArrowDown", 40), "Up": ("ArrowUp", 38), "Control_L": ("Control", 17), "Shift_L": ("Shift", 16)}
KEYS |= {f"F{n}": (f"F{n}", 111 + n) for n in range(1, 13)}
MODIFIERS = {"Control_L": 2, "Shift_L": 8}
HEADER = 40  # of the page, above its canvas; at least


class PageWindow:
    """Counts clicks, keys and characters as tests/gui/window.py does."""

    def __init__(self, browser, address, folder, state=USUAL):
        self.clicks = self.keys = self.characters = 0
        self.browser, self.folder, self.held, self.place = browser, folder, [], (0, 0)
        self.downloads = os.path.join(folder, "downloads")
        os.makedirs(self.downloads, exist_ok=True)
        browser.call("Browser.setDownloadBehavior", behavior="allow", downloadPath=self.downloads)
        browser.open(address + "page.css")  # a file of the same place, which opens nothing
        browser.value("new Promise((done) => { const gone = indexedDB.deleteDatabase('/own'); gone.onsuccess = gone.onerror = gone.onblocked = () => done(1); })")
        self.open(address + "?test&first")
        if state:
            browser.value("Module.FS.writeFile('/own/window.json', %s); keep().then(() => 1)" % json.dumps(json.dumps(state)))
            self.open(address + "?test&second")

    def open(self, address):
        self.browser.open(address)
        self.browser.until(f"location.href === {address!r} && window.pourbookFirstFrame", 120)

    def dump(self):
        return self.browser.screen()

    def settled(self):
        calm = 0
        for _ in range(1200):
            screen = self.dump()
            calm = 0 if screen["working"] else calm + 1
            if calm == 3:
                return screen
            if calm == 0:
                time.sleep(0.02)
        raise Failure("the page never finished working")

    def text(self, name):
        items = self.settled()["items"]
        check(name in items, f"'{name}' is not on screen")
        return items[name]["text"]

    screen_when = Window.screen_when

    def shows(self, name):
        return name in self.settled()["items"]

    def mouse(self, kind, **more):
        x, y = self.place
        self.browser.call("Input.dispatchMouseEvent", type=kind, x=x, y=y, **more)
        self.dump()

    def move_to(self, name, items):
        check(name in items, f"'{name}' is not on screen")
        i = items[name]
        check(i["width"] > 0, f"'{name}' has no place on screen")
        left, top = self.browser.value("(() => { const b = canvas.getBoundingClientRect(); return [b.left, b.top]; })()")
        self.place = left + int(i["x"] + i["width"] / 2), top + int(i["y"] + i["height"] / 2)
        self.mouse("mouseMoved")

    def point_at(self, name):
        self.move_to(name, self.settled()["items"])
        self.dump()

    def press(self, name):
        items = self.dump()["items"]
        if name in items:
            self.move_to(name, items)
            self.button()

    def button(self):
        for kind in ("mousePressed", "mouseReleased"):
            self.mouse(kind, button="left", clickCount=1)
            self.dump()

    def click(self, name):
        self.point_at(name)
        self.clicks += 1
        self.button()

    def turn_wheel(self):
        """A notch down, where the pointer is."""
        self.clicks += 1
        self.mouse("mouseWheel", deltaX=0, deltaY=100)
        self.dump()

    def wheel_to(self, wanted, over):
        self.point_at(over)
        for _ in range(40):
            if wanted in self.dump()["items"]:
                return
            self.turn_wheel()
        raise Failure(f"'{wanted}' did not come into sight")

    def key(self, *names):
        self.keys += 1
        for kind, order in (("rawKeyDown", names), ("keyUp", names[::-1])):
            for name in order:
                if name in MODIFIERS:
                    self.held = [*self.held, name] if kind == "rawKeyDown" else [h for h in self.held if h != name]
                key, number = KEYS.get(name, (name, ord(name[0].upper())))
                self.browser.call("Input.dispatchKeyEvent", type=kind, key=key, windowsVirtualKeyCode=number, modifiers=sum(MODIFIERS[h] for h in self.held))
                self.dump()

    def write(self, words):
        self.characters += len(words)
        for letter in words:
            self.browser.call("Input.dispatchKeyEvent", type="char", text=letter)
            self.dump()

    def saved(self, file):
        """Where on this machine lies what the page gave to the browser."""
        here = os.path.join(self.downloads, os.path.basename(file))
        for _ in range(200):
            if os.path.exists(here) and os.path.getsize(here) > 0:
                return here
            time.sleep(0.05)
        raise Failure(f"'{file}' was not downloaded; there: {os.listdir(self.downloads)}")

    def own_file(self):
        """Its bytes, empty where nothing has been entered."""
        return bytes(self.browser.value("Module.FS.analyzePath(ownFile).exists ? Array.from(Module.FS.readFile(ownFile)) : []"))

    def picture(self, folder, name):
        self.settled()
        self.browser.picture(os.path.join(folder, name + ".png"))

    def close(self):
        pass


def page_browser(width=1440, height=900):
    """A browser whose canvas has this size."""
    return Browser(width, height + HEADER)
