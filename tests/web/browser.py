"""Chromium driven over its debugging port (Chrome DevTools Protocol), with nothing but Python's own library."""
import base64
import json
import os
import shutil
import socket
import struct
import subprocess
import tempfile
import time
import urllib.request


class Line:
    """A WebSocket to one page (RFC 6455; text messages, client's side)."""

    def __init__(self, address):
        host, path = address.removeprefix("ws://").split("/", 1)
        name, port = host.split(":")
        self.socket = socket.create_connection((name, int(port)), timeout=120)
        key = base64.b64encode(os.urandom(16)).decode()
        self.socket.sendall((f"GET /{path} HTTP/1.1\r\nHost: {host}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n"
                             f"Sec-WebSocket-Key: {key}\r\nSec-WebSocket-Version: 13\r\n\r\n").encode())
        head = b""
        while not head.endswith(b"\r\n\r\n"):
            head += self.socket.recv(1)
        assert b" 101 " in head.split(b"\r\n")[0], head

    def exactly(self, count):
        out = b""
        while len(out) < count:
            more = self.socket.recv(count - len(out))
            if not more:
                raise EOFError("the browser has closed the line")
            out += more
        return out

    def send(self, text):
        body, mask = text.encode(), os.urandom(4)
        size = len(body)
        head = bytes([0x81]) + (bytes([0x80 | size]) if size < 126 else bytes([0x80 | 126]) + struct.pack(">H", size) if size < 65536
                                else bytes([0x80 | 127]) + struct.pack(">Q", size))
        self.socket.sendall(head + mask + bytes(b ^ mask[i % 4] for i, b in enumerate(body)))

    def receive(self):
        whole = b""
        while True:
            first, second = self.exactly(2)
            size = second & 0x7F
            if size == 126:
                size = struct.unpack(">H", self.exactly(2))[0]
            elif size == 127:
                size = struct.unpack(">Q", self.exactly(8))[0]
            body = self.exactly(size)
            if first & 0x0F in (0, 1):
                whole += body
                if first & 0x80:
                    return whole.decode()


class Browser:
    def __init__(self, width=1280, height=800, profile=None):
        program = shutil.which("chromium")
        if not program:
            raise SystemExit("tests/web: chromium is missing: apt-get install chromium")
        self.own_profile = None if profile else tempfile.mkdtemp(prefix="pourbook-browser-")
        self.profile = profile or self.own_profile
        port_file = os.path.join(self.profile, "DevToolsActivePort")
        if os.path.exists(port_file):
            os.remove(port_file)
        self.process = subprocess.Popen(
            [program, "--headless=new", "--no-sandbox", "--remote-debugging-port=0", f"--user-data-dir={self.profile}", "--no-first-run",
             f"--window-size={width},{height}", "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader",
             "--disable-background-networking", "--disable-component-update", "about:blank"],
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        until = time.time() + 120
        while not os.path.exists(port_file) or not open(port_file).read():
            assert time.time() < until and self.process.poll() is None, "chromium did not start"
            time.sleep(0.1)
        self.port = int(open(port_file).read().split()[0])
        pages = json.load(urllib.request.urlopen(f"http://127.0.0.1:{self.port}/json/list"))
        self.line = Line(next(p for p in pages if p["type"] == "page")["webSocketDebuggerUrl"])
        self.number, self.events = 0, []
        for domain in ("Page", "Network", "Runtime"):
            self.call(domain + ".enable")
        self.call("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=False)

    def call(self, method, **values):
        self.number += 1
        self.line.send(json.dumps({"id": self.number, "method": method, "params": values}))
        while True:
            message = json.loads(self.line.receive())
            if message.get("id") == self.number:
                assert "error" not in message, (method, message["error"])
                return message["result"]
            self.events.append(message)

    def value(self, words):
        """What the page answers to JavaScript; waits for a promise."""
        result = self.call("Runtime.evaluate", expression=words, awaitPromise=True, returnByValue=True)
        assert "exceptionDetails" not in result, (words, result["exceptionDetails"])
        return result["result"].get("value")

    def until(self, words, seconds=60):
        end = time.time() + seconds
        while time.time() < end:
            try:
                if found := self.value(words):
                    return found
            except AssertionError:
                pass  # between two documents
            time.sleep(0.05)
        raise AssertionError(f"not within {seconds} s: {words}; the page says: {self.value('document.body.innerText')[:300]}")

    def open(self, address):
        self.call("Page.navigate", url=address)

    def crash(self):
        """The tab's process ends at once."""
        self.number += 1
        self.line.send(json.dumps({"id": self.number, "method": "Page.crash", "params": {}}))
        while json.loads(self.line.receive()).get("method") != "Inspector.targetCrashed":
            pass

    def requests(self):
        """Addresses asked for since the last call, those answered inside the page left out."""
        seen = [e["params"]["request"]["url"] for e in self.events if e["method"] == "Network.requestWillBeSent"]
        self.events.clear()
        return [a for a in seen if not a.startswith(("blob:", "data:"))]

    def picture(self, file):
        with open(file, "wb") as out:
            out.write(base64.b64decode(self.call("Page.captureScreenshot", format="png")["data"]))

    def screen(self):
        """What is on screen, as the desktop's test socket says it (a page opened with ?test)."""
        self.value("(Module.pourbookAnswer = null, Module.pourbookAsk = 2, Module.ccall('pourbook_wake', null, [], []), 1)")
        return json.loads(self.until("Module.pourbookAnswer"))

    def click(self, item):
        """Its middle, in pixels of the canvas."""
        box = self.screen()["items"][item]
        place = self.value("(() => { const b = canvas.getBoundingClientRect(); return [b.left, b.top]; })()")
        x, y = place[0] + box["x"] + box["width"] / 2, place[1] + box["y"] + box["height"] / 2
        self.call("Input.dispatchMouseEvent", type="mouseMoved", x=x, y=y)
        for kind in ("mousePressed", "mouseReleased"):
            self.call("Input.dispatchMouseEvent", type=kind, x=x, y=y, button="left", clickCount=1)
            time.sleep(0.15)

    def settled(self, seconds=120):
        end = time.time() + seconds
        while time.time() < end:
            screen = self.screen()
            if not screen["working"]:
                return screen
            time.sleep(0.1)
        raise AssertionError("still working")

    def close(self):
        try:
            self.call("Browser.close")
        except (EOFError, OSError):
            pass
        self.process.wait(30)
        if self.own_profile:
            shutil.rmtree(self.own_profile, ignore_errors=True)
