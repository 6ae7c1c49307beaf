"""What must not happen to the person's own file, nor through it: one damaged row stops nothing that doesn't need it, and salvage
finds the rest; SQL hidden in a file never runs; nobody's file is deleted or written through a link; nothing goes into a folder
that nobody named; own entries by the thousand don't slow what has no use for them."""
import os
import resource
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import time

PROGRAM = os.environ["POURBOOK"]
MANY = int(sys.argv[1]) if len(sys.argv) > 1 else 3000
failures = []


def check(truth, what):
    if not truth:
        failures.append(what)


def run(*words, file=None, cwd=None, **environment):
    env = {k: v for k, v in {**os.environ, **environment}.items() if v is not None}
    first = [] if file is None else ["--workshop", file]
    done = subprocess.run([PROGRAM, *first, *words], capture_output=True, text=True, timeout=300, env=env, cwd=cwd)
    return done.returncode, done.stdout, done.stderr


def filled(path):
    for words in (["stock", "add", "copper", "2 kg", "--lot", "a"], ["stock", "add", "tin", "1 kg", "--lot", "b"], ["pin", "add", "copper"],
                  ["rate", "add", "EUR", "1.08", "--date", "2026-11-01", "--source", "a bank"], ["price", "add", "copper", "9 EUR/kg"],
                  ["goal", "add", "mine", "density * price", "--best", "low"], ["own-metal", "add", "my-copper", "--like", "copper"]):
        code, _, err = run(*words, file=path)
        check(code == 0, f"filling: {words}: {err}")


def sql(path, text):
    db = sqlite3.connect(path)
    db.executescript(text)
    db.commit()
    db.close()


def one_bad_row(folder, sound):
    columns = {"stock": "mass", "pin": "metal", "rate": "usd", "price": "price", "goal": "formula", "metal": "family"}
    for kind, column in columns.items():
        path = os.path.join(folder, f"bad-{kind}.sqlite")
        shutil.copy(sound, path)
        sql(path, f"UPDATE {kind} SET {column} = {column} || '1' WHERE id = 1")
        for words in (["value", "copper", "resistivity"], ["rank", "--goal", "strongest-brake", "--samples", "0"], ["sources"], ["changes"]):
            code, out, err = run(*words, file=path)
            check(code == 0 and out and err.count("is damaged") <= 1, f"bad {kind}: {words}: exit {code}: {err}")
        code, out, err = run("rank", "--goal", "strongest-brake", "--samples", "0", file=path)
        check("is damaged" in err and kind in err, f"bad {kind}: not said: {err!r}")
        code, _, err = run("stock", "add", "zinc", "1 kg", file=path)
        check(code == 4 and err.count("\n") == 1, f"bad {kind}: written on: {code}: {err}")
        target = os.path.join(folder, f"sound-{kind}.sqlite")
        code, out, err = run("backup", "--salvage", target, file=path)
        check(code == 0 and "6 entries" in out and f"lost: {kind} 1" in out, f"bad {kind}: salvage: {code}: {out} {err}")
        code, _, err = run("backup", "--restore", path, file=sound)
        check(code == 4 and kind in err, f"bad {kind}: restored: {code}: {err}")
        check(run("backup", "--restore", target, file=path)[0] == 0 and run("stock", "add", "zinc", "1 kg", file=path)[0] == 0, f"bad {kind}: back at work")


def hidden_sql(folder, sound):
    for number, text in enumerate(("CREATE TRIGGER t AFTER INSERT ON change BEGIN DELETE FROM price; END", "CREATE VIEW v AS SELECT 1",
                                   "ALTER TABLE stock ADD COLUMN big TEXT AS (hex(zeroblob(500000000)))", "CREATE INDEX i ON stock (length(note))")):
        path = os.path.join(folder, f"hostile-{number}.sqlite")
        shutil.copy(sound, path)
        sql(path, text)
        before = open(path, "rb").read()
        code, _, err = run("stock", "add", "zinc", "1 kg", file=path)
        check(code == 4 and "not as this program makes" in err, f"{text}: {code}: {err}")
        check(open(path, "rb").read() == before, f"{text}: written")
        check(run("value", "copper", "density", file=path)[0] == 0, f"{text}: stops a question")
        code, out, _ = run("backup", "--salvage", path + ".sound", file=path)
        check(code == 0 and "7 entries" in out, f"{text}: salvage: {out}")


