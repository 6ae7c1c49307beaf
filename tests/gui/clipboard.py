#!/usr/bin/env python3
"""What is copied in the real window is pasted by another program (xclip): a picture as PNG, a table as text.

Usage: clipboard.py [PROGRAM]   the program is $POURBOOK or build/pourbook. Needs Xvfb, xdotool and xclip.
"""
import os
import subprocess
import sys
import tempfile

from window import Display, Failure, Window, check

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")


def pasted(w, *words):
    """Bytes another program gets, None where it is refused them."""
    done = subprocess.run(["xclip", "-selection", "clipboard", "-o", *words], env=w.environment, capture_output=True, timeout=30)
    return done.stdout if done.returncode == 0 else None


def picture_and_text(w, folder):
    w.key("F3")
    w.click("curve.chart.copy")
    check(w.text("curve.chart.told") == "the picture is on the clipboard", f"told: {w.text('curve.chart.told')!r}")
    offered = pasted(w, "-t", "TARGETS").split()
    check(offered == [b"TARGETS", b"image/png"], f"offered: {offered}")
    check(pasted(w, "-t", "UTF8_STRING") is None, "a picture was pasted as text")
    first = pasted(w, "-t", "image/png")

    w.click("curve.chart.save")
    file = w.text("curve.chart.file")
    check(os.path.dirname(file) == folder and file.endswith(".png"), f"offered to save as {file}")
    w.click("curve.chart.go")
    with open(file, "rb") as saved:
        check(saved.read() == first, "the picture pasted is not the one saved")

    w.click("scale.0")
    w.click("curve.chart.copy")
    second = pasted(w, "-t", "image/png")
    check(second.startswith(b"\x89PNG\r\n") and second != first, "the second picture did not take the first one's place")

    w.key("F4")
    w.click("comparison.table.copy")
    check(b"\tcopper (high purity)\t" in pasted(w), f"the table is pasted as {pasted(w)[:60]}")
    check(pasted(w, "-t", "image/png") is None, "the picture is still there after a text was copied")


def main():
    program = sys.argv[1] if len(sys.argv) > 1 else os.environ.get("POURBOOK", os.path.join(ROOT, "build", "pourbook"))
    with tempfile.TemporaryDirectory() as folder, Display() as display:
        os.environ.update(XDG_DATA_HOME=folder, XDG_CONFIG_HOME=folder, HOME=folder)
        w = Window(program, display, folder, "--state", os.path.join(folder, "view.json"))
        try:
            picture_and_text(w, folder)
        finally:
            w.close()
    print("clipboard: passed")


if __name__ == "__main__":
    try:
        main()
    except Failure as failure:
        print(f"clipboard: failed: {failure}")
        sys.exit(1)
