"""The manual page, made from what the program says of itself.   make_man.py PROGRAM DATE > FILE"""
import sys

from program_words import place, said


def roff(text):
    return text.replace("\\", "\\e").replace("-", "\\-").replace("'", "\\(aq").replace("\n.", "\n\\&.")


def listed(rows):
    for name, sentence in rows:
        print(f".TP\n.B {roff(name)}\n{roff(sentence)}")


program, date = sys.argv[1:]
top = place(program)
version = said(program, "--version").split()[1]
print(f'.TH POURBOOK 1 "{date}" "pourbook {version}" "User commands"')
print(".SH NAME\npourbook \\- choose a casting metal from cited figures and plan the pour")
print(".SH SYNOPSIS\n.B pourbook\n[\\fIoptions\\fR] [\\fIcommand\\fR ...]")
print(".SH DESCRIPTION\nWithout a command the window opens. Every command answers \\fB\\-\\-help\\fR with all it takes; "
      "\\fBpourbook help\\fR prints the pages that the window shows.")
print(".SH OPTIONS")
listed((o.name + (" " + "|".join(o.choices) if o.choices else ""), o.sentence) for o in top.options)
print(".SH COMMANDS")
listed((c.words, c.sentence) for c in top.commands)
print(".SH EXIT STATUS")
listed([("0", "answered"), ("2", "the words can't be read"), ("3", "no such metal or value"),
        ("4", "a file is damaged, or an answer could not be written"), ("5", "refused, with the reason")])
print(".SH FILES")
listed([("~/.local/share/pourbook/workshop.sqlite", "the file of your own entries, with its copies beside it"),
        ("~/.local/state/pourbook/window.json", "what is chosen in the window")])
