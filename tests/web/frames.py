#!/usr/bin/env python3
"""Frames and memory of the page beside the real window's, in one run on one machine: the race of Drop, and Rank while it works out 20,000 samples.
usage: frames.py FOLDER-OF-THE-PAGE        (POURBOOK names the native program; needs Xvfb)"""
import os
import re
import statistics
import sys
import tempfile
import time

from page_window import PageWindow, page_browser
from serve import serve

from window import Display, Window, check

SECONDS = 10


def resident_MB(process):
    with open(f"/proc/{process}/status", encoding="utf-8") as file:
        return int(re.search(r"VmRSS:\s+(\d+)", file.read())[1]) // 1024


def children(process):
    found = os.popen(f"pgrep -P {process}").read().split()
    return found + [c for f in found for c in children(f)]


def renderer_MB(browser):
    """The tab's own process: the largest of the renderers."""
    every = [c for c in children(browser.process.pid) if "--type=renderer" in open(f"/proc/{c}/cmdline", encoding="utf-8").read()]
    return max(resident_MB(c) for c in every)


def race(w):
    """Frames a second while the magnets fall."""
    w.key("F5")
    w.settled()
    w.click("drop.face.0")
    first, began = w.dump()["frame"], time.monotonic()
    while time.monotonic() - began < SECONDS:
        time.sleep(0.5)
    last, taken = w.dump()["frame"], time.monotonic() - began
    return (last - first) / taken


def ranking(w):
    """Seconds of a ranking of 20,000 samples, and between two frames meanwhile: median and longest."""
    w.key("F2")
    w.settled()
    w.click("samples.2")
    began, frames = time.monotonic(), []
    while True:
        at, screen = time.monotonic(), w.dump()
        frames.append(time.monotonic() - at)
        if not screen["working"] and len(frames) > 5:
            break
    check(screen["items"]["rank.row.1"]["text"], "nothing is ranked")
    return time.monotonic() - began, statistics.median(frames), max(frames)


def row(name, w, memory):
    fell, ranked = race(w), ranking(w)
    print(f"| {name} | {fell:.1f} | {ranked[0]:.1f} | {ranked[1] * 1e3:.0f} | {ranked[2] * 1e3:.0f} | {memory()} |", flush=True)


def main():
    print("| | race, frames a second | 20,000 samples, s | a look meanwhile, median ms | longest ms | resident MB |\n|---|---|---|---|---|---|")
    with tempfile.TemporaryDirectory() as folder:
        with Display() as display:
            window = Window(os.environ["POURBOOK"], display, folder)
            row("window", window, lambda: resident_MB(window.process.pid))
            window.close()
        server, address = serve(sys.argv[1])
        browser = page_browser()
        row("page", PageWindow(browser, address, folder), lambda: renderer_MB(browser))
        browser.close()
        server.shutdown()


main()
