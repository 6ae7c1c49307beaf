"""Workshop files made to do harm: rows, tables, pragmas and bytes changed by a seed. No program ends by a signal or hangs; what is
refused is refused in one line and the file left as it was; what is read is what was entered; a question of the reference goes on.
hostile.py [FILES] [SEED]    (a short run is part of the tests; the campaign is 200)"""
import os
import random
import shutil
import sqlite3
import sys
import tempfile

from shop import KINDS, check, ended, entries, fill, lists, on

FILES = int(sys.argv[1]) if len(sys.argv) > 1 else 12
random.seed(int(sys.argv[2]) if len(sys.argv) > 2 else 1)

TEXTS = ["", "x" * 300_000, "\x1b[2J", "\u202eevil", "'; DROP TABLE stock; --", "=cmd|'/c calc'!A1", "1e999", "nan", "-1 kg", "9" * 400, "stl:/dev/zero", "\0a"]
VALUES = [None, -1, 0, 2**63 - 1, -(2**63), 1e308, float("inf"), b"\xff\xfe\x00", *TEXTS]
PRAGMAS = ["user_version = 0", "user_version = -1", "user_version = 4000000000", "application_id = 0", "application_id = 1", "auto_vacuum = 2", "encoding = 'UTF-16'", "journal_mode = WAL", "page_size = 65536"]
SCHEMES = [
    "CREATE TRIGGER t AFTER INSERT ON stock BEGIN DELETE FROM price; END", "CREATE VIEW v AS SELECT * FROM stock", "CREATE TABLE extra (a)",
    "CREATE VIRTUAL TABLE f USING fts5(a)", "ALTER TABLE stock ADD COLUMN big TEXT AS (hex(zeroblob(500000000)))", "CREATE INDEX i ON stock (length(note))",
    "ALTER TABLE price RENAME TO prices", "CREATE TRIGGER t BEFORE UPDATE ON stock BEGIN SELECT RAISE(ABORT, 'no'); END",
]


def tables_of(db):
    return [name for (name,) in db.execute("SELECT name FROM sqlite_master WHERE type = 'table' AND sql NOT LIKE '%VIRTUAL%' ORDER BY name")]


def change_cell(db):
    table = random.choice(tables_of(db))
    column = random.choice([row[1] for row in db.execute(f'PRAGMA table_info("{table}")')])
    value = random.choice(VALUES)
    db.execute(f'UPDATE "{table}" SET "{column}" = ? WHERE rowid = (SELECT rowid FROM "{table}" ORDER BY random() LIMIT 1)', (value,))
    return f"{table}.{column} = {str(value)[:20]!r}"


def copy_rows(db):
    table = random.choice(tables_of(db))
    db.execute(f'INSERT OR IGNORE INTO "{table}" SELECT * FROM "{table}"')
    columns = [row[1] for row in db.execute(f'PRAGMA table_info("{table}")')]
    rest = ", ".join(f'"{c}"' for c in columns[1:])
    db.execute(f'INSERT INTO "{table}" SELECT "{columns[0]}" + 7{", " + rest if rest else ""} FROM "{table}"')
    return f"rows of {table} twice"


def lose_rows(db):
    table = random.choice(tables_of(db))
    db.execute(f'DELETE FROM "{table}"')
    return f"no rows in {table}"


def drop_table(db):
    table = random.choice([t for t in tables_of(db) if not t.startswith("sqlite")])
    db.execute(f'DROP TABLE "{table}"')
    return f"no table {table}"


def scheme(db):
    text = random.choice(SCHEMES)
    db.execute(text)
    return text[:50]


def pragma(db):
    text = random.choice(PRAGMAS)
    db.execute("PRAGMA " + text)
    return text


def by_statement(path):
    """A change that SQLite itself makes. Refused by it (a constraint): another is drawn."""
    while True:
        db = sqlite3.connect(path, isolation_level=None)
        db.execute("PRAGMA ignore_check_constraints = ON")
        try:
            return random.choice([change_cell, change_cell, change_cell, copy_rows, lose_rows, drop_table, scheme, pragma])(db)
        except sqlite3.Error:
            pass
        finally:
            db.close()


def by_bytes(path):
    with open(path, "rb") as f:
        data = bytearray(f.read())
    page = 4096 * random.randrange(len(data) // 4096)
    what = random.choice(["cut", "grown", "zeros", "noise", "swapped", "head"])
    if what == "cut":
        data = data[: random.randrange(len(data))]
    elif what == "grown":
        data += bytes(random.randbytes(5000))
    elif what == "head":
        data[random.randrange(100)] = random.randrange(256)
    elif what == "swapped":
        other = 4096 * random.randrange(len(data) // 4096)
        data[page:page + 4096], data[other:other + 4096] = data[other:other + 4096], data[page:page + 4096]
    else:
        data[page:page + 4096] = bytes(4096) if what == "zeros" else random.randbytes(4096)
    with open(path, "wb") as f:
        f.write(data)
    return f"{what} at {page}"


def content(path):
    with open(path, "rb") as f:
        return f.read()


def tried(path, truth, where):
    """Whether anything was refused."""
    own, refused = on(path), False
    check(own.run("value", "copper", "density")[0] == 0, f"{where}: a question of the reference is stopped")
    for kind in random.sample(KINDS, 4):
        code, out, err = own.run(kind, "--json")
        if code == 0:
            read = entries(kind, out)
            check(all(entry in truth[kind] for entry in read), f"{where}: {kind}: an entry nobody made: {str(read)[:200]}")
        else:
            refused = True
            check(code == 4 and err.count("\n") == 1 and len(err) < 700, f"{where}: {kind}: exit {code}: {err[:300]!r}")
    before = content(path)
    code, _, err = own.run("stock", "add", "zinc", "1 kg")
    check(code == 0 or (code in (4, 5) and err.count("\n") == 1), f"{where}: stock add: exit {code}: {err[:300]!r}")
    check(code == 0 or content(path) == before, f"{where}: a refused change wrote the file")
    code, _, err = own.run("backup", "--salvage", path + ".salvaged")
    check(code in (0, 4) and (code == 0 or err.count("\n") == 1), f"{where}: salvage: exit {code}: {err[:300]!r}")
    if code == 0:
        check(on(path + ".salvaged").run("stock", "add", "lead", "1 kg")[0] == 0, f"{where}: what was salvaged can't be written")
    return refused


with tempfile.TemporaryDirectory(prefix=f"pourbook-hostile-{os.getpid()}-") as folder:
    sound = os.path.join(folder, "sound")
    fill(sound)
    truth = lists(sound)
    count = 0
    for number in range(FILES):
        path = os.path.join(folder, f"{number}", "w.sqlite")
        os.mkdir(os.path.dirname(path))
        shutil.copy(sound, path)
        where = random.choice([by_statement, by_bytes])(path)
        count += tried(path, truth, f"file {number} ({where})")
        shutil.rmtree(os.path.dirname(path))
    print(f"{FILES} hostile files: {count} refused in part or whole")

ended("hostile files")
