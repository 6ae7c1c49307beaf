"""Every command that writes, on a disk with little or no room left, and with a full folder for temporary files: it succeeds whole, or
ends in one line with exit code 4 and leaves everything as it was, no litter.   full_disk.py [long]    (long, by hand: more fillings)
A file system of its own is mounted where that is allowed; elsewhere nothing is tested, and that is said."""
import os
import shutil
import subprocess
import sys
import tempfile

from shop import PROGRAM, FALL, check, ended, fill, lists, on

ROOM = [0, 4, 12, 24, 60, 130, 250] if "long" in sys.argv else [0, 130]  # kB left

OWN = [
    ["stock", "add", "zinc", "1 kg", "--note", "x" * 1500], ["stock", "edit", "a", "--mass", "3 kg"], ["stock", "remove", "b"],
    ["price", "add", "tin", "30 USD/kg", "--date", "2026-11-03"], ["trial", "add", "drop", "--metal", "copper", *FALL, "--times", "2.2s"],
    ["profile", "set", "--power", "3kW"], ["log", "again", "dear", "--renew"], ["import", "stock", "LIST"], ["undo"], ["redo"],
    ["backup", "DISK/copy"], ["backup", "--restore", "ROOM/copy"], ["backup", "--salvage", "DISK/salvaged"],
]
FILES = [
    *(["rank", "--goal", "strongest-brake", "--samples", "0", "--to", f"DISK/out.{ext}"] for ext in ("csv", "xlsx", "md", "html", "json")),
    *(["chart", "rank", "--goal", "strongest-brake", "--to", f"DISK/out.{ext}"] for ext in ("svg", "png", "pdf")),
    ["sheet", "copper", "--to", "DISK/out.md"], ["pour", "bronze-silicon-cast", "--part", "tube:22mm:28mm:300mm", "--to", "DISK/out.pdf"],
    ["export", "--to", "DISK/package"], ["film", *FALL, "--metal", "copper", "--size", "320x320", "--rate", "2", "--to", "DISK/film"],
]


def inventory(folder):
    return {os.path.relpath(os.path.join(at, name), folder): os.path.getsize(os.path.join(at, name)) for at, _, names in os.walk(folder) for name in names}


def fill_up(room_kb):
    """Ballast until so much is left."""
    space = os.statvfs(DISK)
    size = space.f_bavail * space.f_frsize - room_kb * 1024
    with open(os.path.join(DISK, "ballast"), "wb") as f:
        f.write(b"\0" * max(size, 0))


def clean():
    for name in os.listdir(DISK):
        path = os.path.join(DISK, name)
        shutil.rmtree(path) if os.path.isdir(path) else os.remove(path)


def run(words, **environment):
    words = [w.replace("DISK", DISK).replace("ROOM", FOLDER).replace("LIST", LIST) for w in words]
    done = subprocess.run([PROGRAM, "--workshop", FILE, *words], capture_output=True, text=True, timeout=120, env={**os.environ, **environment})
    return done.returncode, done.stderr


def told(code, err, where):
    check(code in (0, 4), f"{where}: exit {code}: {err!r}")
    if code == 4:
        check(err.count("\n") == 1 and len(err) < 500, f"{where}: not one clear line: {err!r}")


def own_file(words, room):
    where = f"{room} kB left: {words[:3]}"
    clean()
    shutil.copy(SOUND, FILE)
    if words == ["redo"]:
        check(run(["undo"])[0] == 0, "undo before redo")
    before = lists(FILE)
    for name in os.listdir(DISK):
        if name != os.path.basename(FILE):
            os.remove(os.path.join(DISK, name))
    fill_up(room)
    there = set(inventory(DISK))
    code, err = run(words)
    told(code, err, where)
    os.remove(os.path.join(DISK, "ballast"))
    if code == 4:
        litter = {name for name in set(inventory(DISK)) - there if ".daily-" not in name}  # the day's copy comes first and stays
        check(not litter, f"{where}: litter: {sorted(litter)}")
        check(lists(FILE) == before, f"{where}: something was changed")
    else:
        check(on(FILE).run("stock", "add", "lead", "1 kg")[0] == 0, f"{where}: the file can't be written after it")
    return code == 0


def answer_file(words, room):
    where = f"{room} kB left: {words[:2]} {words[-1]}"
    clean()
    os.environ["SOURCE_DATE_EPOCH"] = "1700000000"
    check(run(words)[0] == 0, f"{words}: does not work with room")
    whole = inventory(DISK)
    clean()
    fill_up(room)
    code, err = run(words)
    told(code, err, where)
    os.remove(os.path.join(DISK, "ballast"))
    check(inventory(DISK) == (whole if code == 0 else {}), f"{where}: exit {code}, left behind: {inventory(DISK)}")
    return code == 0


def full_temporary_folder(words):
    """The target has room, the folder for temporary files has none."""
    clean()
    fill_up(0)
    target = [w.replace("DISK", os.path.join(FOLDER, "elsewhere")) for w in words]
    os.makedirs(os.path.join(FOLDER, "elsewhere"))
    code, err = run(target, TMPDIR=DISK)
    told(code, err, f"full TMPDIR: {words[:2]} {words[-1]}")
    there = inventory(os.path.join(FOLDER, "elsewhere"))
    check(bool(there) == (code == 0), f"full TMPDIR: {words}: exit {code}: {there}")
    check(os.listdir(DISK) == ["ballast"], f"full TMPDIR: {words}: litter")
    shutil.rmtree(os.path.join(FOLDER, "elsewhere"))


with tempfile.TemporaryDirectory(prefix=f"pourbook-full-{os.getpid()}-") as FOLDER:
    DISK, SOUND, LIST = (os.path.join(FOLDER, name) for name in ("disk", "sound", "list.csv"))
    os.mkdir(DISK)
    if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=8m", "tmpfs", DISK], capture_output=True).returncode != 0:
        print("full disk: no file system can be mounted here: nothing was tested")
        ended("full disk")
    try:
        fill(SOUND)
        shutil.copy(SOUND, os.path.join(FOLDER, "copy"))
        with open(LIST, "w", encoding="utf-8") as f:
            f.write("lot,metal,mass [g],note\n" + "".join(f"l-{i},tin,{i + 1},{'x' * 200}\n" for i in range(500)))
        FILE = os.path.join(DISK, "w.sqlite")
        whole = sum(own_file(words, room) for room in ROOM for words in OWN)
        FILE = SOUND
        rooms = ROOM if "long" in sys.argv else ROOM[:1]
        whole += sum(answer_file(words, room) for room in rooms for words in FILES)
        for words in FILES:
            full_temporary_folder(words)
        print(f"{len(ROOM) * len(OWN) + len(rooms) * len(FILES)} commands on a disk nearly full: {whole} whole; {len(FILES)} with a full folder for temporary files")
    finally:
        subprocess.run(["umount", DISK])

ended("full disk")
