#!/usr/bin/env python3
"""The person's own file on the page: entries, a reload, out by "Save my file" into the native program and back by "Open my file", and a tab that is
killed while a file is taken in: all of it is there afterwards or nothing.
usage: own_file.py FOLDER-OF-THE-PAGE [KILLS]        (POURBOOK names the native program)"""
import json
import os
import random
import subprocess
import sys
import tempfile
import time

from page_window import PageWindow, page_browser
from serve import serve

from window import check

PROGRAM = os.environ["POURBOOK"]


def native(file, *words):
    done = subprocess.run([PROGRAM, "--workshop", file, *words], capture_output=True, text=True, check=True)
    return done.stdout


def stock_in(file):
    return [(entry["metal"], entry["mass"]) for entry in json.loads(native(file, "stock", "list", "--json"))]


def enter_stock(w, metal, mass, price):
    w.key("F8")
    w.click("bench.shelf")
    w.click("shelf.stock")
    w.click("field.metal")
    for words, after in ((metal, "Tab"), (mass, "Tab"), (price, "Return")):
        w.write(words)
        w.key(after)
    w.click("entry.keep")
    check(w.text("shelf.stock").startswith("stock  1"), f"{metal} is not on the shelf: {w.text('shelf.stock')}")


def shelf_after_reload(w, address):
    w.open(address + "?test&again=" + str(random.random()))
    w.key("F8")
    w.click("bench.shelf")
    return w.text("shelf.stock")


def given_out(w):
    w.browser.value("byId('export').click()")
    return w.saved("workshop.sqlite")


def taken_in(w, file):
    """By the page's own field for files."""
    field = w.browser.call("Runtime.evaluate", expression="byId('import')")["result"]["objectId"]
    w.browser.value("(byId('said').textContent = '', 1)")
    w.browser.call("DOM.setFileInputFiles", objectId=field, files=[file])
    return w.browser.until("byId('said').textContent")


def there_and_back(w, address, folder):
    enter_stock(w, "silver", "200 g", "900 USD/kg")
    time.sleep(3)  # the page keeps what is entered every two seconds
    check(shelf_after_reload(w, address).startswith("stock  1"), "lost by a reload")
    out = given_out(w)
    check([m for m, _ in stock_in(out)] == ["silver"], f"the native program reads {stock_in(out)}")
    here = os.path.join(folder, "own.sqlite")
    with open(out, "rb") as file, open(here, "wb") as copy:
        copy.write(file.read())
    native(here, "stock", "add", "brass-cartridge", "3kg")
    said = taken_in(w, here)
    check("taken" in said, f"the page says: {said}")
    check(shelf_after_reload(w, address).startswith("stock  2"), "what the native program added is not shown")
    os.remove(out)
    again = given_out(w)
    check(stock_in(again) == stock_in(here), f"out again: {stock_in(again)}, in: {stock_in(here)}")
    return here


def many_entries(folder, small):
    large = os.path.join(folder, "large.sqlite")
    with open(small, "rb") as file, open(large, "wb") as copy:
        copy.write(file.read())
    rows = os.path.join(folder, "rows.csv")
    with open(rows, "w", encoding="utf-8") as out:
        out.write("metal,mass\n" + "".join(f"brass-cartridge,{n % 90 + 1} kg\n" for n in range(2000)))
    native(large, "import", "stock", rows)
    return large


def killed(w, address, small, large, kills):
    """How often the file before and how often the new one was there after the tab was killed during the taking in."""
    counts = {len(stock_in(small)): 0, len(stock_in(large)): 0}
    with open(large, "rb") as file:
        data = list(file.read())
    dice = random.Random(26)
    held = os.path.join(w.folder, "held.sqlite")
    for _ in range(kills):
        w.open(address + "?test&calm=" + str(random.random()))
        taken_in(w, small)
        w.browser.value("keep().then(() => 1)")
        w.browser.value("(window.incoming = new File([new Uint8Array(%s)], 'large.sqlite'), 1)" % data)
        w.browser.value("(setTimeout(() => importOwn(window.incoming), 0), 1)")
        time.sleep(dice.uniform(0, 0.25))
        w.browser.crash()
        w.open(address + "?test&after=" + str(random.random()))
        with open(held, "wb") as out:
            out.write(w.own_file())
        entries = len(stock_in(held))
        check(entries in counts, f"after a killed tab the file holds {entries} entries instead of {list(counts)}")
        counts[entries] += 1
    return counts


def main():
    kills = int(sys.argv[2]) if len(sys.argv) > 2 else 20
    server, address = serve(sys.argv[1])
    browser = page_browser()
    with tempfile.TemporaryDirectory() as folder:
        w = PageWindow(browser, address, folder)
        small = there_and_back(w, address, folder)
        print("own file: entries, reload, out to the native program and back: passed", flush=True)
        counts = killed(w, address, small, many_entries(folder, small), kills)
        print(f"tabs killed while a file was taken in: {kills}; entries afterwards: {counts}")
    browser.close()
    server.shutdown()


main()
