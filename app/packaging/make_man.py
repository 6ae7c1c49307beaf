"""The manual page and the completion of bash, made from what the program says of itself.
make_man.py PROGRAM man|completion DATE > FILE"""
import re
import subprocess
import sys

program, what, date = sys.argv[1:]


def said(*words):
    return subprocess.run([program, *words, "--help"], capture_output=True, text=True, check=True).stdout


def commands():
    """Name and sentence of each command; a sentence may go on in the next lines."""
    out = []
    for line in said().splitlines():
        start = re.match(r"  ([a-z][a-z-]*) {2,}(\S.*)", line)
        if start:
            out.append([start[1], start[2].strip()])
        elif out and line.startswith(" " * 20):
            out[-1][1] += " " + line.strip()
    return out


def options(*words):
    return re.findall(r"^ +(?:-\w,)?(--[a-z][a-z-]*)", said(*words), re.MULTILINE)


def roff(text):
    return text.replace("\\", "\\e").replace("-", "\\-").replace("'", "\\(aq").replace("\n.", "\n\\&.")


def man():
    version = subprocess.run([program, "--version"], capture_output=True, text=True, check=True).stdout.split()[1]
    print(f'.TH POURBOOK 1 "{date}" "pourbook {version}" "User commands"')
    print(".SH NAME\npourbook \\- choose a casting metal from cited figures and plan the pour")
    print(".SH SYNOPSIS\n.B pourbook\n[\\fIoptions\\fR] [\\fIcommand\\fR ...]")
    print(".SH DESCRIPTION\nWithout a command the window opens. Every command answers "
          "\\fB\\-\\-help\\fR with all it takes.\n.SH COMMANDS")
    for name, sentence in commands():
        print(f".TP\n.B {roff(name)}\n{roff(sentence)}")
    print(".SH EXIT STATUS\n0 answered; 2 the words can't be read; 3 no such metal or value; 4 a file is damaged or an answer could not "
          "be written; 5 refused with the reason.".replace("'", "\\(aq"))
    print(".SH FILES\n.TP\n.I ~/.local/share/pourbook/workshop.sqlite\nthe file of your own entries, with its copies beside it\n"
          ".TP\n.I ~/.local/state/pourbook/window.json\nwhat is chosen in the window")


def completion():
    names = [name for name, _ in commands()]
    print("# Completion of bash for pourbook.\n_pourbook() {\n  local word=${COMP_WORDS[COMP_CWORD]}\n  case ${COMP_WORDS[1]} in")
    for name in names:
        print(f'  {name}) COMPREPLY=($(compgen -W "{" ".join(options(name))}" -- "$word")) ;;')
    print(f'  *) COMPREPLY=($(compgen -W "{" ".join(names + options())}" -- "$word")) ;;\n  esac')
    print('  [ $COMP_CWORD -gt 1 ] || COMPREPLY=($(compgen -W "' + " ".join(names + options()) + '" -- "$word"))')
    print("}\ncomplete -o default -F _pourbook pourbook")


man() if what == "man" else completion()
