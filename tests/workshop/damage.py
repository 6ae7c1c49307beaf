"""The workshop's file when things go wrong: overwritten, disk full, read-only folder, newer version, a directory, a locked file.
One clear line, exit code 4, nothing overwritten."""
import glob
import hashlib
import json
import os
import shutil
import sqlite3
import subprocess
import sys
import tempfile

PROGRAM = os.environ["POURBOOK"]
failures = []


def run(*words, before=None):
    done = subprocess.run([PROGRAM, "--workshop", FILE, *words], capture_output=True, text=True, timeout=120, preexec_fn=before)
    return done.returncode, done.stdout, done.stderr


def check(truth, what):
    if not truth:
        failures.append(what)


def digest(path):
    with open(path, "rb") as f:
        return hashlib.sha256(f.read()).hexdigest()


def one_line(code, err, what, contains=""):
    check(code == 4, f"{what}: exit {code}: {err}")
    check(err.count("\n") == 1 and contains in err, f"{what}: not one clear line with '{contains}': {err!r}")


def filled():
    path = os.path.join(FOLDER, "list.csv")
    with open(path, "w", encoding="utf-8") as f:
        f.write("lot,metal,mass [g],note\n")
        for i in range(400):
            f.write(f"lot-{i},copper,{i + 1},{'remark ' * (i % 7)}\n")
    check(run("import", "stock", path)[0] == 0, "import of a sound list")
    check(run("stock", "edit", "lot-3", "--mass", "9 kg")[0] == 0, "edit")


with tempfile.TemporaryDirectory(prefix=f"pourbook-damage-{os.getpid()}-") as FOLDER:
    FILE = os.path.join(FOLDER, "workshop.sqlite")
    filled()
    sound, truth = os.path.join(FOLDER, "sound"), json.loads(run("stock", "--json")[1])
    shutil.copy(FILE, sound)

    # a backup put back in place of a damaged file
    shutil.copy(sound, FILE)
    backup = os.path.join(FOLDER, "backup")
    check(run("backup", backup)[0] == 0, "backup")
    with open(FILE, "r+b") as f:
        f.write(b"no database at all")
    one_line(run("stock")[0], run("stock")[2], "overwritten header", "is damaged")
    check(run("backup", "--restore", backup)[0] == 0 and json.loads(run("stock", "--json")[1]) == truth, "restore")
    check(glob.glob(FILE + ".before-restore*") != [], "restore: what was there is not kept")

    # newer version
    db = sqlite3.connect(FILE)
    db.execute("PRAGMA user_version = 99")
    db.close()
    before = digest(FILE)
    code, _, err = run("stock", "add", "tin", "1 kg")
    one_line(code, err, "newer version", "newer version")
    check(digest(FILE) == before, "newer version: written")

    # a directory
    shutil.copy(sound, FILE)
    code, _, err = subprocess.run([PROGRAM, "--workshop", FOLDER, "stock"], capture_output=True, text=True).returncode, "", ""
    check(code == 4, f"directory: exit {code}")

    # locked by another program
    db = sqlite3.connect(FILE, isolation_level=None)
    db.execute("BEGIN EXCLUSIVE")
    code, _, err = run("stock")
    one_line(code, err, "locked file", "locked")
    db.execute("ROLLBACK")
    db.close()
    check(json.loads(run("stock", "--json")[1]) == truth, "after the lock")

    # no space: a limit on file size stands in for the full disk, and a small file system where one can be mounted
    import resource
    size = os.path.getsize(FILE)
    big = os.path.join(FOLDER, "big.csv")
    with open(big, "w", encoding="utf-8") as f:
        f.write("lot,metal,mass [g],note\n")
        for i in range(5000):
            f.write(f"big-{i},copper,{i + 1},{'x' * 200}\n")
    before = digest(FILE)
    limit = lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (size + 8192, size + 8192))
    code, _, err = run("import", "stock", big, before=limit)
    one_line(code, err, "no space (limit)", "nothing was changed")
    check(json.loads(run("stock", "--json")[1]) == truth, "no space (limit): something was changed")
    small = os.path.join(FOLDER, "small")
    os.mkdir(small)
    if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=400k", "tmpfs", small], capture_output=True).returncode == 0:
        try:
            shutil.copy(sound, os.path.join(small, "workshop.sqlite"))
            FILE = os.path.join(small, "workshop.sqlite")
            code, _, err = run("import", "stock", big)
            one_line(code, err, "disk full", "nothing was changed")
            check(json.loads(run("stock", "--json")[1]) == truth, "disk full: something was changed")
            print("disk full: on a file system of its own")
        finally:
            FILE = os.path.join(FOLDER, "workshop.sqlite")
            subprocess.run(["umount", small])
    else:
        print("disk full: only by a limit on file size (no file system can be mounted here)")

    # read-only folder; root may write anyway, so another user is taken where that is possible
    os.chmod(FOLDER, 0o755)
    locked = os.path.join(FOLDER, "locked")
    os.mkdir(locked)
    shutil.copy(sound, os.path.join(locked, "workshop.sqlite"))
    os.chmod(os.path.join(locked, "workshop.sqlite"), 0o444)
    os.chmod(locked, 0o555)
    FILE = os.path.join(locked, "workshop.sqlite")
    as_nobody = (lambda: os.setuid(65534)) if os.getuid() == 0 else None
    if as_nobody:  # who may not enter root's home, where the program may lie
        for part in (PROGRAM, os.path.join(os.path.dirname(PROGRAM), "pourbook-reference.sqlite")):
            shutil.copy(part, FOLDER)
        PROGRAM = os.path.join(FOLDER, os.path.basename(PROGRAM))
    code, out, err = run("stock", "--json", before=as_nobody)
    check(code == 0 and json.loads(out) == truth, f"read-only folder: reading: {err}")
    code, _, err = run("stock", "add", "tin", "1 kg", before=as_nobody)
    one_line(code, err, "read-only folder", "nothing was changed")
    os.chmod(locked, 0o755)

for failure in failures[:20]:
    print("FAILED:", failure)
print(f"{'failed' if failures else 'passed'}: damage, {len(failures)} failures")
sys.exit(1 if failures else 0)
