"""The same things done by pointer or by keyboard alone, with every refusal counted: a field that does not take what was written."""
from window import check

MOST_LOOKS = 8  # at where Tab has led: what opens or folds on the way changes the number of stops


class Hand:
    """What both do alike: words are typed, shortcuts are keys."""

    def __init__(self, window):
        self.window = window
        self.refused = 0

    def look(self):
        return self.window.settled()["items"]

    def text(self, name):
        items = self.look()
        check(name in items, f"'{name}' is not on screen")
        return items[name]["text"]

    def shows(self, name):
        return name in self.look()

    def ask(self, words):
        """The field at the top; Return opens what was found first."""
        self.go_to_ask()
        self.window.write(words)
        self.window.settled()
        self.window.key("Return")
        self.window.settled()

    def set(self, field, words):
        """These words in place of what stands in the field."""
        self.go_to_field(field)
        for _ in range(3):  # a busy machine may swallow a letter
            self.window.key("Control_L", "a")
            self.window.write(words)
            if self.text(field) == words:
                break
        self.window.key("Return")
        self.count_refusal(field)

    def count_refusal(self, field):
        items = self.look()
        if field + ".fault" in items:
            self.refused += 1
            print(f"refused: {field} with {items[field]['text']!r}: {items[field + '.fault']['text']}", flush=True)

    def pick(self, field, word):
        """A metal typed into its field's list."""
        self.press(field)
        self.window.write(word)
        self.window.key("Return")
        self.window.settled()


class Pointer(Hand):
    name = "pointer"

    def go_to_ask(self):
        self.window.click("ask")

    def go_to_field(self, field):
        self.into_sight(field)
        self.window.click(field)

    def press(self, name):
        self.into_sight(name)
        self.window.click(name)
        self.window.settled()

    def open_view(self, name, key):
        self.window.click("view." + name)
        self.window.settled()

    def choose(self, field, item):
        self.press(field)
        self.press(f"{field}.{item}")

    def into_sight(self, name):
        screen = self.window.settled()
        items, stops = screen["items"], screen["stops"]
        if name in items:
            return
        before = [s for s in stops[:stops.index(name)] if s in items] if name in stops else []
        check(before, f"'{name}' is not on screen, and nothing before it")
        self.window.wheel_to(name, over=before[-1])

    def undo(self):
        self.window.click("told.undo")

    def evidence(self, figure):
        self.window.click(figure)


class Keyboard(Hand):
    name = "keyboard"

    def go_to_ask(self):
        self.window.key("Control_L", "k")

    def focus(self, name):
        """By Tab, or backwards where that is nearer."""
        for _ in range(MOST_LOOKS):
            screen = self.window.dump()
            stops, now = screen["stops"], screen["focused"]
            if now == name:
                return
            check(name in stops, f"Tab never reaches '{name}'")
            forward = (stops.index(name) - (stops.index(now) if now in stops else -1)) % len(stops)
            if forward <= len(stops) / 2 or now not in stops:
                self.window.keys_in_a_row("Tab", forward)
            else:
                self.window.keys_in_a_row("Tab", len(stops) - forward, held="Shift_L")
        check(False, f"Tab does not come to rest on '{name}'")

    def go_to_field(self, field):
        self.focus(field)

    def press(self, name):
        self.focus(name)
        self.window.key("Return")
        self.window.settled()

    def open_view(self, name, key):
        self.window.key(key)
        self.window.settled()

    def choose(self, field, item):
        self.press(field)
        self.press(f"{field}.{item}")

    def undo(self):
        self.window.key("Control_L", "z")

    def evidence(self, figure):
        self.window.key("Control_L", "i")
