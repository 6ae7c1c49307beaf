"""The completion of a shell, made from what the program says of itself.   make_completion.py PROGRAM bash|zsh|fish > FILE

The words before the cursor lead to a place (a command, a command's command); there its commands and options are offered, after an
option its choices, and the metals where a metal is expected, as the installed reference names them."""
import sys

from program_words import all_places, place

METALS = "pourbook metals 2>/dev/null | sed 1d | cut -d ' ' -f 1"


def quoted(text):
    return "'" + text.replace("'", "'\\''") + "'"


def spelled(words):
    """A place as the shells walk to it: each word with a blank before it."""
    return "".join(" " + word for word in words.split())


def walk(places, at, word):
    return f"case \"${at} {word}\" in {'|'.join(quoted(spelled(p.words)) for p in places if p.words)}) {at}+=\" {word}\" ;; esac"


def after_option(places):
    """A place with an option that takes a value, and its choices (none: a file or words of one's own)."""
    return [(spelled(p.words) + " " + o.name, o.choices) for p in places for o in p.options if o.takes_value]


def bash(places):
    print("# Completion of bash for pourbook.\n_pourbook() {\n  local word=${COMP_WORDS[COMP_CWORD]} at= words= i")
    print("  for ((i = 1; i < COMP_CWORD; i++)); do\n    " + walk(places, "at", "${COMP_WORDS[i]}") + "\n  done")
    print('  COMPREPLY=()\n  case "$at ${COMP_WORDS[COMP_CWORD - 1]}" in')
    for where, choices in after_option(places):
        print(f"  {quoted(where)}) COMPREPLY=($(compgen -W {quoted(' '.join(choices))} -- \"$word\")); return ;;")
    print('  esac\n  case "$at" in')
    for p in places:
        words = " ".join([c.words.split()[-1] for c in p.commands] + [o.name for o in p.options])
        print(f"  {quoted(spelled(p.words))}) words={quoted(words)}" + (f"\" $({METALS})\"" if p.takes_metal else "") + " ;;")
    print('  esac\n  COMPREPLY=($(compgen -W "$words" -- "$word"))\n}\ncomplete -o default -F _pourbook pourbook')


def described(rows):
    return "(" + " ".join(quoted(name.replace(":", "\\:") + ":" + sentence) for name, sentence in rows) + ")"


def zsh(places):
    print("#compdef pourbook\n# Completion of zsh for pourbook.\n_pourbook() {\n  local at= i\n  local -a commands options metals")
    print("  for ((i = 2; i < CURRENT; i++)); do\n    " + walk(places, "at", "${words[i]}") + "\n  done")
    print('  case "$at ${words[CURRENT-1]}" in')
    for where, choices in after_option(places):
        offer = "compadd -- " + " ".join(map(quoted, choices)) if choices else "_files"
        print(f"  {quoted(where)}) {offer}; return ;;")
    print('  esac\n  case "$at" in')
    for p in places:
        print(f"  {quoted(spelled(p.words))})\n    commands={described((c.words.split()[-1], c.sentence) for c in p.commands)}")
        print(f"    options={described((o.name, o.sentence) for o in p.options)}")
        print((f"    metals=($({METALS}))" if p.takes_metal else "    metals=()") + " ;;")
    print("  esac\n  (( $#commands )) && _describe command commands\n  (( $#metals )) && compadd -a metals")
    print('  _describe -o option options\n}\n[[ $zsh_eval_context[-1] = loadautofunc ]] && _pourbook "$@" || compdef _pourbook pourbook')


def fish(places):
    print("# Completion of fish for pourbook.\nset -g __pourbook_places " + " ".join(quoted(spelled(p.words)) for p in places if p.words))
    print('function __pourbook_at\n  set -l at ""\n  for word in (commandline -opc)[2..]\n    if contains -- "$at $word" $__pourbook_places\n'
          '      set at "$at $word"\n    end\n  end\n  test "$at" = "$argv[1]"\nend')
    for p in places:
        here = f"complete -c pourbook -n {quoted('__pourbook_at ' + quoted(spelled(p.words)))}"
        for c in p.commands:
            print(f"{here} -f -a {quoted(c.words.split()[-1])} -d {quoted(c.sentence)}")
        for o in p.options:
            value = f" -x -a {quoted(' '.join(o.choices))}" if o.choices else " -r" if o.takes_value else ""
            print(f"{here} -l {o.name[2:]}{value} -d {quoted(o.sentence)}")
        if p.takes_metal:
            print(f"{here} -f -a {quoted('(' + METALS + ')')}")


program, shell = sys.argv[1:]
{"bash": bash, "zsh": zsh, "fish": fish}[shell](all_places(place(program)))
