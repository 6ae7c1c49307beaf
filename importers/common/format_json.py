#!/usr/bin/env python3
"""Rewrites data files in the one layout of db/: short objects and lists on a line, longer ones a line an item.

format_json.py FILE...          rewrites the files
format_json.py --check FILE...  exit 1 and names the files that would change
"""
import json
import sys

WIDTH = 118


def layout(node, indent=0, head=0):
    """JSON text of node; head is the number of columns already taken on its first line."""
    flat = json.dumps(node, ensure_ascii=False)
    if indent + head + len(flat) <= WIDTH and (indent > 0 or not isinstance(node, (dict, list))):
        return flat
    pad = " " * (indent + 2)
    if isinstance(node, dict):
        rows = []
        for key, value in node.items():
            label = json.dumps(key, ensure_ascii=False) + ": "
            rows.append(pad + label + layout(value, indent + 2, len(label)))
        return "{\n" + ",\n".join(rows) + "\n" + " " * indent + "}"
    if isinstance(node, list):
        return "[\n" + ",\n".join(pad + layout(item, indent + 2) for item in node) + "\n" + " " * indent + "]"
    return flat


def main(arguments):
    check = "--check" in arguments
    changed = []
    for name in (a for a in arguments if not a.startswith("--")):
        with open(name, encoding="utf-8") as file:
            before = file.read()
        after = layout(json.loads(before)) + "\n"
        if after != before:
            changed.append(name)
            if not check:
                with open(name, "w", encoding="utf-8") as file:
                    file.write(after)
    for name in changed:
        print(("not in layout: " if check else "rewritten: ") + name)
    return 1 if check and changed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