def places(folder, sound):
    code, _, err = run("stock", "add", "copper", "1 kg", cwd=folder, HOME=None, XDG_DATA_HOME=None)
    check(code == 4 and "--workshop" in err and not os.path.exists(os.path.join(folder, "workshop.sqlite")), f"no home: {code}: {err}")
    check(run("value", "copper", "density", cwd=folder, HOME=None, XDG_DATA_HOME=None)[0] == 0, "no home: a question")
    run("stock", "add", "copper", "1 kg", cwd=folder, HOME=folder, XDG_DATA_HOME="rel/ative")
    check(not os.path.exists(os.path.join(folder, "rel")) and os.path.exists(os.path.join(folder, ".local/share/pourbook/workshop.sqlite")),
          "a relative XDG_DATA_HOME is followed")
    run("stock", "add", "copper", "1 kg", file=":memory:", cwd=folder)
    check("copper" in run("stock", file=":memory:", cwd=folder)[1], "a file named :memory: keeps nothing")
    for number in range(2):
        code, out, err = run("backup", file=sound)
        check(code == 0, f"backup {number + 1} of a day: {err}")
    check(run("--version", SOURCE_DATE_EPOCH="abc")[0] == 2, "SOURCE_DATE_EPOCH=abc")
    precious = os.path.join(folder, "precious.txt")
    with open(precious, "w", encoding="utf-8") as f:
        f.write("PRECIOUS")
    run("--test-socket", precious, DISPLAY=None, WAYLAND_DISPLAY=None)
    check(open(precious, encoding="utf-8").read() == "PRECIOUS", "--test-socket deletes a file")
    check("test-socket" not in run("--help")[1], "--test-socket stands in --help")


def spreadsheets(folder):
    temporary = os.path.join(folder, "tmp")
    os.mkdir(temporary)
    target = os.path.join(folder, "t.xlsx")
    code, _, err = run("compare", "copper", "tin", "--show", "density", "--to", target, TMPDIR=temporary)
    check(code == 0 and os.listdir(temporary) == [], f"a spreadsheet leaves litter: {err} {os.listdir(temporary)}")
    code, _, err = run("compare", "copper", "tin", "--show", "density", "--to", target, TMPDIR=os.path.join(folder, "none"))
    check(code == 4 and err.count("\n") == 1, f"no temporary folder: {code}: {err!r}")
    link = os.path.join(folder, "link.csv")
    os.symlink("later.csv", link)
    code, _, err = run("compare", "copper", "tin", "--show", "density", "--to", link)
    check(code == 0 and os.path.islink(link) and os.path.exists(os.path.join(folder, "later.csv")), f"a dangling link: {code}: {err}")
    os.chmod(os.path.join(folder, "later.csv"), 0o444)
    check(run("compare", "copper", "tin", "--show", "density", "--to", link)[0] == 4, "a write-protected file is replaced")


def fifo(folder):
    pipe = os.path.join(folder, "pipe.stl")
    os.mkfifo(pipe)
    began = time.monotonic()
    code, _, err = run("pour", "bronze-silicon-cast", "--part", "stl:" + pipe)
    check(code != 0 and time.monotonic() - began < 5 and "no ordinary file" in err, f"a pipe as part: {code}: {err}")


def processor_time(*words, file=None):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    code, _, err = run(*words, file=file)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    check(code == 0, f"{words}: {err}")
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def many_own_metals(folder):
    path, listed = os.path.join(folder, "many.sqlite"), os.path.join(folder, "many.csv")
    with open(listed, "w", encoding="utf-8") as f:
        f.write("name,like\n" + "".join(f"own-{i},{'copper' if i % 2 else f'own-{i + 1}'}\n" for i in range(MANY)))
    code, _, err = run("import", "own-metal", listed, file=path)
    if code != 0:  # a list may name only what is known already
        with open(listed, "w", encoding="utf-8") as f:
            f.write("name,like\n" + "".join(f"own-{i},copper\n" for i in range(MANY)))
        code, _, err = run("import", "own-metal", listed, file=path)
    check(code == 0, f"import of {MANY} own metals: {err}")
    value, rank, undo = (processor_time(*w, file=path) for w in (["value", "copper", "density"], ["rank", "--goal", "strongest-brake", "--top", "1", "--samples", "0"], ["undo"]))
    print(f"{MANY} own metals, processor seconds: value {value:.2f}, rank {rank:.2f}, undo {undo:.2f}")


with tempfile.TemporaryDirectory(prefix="pourbook-attacks-") as folder:
    sound = os.path.join(folder, "sound.sqlite")
    filled(sound)
    one_bad_row(folder, sound)
    hidden_sql(folder, sound)
    places(folder, sound)
    spreadsheets(folder)
    fifo(folder)
    many_own_metals(folder)

for failure in failures[:20]:
    print("FAILED:", failure)
print(f"{'failed' if failures else 'passed'}: attacks, {len(failures)} failures")
sys.exit(1 if failures else 0)
