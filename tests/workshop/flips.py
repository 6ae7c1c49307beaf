"""Single bits flipped in a workshop's file, table by table: noticed in one line with a faithful copy, or without effect on any
figure; the damaged file is never written.   flips.py [FLIPS] [SEED]    (a short run is part of the tests; the campaign is 400)"""
import glob
import hashlib
import os
import random
import shutil
import sqlite3
import sys
import tempfile

from shop import KINDS, check, ended, entries, fill, lists, on

FLIPS = int(sys.argv[1]) if len(sys.argv) > 1 else 20
SHORT = FLIPS < 100  # looks at the list of the flipped table and two more, not at all of them
random.seed(int(sys.argv[2]) if len(sys.argv) > 2 else 1)


def long_list(path, folder):
    """A table of many pages too."""
    listed = os.path.join(folder, "list.csv")
    with open(listed, "w", encoding="utf-8") as f:
        f.write("lot,metal,mass [g],note\n" + "".join(f"lot-{i},copper,{i + 1},{'remark ' * (i % 7)}\n" for i in range(400)))
    check(on(path).run("import", "stock", listed)[0] == 0, "import of a sound list")


def digest(path):
    with open(path, "rb") as f:
        return hashlib.sha256(f.read()).hexdigest()


def pages_by_table(path):
    db = sqlite3.connect(path)
    found = {}
    for name, page in db.execute("SELECT name, pageno FROM dbstat ORDER BY name, pageno"):
        found.setdefault(name, []).append(page)
    size = db.execute("PRAGMA page_size").fetchone()[0]
    db.close()
    return found, size


def flip(path, tables, page_size):
    """One bit of a byte in use, in any table with the same chance. Where it was, in words."""
    table = random.choice(sorted(tables))
    start, bit = (random.choice(tables[table]) - 1) * page_size, random.randrange(8)
    with open(path, "r+b") as f:
        f.seek(start)
        page = f.read(page_size)
        place = start + random.choice([i for i, byte in enumerate(page) if byte])
        f.seek(place)
        f.write(bytes([page[place - start] ^ 1 << bit]))
    return f"bit {bit} of byte {place} ({table})"


def looked_at(own, truth, where):
    """Whether any list notices; a list that answers is the true one."""
    noticed = False
    for kind in random.sample(KINDS, 3) if SHORT else KINDS:
        code, out, err = own.run(kind, "--json")
        if code == 0:
            check(entries(kind, out) == truth[kind], f"{where}: {kind} is read wrongly")
        else:
            noticed = True
            check(code == 4 and err.count("\n") == 1, f"{where}: {kind}: exit {code}: {err!r}")
    return noticed


with tempfile.TemporaryDirectory(prefix=f"pourbook-flips-{os.getpid()}-") as folder:
    file, sound = os.path.join(folder, "w.sqlite"), os.path.join(folder, "sound")
    fill(file)
    long_list(file, folder)
    truth = lists(file)
    tables, page_size = pages_by_table(file)
    shutil.copy(file, sound)
    count = 0
    for _ in range(FLIPS):
        shutil.copy(sound, file)
        where = flip(file, tables, page_size)
        damaged = digest(file)
        noticed = looked_at(on(file), truth, where)
        count += noticed
        check(digest(file) == damaged, f"{where}: reading wrote the file")
        copies = glob.glob(file + ".damaged-*")
        check(len(copies) <= 1 and all(digest(c) == damaged for c in copies), f"{where}: no faithful copy among {copies}")
        check(on(file).run("value", "copper", "density")[0] == 0, f"{where}: a question of the reference is stopped")
        code, _, err = on(file).run("undo")
        check(code == 0 or (code in (4, 5) and err.count("\n") == 1 and digest(file) == damaged), f"{where}: undo: {code}: {err!r}")
        if code == 0 and not noticed:
            again = {kind: on(file).run(kind, "--json")[0] for kind in ("stock", "trial")}
            check(set(again.values()) == {0}, f"{where}: undo locks the file: {again}")
        for path in glob.glob(file + "?*"):
            os.remove(path)
    print(f"{FLIPS} flips over {len(tables)} tables and indexes: {count} noticed, {FLIPS - count} without effect on any figure")

ended("flips")
