"""What the program says of itself by --help, as tables: for the manual page and the completions."""
import re
import subprocess
from dataclasses import dataclass, field


@dataclass
class Option:
    name: str  # "--holding"
    takes_value: bool
    choices: list
    sentence: str


@dataclass
class Place:
    """A command or a command's command: "" for the program itself, "chart rank"."""
    words: str
    sentence: str
    options: list = field(default_factory=list)
    commands: list = field(default_factory=list)  # Place
    takes_metal: bool = False


def said(program, *words):
    return subprocess.run([program, *words], capture_output=True, text=True, check=True).stdout


def choices_of(kind):
    found = re.search(r":\{([^}]*)\}", kind)
    return found[1].split(",") if found else []


def entries(text):
    """Heading, name, what stands between, sentence of each line of a list; a sentence may go on in the next line."""
    heading, out = "", []
    for line in text.splitlines():
        if re.match(r"\S.*:$", line):
            heading = line[:-1]
        elif start := re.match(r"  (\S+)(?: (\S.*?))?(?: {2,}(\S.*))?$", line):
            out.append([heading, start[1], start[2] or "", start[3] or ""])
        elif out and line.startswith(" " * 20):
            out[-1][3] = (out[-1][3] + " " + line.strip()).strip()
    return [entry for entry in out if entry[0] != "Example"]


def place(program, words="", sentence=""):
    here = Place(words, sentence)
    for heading, name, kind, told in entries(said(program, *words.split(), "--help")):
        if name.startswith("-"):
            here.options.append(Option(name.split(",")[-1], bool(kind and not kind.startswith("Excludes")), choices_of(kind), told))
        elif heading == "Positionals":
            here.takes_metal = here.takes_metal or "metal" in name.lower()
        else:
            here.commands.append(place(program, (words + " " + name).strip(), told))
    return here


def all_places(here):
    return [here] + [deeper for command in here.commands for deeper in all_places(command)]
