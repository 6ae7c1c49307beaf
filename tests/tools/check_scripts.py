"""The scripts that set up and build, against stand-ins for apt-get, sudo, cmake and ninja: what they say and do when apt's
lock is held, there is no network, sudo refuses, the checkout was moved, a compiler stops, nothing can be written."""
import os
import shutil
import subprocess
import sys
import tempfile

ROOT = os.environ.get("POURBOOK_ROOT", os.path.abspath(os.path.join(os.path.dirname(__file__), "../..")))
TOOLS = "bash chmod env dirname sed awk grep cat mktemp rm mkdir tail cut nproc id".split()
failures = []

CMAKE = """while [ $# -gt 0 ]; do case $1 in -S) from=$2; shift ;; -B) to=$2; shift ;; esac; shift; done
echo "CMAKE_HOME_DIRECTORY:INTERNAL=$from" >"$to/CMakeCache.txt"
echo "CMAKE_CACHEFILE_DIR:INTERNAL=$to" >>"$to/CMakeCache.txt"
echo configured >>"$to/configured"
: >"$to/build.ninja" """
NINJA = """for i in $(seq_to 100); do echo "@$i 100 $i.5@ compiling"; done
: >"$2/pourbook"; chmod +x "$2/pourbook" """


def check(truth, what):
    if not truth:
        failures.append(what)


class Place:
    """A folder with a checkout of the scripts and a PATH that holds the stand-ins and little else."""

    def __init__(self, folder, **stand_ins):
        self.folder, self.bin = folder, os.path.join(folder, "bin")
        self.checkout = os.path.join(folder, "checkout")
        os.mkdir(self.bin)
        for tool in TOOLS:
            os.symlink(shutil.which(tool), os.path.join(self.bin, tool))
        for script in ("app/build.sh", "third_party/install.sh"):
            os.makedirs(os.path.join(self.checkout, os.path.dirname(script)))
            shutil.copy(os.path.join(ROOT, script), os.path.join(self.checkout, script))
        self.stand_in("sleep", "")
        self.stand_in("seq_to", 'i=1; while [ $i -le $1 ]; do echo $i; i=$((i + 1)); done')
        for name, text in stand_ins.items():
            self.stand_in(name.replace("_", "-"), text)

    def stand_in(self, name, text):
        path = os.path.join(self.bin, name)
        if os.path.lexists(path):
            os.remove(path)
        with open(path, "w", encoding="utf-8") as f:
            f.write(f"#!{shutil.which('bash')}\nhere={self.folder}\n{text}\n")
        os.chmod(path, 0o755)

    def run(self, script, *words):
        done = subprocess.run([os.path.join(self.checkout, script), *words], capture_output=True, text=True, timeout=60,
                              env={"PATH": self.bin, "TMPDIR": self.folder})
        return done.returncode, done.stdout, done.stderr


def in_place(test, **stand_ins):
    with tempfile.TemporaryDirectory(prefix="pourbook-scripts-") as folder:
        test(Place(folder, **stand_ins))


def lock_held(place):
    code, _, err = place.run("third_party/install.sh", "build")
    check(code == 0 and "waiting for it" in err and "MB to fetch" in err, f"apt's lock held: {code}: {err}")


def offline(place):
    code, _, err = place.run("third_party/install.sh", "build")
    check(code == 1 and "is there a network?" in err.splitlines()[-1], f"no network: {code}: {err}")


def refused(place):
    code, _, err = place.run("third_party/install.sh", "build")
    check(code == 1 and "su -c 'apt-get" in err.splitlines()[-1], f"sudo refuses or isn't there: {code}: {err}")


def moved(place):
    build = os.path.join(place.checkout, "build")
    configured = lambda: open(os.path.join(build, "configured"), encoding="utf-8").read().count("\n")
    code, out, err = place.run("app/build.sh", build, "OFF", "pourbook")
    check(code == 0 and out == "" and configured() == 1, f"first build: {code}: {err}")
    check("takes" in err.splitlines()[0] and "building, 50 of 100 (50 %), about 50 s left" in err, f"progress is not seen: {err}")
    check(len(err.splitlines()) <= 12, f"more than a line for each tenth: {err}")
    place.stand_in("ninja", "echo 'ninja: no work to do.'")
    code, _, err = place.run("app/build.sh", build, "OFF", "pourbook")
    check(code == 0 and err == "" and configured() == 1, f"second start: {code}: {err}")
    os.rename(place.checkout, place.checkout + "-2")
    place.checkout += "-2"
    build = os.path.join(place.checkout, "build")
    code, _, err = place.run("app/build.sh", build, "OFF", "pourbook")
    check(code == 0 and configured() == 2, f"a moved checkout is not configured afresh: {code}: {err}")


def stopped(place):
    code, _, err = place.run("app/build.sh", os.path.join(place.checkout, "build"), "OFF")
    check(code == 1 and "x.cpp:3:1: error: no" in err and err.splitlines()[-1].endswith("build.log"), f"a compiler stops: {code}: {err}")


def unwritable(place):
    open(os.path.join(place.folder, "file"), "w", encoding="utf-8").close()
    code, _, err = place.run("app/build.sh", os.path.join(place.folder, "file/build"), "OFF")
    check(code == 1 and err.count("\n") == 1 and "can't be written" in err, f"nothing can be written: {code}: {err}")


nothing = {"dpkg_query": "exit 1", "apt_cache": "", "id": "echo 0"}
in_place(lock_held, **nothing, apt_get='[ -e $here/once ] || { : >$here/once; echo "E: Could not get lock /var/lib/apt/lists/lock" >&2; exit 100; }')
in_place(offline, **{**nothing, "apt_cache": "exit 100"}, apt_get='echo "E: Failed to fetch: Temporary failure resolving" >&2; exit 100')
in_place(refused, **{**nothing, "id": "echo 1000"}, apt_get="", sudo='echo "someone is not in the sudoers file." >&2; exit 1')
in_place(refused, **{**nothing, "id": "echo 1000"}, apt_get="")
in_place(moved, cmake=CMAKE, ninja=NINJA)
in_place(stopped, cmake=CMAKE, ninja='echo "@1 9 1.0@ compiling"; echo "x.cpp:3:1: error: no"; exit 1')
in_place(unwritable, cmake=CMAKE, ninja=NINJA)

for failure in failures:
    print("FAILED:", failure)
print("scripts:", "failed" if failures else "passed", len(failures))
sys.exit(1 if failures else 0)
