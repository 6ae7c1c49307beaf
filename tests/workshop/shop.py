"""What the tests of damage share: a workshop's file with entries of every kind, and the lists that are read back from it."""
import json
import os
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "cli"))
from support.program import PROGRAM, Program, check, ended  # noqa: E402,F401

FALL = ["--magnet", "sphere:12mm", "--grade", "N42", "--tube", "14mm:20mm:500mm"]
ENTRIES = [
    ["stock", "add", "copper", "2 kg", "--lot", "a", "--price", "12 USD/kg", "--bought", "2026-11-01", "--note", "from old bars"],
    ["stock", "add", "tin", "500 g", "--lot", "b"],
    ["price", "add", "copper", "10 EUR/kg", "--date", "2026-11-02", "--seller", "scrap yard"],
    ["rate", "add", "EUR", "1.10", "--date", "2026-11-02", "--source", "central bank"],
    ["own-metal", "add", "pipe-copper", "--like", "copper", "--note", "from old pipes"],
    ["own-value", "add", "pipe-copper", "conductivity", "50 MS/m", "--uncertainty", "1 %", "--from", "four-wire, own trial"],
    ["goal", "add", "cheap", "density * price", "--best", "low"],
    ["trial", "add", "drop", "--metal", "copper", *FALL, "--times", "2.0s,2.1s"],
    ["profile", "set", "--furnace-maximum", "1250degC", "--power", "2kW"],
    ["crucible", "add", "a4", "graphite", "--volume", "400 cm3"],
    ["mould", "add", "box", "silica sand", "--process", "sand"],
    ["pin", "add", "copper"],
    ["log", "add", "Why is copper so dear?", "--command", "value copper price", "--name", "dear"],
]
KINDS = ("stock", "price", "rate", "own-metal", "own-value", "goal", "trial", "profile", "crucible", "mould", "pin", "log")


def on(path):
    """The program over this workshop's file."""
    return Program("--workshop", path)


def fill(path):
    own = on(path)
    for words in ENTRIES:
        code, _, err = own.run(*words)
        check(code == 0, f"filling: {words}: {err}")


def entries(kind, text):
    """What was entered, without what the program works out from it."""
    return [{name: x for name, x in entry.items() if name not in ("shows", "answer")} for entry in json.loads(text)]


def lists(path):
    own = on(path)
    return {kind: entries(kind, own.run(kind, "--json")[1]) for kind in KINDS}


def files_beside(path):
    """What lies in the folder of a workshop's file, with the sizes."""
    folder = os.path.dirname(path)
    return {name: os.path.getsize(os.path.join(folder, name)) for name in os.listdir(folder)}
