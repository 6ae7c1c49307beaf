"""The completions load in their shells and offer commands, options, choices and metals: what is offered after some words is asked
of bash, zsh and fish themselves. Outside check: the shells."""
import os
import shutil
import subprocess
import sys
import tempfile

ROOT = os.environ.get("POURBOOK_ROOT", os.path.abspath(os.path.join(os.path.dirname(__file__), "../..")))
PROGRAM = os.environ.get("POURBOOK", os.path.join(ROOT, "build", "pourbook"))

ASK = {
    "bash": ["bash", "--norc", "-c", 'source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _pourbook; printf "%s\\n" "${COMPREPLY[@]}"', "ask"],
    # What zsh would offer is printed instead: compadd and _describe are its own, and need a terminal.
    "zsh": ["zsh", "-f", "-c", 'compdef() {}; _files() {}; compadd() { [ "$1" = -a ] && print -l -- ${(P)2} || print -l -- "${@:2}" }\n'
            '_describe() { [ "$1" = -o ] && shift; print -l -- ${${(P)2}%%:*} }\nsource "$1"; shift; words=("$@"); CURRENT=$#; _pourbook', "ask"],
    "fish": ["fish", "--no-config", "-c", 'source $argv[1]; complete -C (string join " " -- $argv[2..])'],
}
EXPECTED = [  # words before the cursor, what must be among the offers, what must not
    (["pourbook", ""], {"rank", "chart", "stock"}, {"size"}),
    (["pourbook", "rank", "--hold"], {"--holding"}, set()),
    (["pourbook", "rank", "--holding", ""], {"size", "mass", "budget"}, {"--goal"}),
    (["pourbook", "chart", ""], {"curve", "diagram"}, {"sheet"}),
    (["pourbook", "chart", "rank", "--cap"], {"--caption"}, set()),
    (["pourbook", "sheet", "c"], {"copper"}, set()),
]

failures = []
with tempfile.TemporaryDirectory(prefix="pourbook-completion-") as folder:
    os.symlink(os.path.abspath(PROGRAM), os.path.join(folder, "pourbook"))
    environment = dict(os.environ, PATH=folder + ":" + os.environ["PATH"], HOME=folder)
    for shell, ask in ASK.items():
        if not shutil.which(shell):
            failures.append(f"{shell} is not here: third_party/install.sh test")
            continue
        made = subprocess.run([PROGRAM, "help", "--completion", shell], capture_output=True, text=True, check=True)
        path = os.path.join(folder, shell)
        with open(path, "w", encoding="utf-8") as out:
            out.write(made.stdout)
        for words, wanted, unwanted in EXPECTED:
            done = subprocess.run([*ask, path, *words], capture_output=True, text=True, env=environment)
            offered = {line.split("\t")[0] for line in done.stdout.splitlines()}
            if not wanted <= offered or unwanted & offered or done.stderr:
                failures.append(f"{shell}: {' '.join(words)}: offered {sorted(offered)[:12]} {done.stderr}")

for failure in failures:
    print("FAILED:", failure)
print("completions:", "failed" if failures else "passed", len(failures))
sys.exit(1 if failures else 0)
