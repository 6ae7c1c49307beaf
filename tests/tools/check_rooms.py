"""Who may include whom: reads every #include of the tree (DEVELOPERS.md, map of rooms)."""
import os
import re
import sys

ROOT = os.environ.get("POURBOOK_ROOT", os.path.join(os.path.dirname(__file__), "../.."))
ROOMS = {  # room: (folder, rooms it may include, third-party headers it may include)
    "core": ("app/core", set(), set()),
    "questions": ("app/questions", {"core"}, set()),
    "charts": ("app/charts", {"core", "questions"}, set()),
    "answers": ("app/answers", {"core", "questions", "charts"}, {"nlohmann", "cairo", "ft2build", "xlsxwriter"}),
    "help": ("app/help", set(), set()),
    "cli": ("app/cli", {"core", "questions", "answers", "charts", "help"}, {"CLI"}),
    "gui": ("app/gui", {"core", "questions", "charts", "answers", "help"}, {"imgui", "GLFW", "nlohmann", "GL", "misc"}),
    "store": ("db/store", {"core"}, {"SQLiteCpp", "sqlite3.h"}),
    "common": ("importers/common", {"core"}, {"nlohmann"}),
    "mesh": ("importers/mesh", {"core"}, set()),
    "shop": ("importers/shop", {"core", "common"}, set()),
    "compile": ("importers/compile", {"core", "common", "store"}, set()),
}
THIRD = {"nlohmann", "cairo", "ft2build", "xlsxwriter", "CLI", "imgui", "GLFW", "GL", "misc", "SQLiteCpp", "sqlite3.h"}
PLACES = {"core/": "core", "questions/": "questions", "charts/": "charts", "answers/": "answers", "help/": "help", "cli/": "cli",
          "gui/": "gui", "db/store/": "store", "importers/common/": "common", "importers/compile/": "compile", "importers/mesh/": "mesh",
          "importers/shop/": "shop"}
faults = []
for room, (folder, may, third) in ROOMS.items():
    for path, _, names in os.walk(os.path.join(ROOT, folder)):
        for name in names:
            if not name.endswith((".hpp", ".cpp")):
                continue
            file = os.path.join(path, name)
            for number, line in enumerate(open(file, encoding="utf-8"), 1):
                match = re.match(r'\s*#include\s+([<"])([^>"]+)[>"]', line)
                if not match:
                    continue
                sign, target = match.groups()
                where = f"{os.path.relpath(file, ROOT)}:{number}"
                if sign == '"':
                    owner = next((r for p, r in PLACES.items() if target.startswith(p)), None)
                    if owner is None:
                        faults.append(f"{where}: \"{target}\" is not named by its room")
                    elif owner != room and owner not in may and not (room == "compile" and name == "main.cpp"):
                        faults.append(f"{where}: {room} may not include {owner}")
                else:
                    top = re.split(r"[/_-]|\.h$", target)[0] if target != "sqlite3.h" else target
                    if top in THIRD and top not in third:
                        faults.append(f"{where}: {room} may not include <{target}>")
for fault in faults:
    print("FAILED:", fault)
print("rooms:", "failed" if faults else "passed", len(faults))
sys.exit(1 if faults else 0)
