"""Who may include whom: reads every #include of the tree (DEVELOPERS.md, map of rooms). Third-party headers no room is known for, files,
clocks and threads where they don't belong, and circles of folders are faults."""
import collections
import os
import re
import sys

ROOT = os.environ.get("POURBOOK_ROOT", os.path.join(os.path.dirname(__file__), "../.."))
FILES = {"filesystem", "fstream"}
CLOCK = {"chrono", "ctime"}
THREADS = {"system_error", "thread", "mutex", "atomic", "condition_variable", "future"}
TERMINAL = {"iostream", "csignal"}
NAMED_SYSTEM = {"cerrno", "fcntl.h", "unistd.h", "signal.h", "poll.h", "spawn.h", "sys/ioctl.h", "sys/wait.h", "sys/stat.h", "sys/un.h", "sys/socket.h", "sys/eventfd.h", "xcb/xcb.h",
                "emscripten.h", "emscripten/html5.h"}
SYSTEM = FILES | CLOCK | THREADS | TERMINAL | NAMED_SYSTEM
# Words that only the platform room may use outside comments: another system then needs a folder there and nothing else.
SYSTEM_WORDS = re.compile(r'/proc/|/usr/|XDG_|"HOME"|\b(getpid|isatty|mkdtemp|gmtime_r|timegm|localtime_r|fsync)\b|__linux__|_WIN32|'
                          r'__EMSCRIPTEN__|\bEM_(ASM|JS)\b')
# What the browser's compiler lacks in its standard library (the page is not built by the suite).
NOT_IN_THE_BROWSER = re.compile(r"\bstd::(ranges|views|format|chrono::parse)\b")
LANGUAGE = {"algorithm", "any", "array", "bit", "cctype", "cfloat", "charconv", "cmath", "complex", "compare", "concepts", "cstddef", "cstdint", "cstdio",
            "deque", "exception", "functional", "initializer_list", "iomanip", "iosfwd", "istream", "iterator", "limits", "list", "map", "memory",
            "new", "numbers", "numeric", "optional", "ostream", "queue", "random", "regex", "set", "span", "sstream", "stdexcept", "string",
            "string_view", "tuple", "type_traits", "unordered_map", "unordered_set", "utility", "variant", "vector", "cstdlib", "cstring"}
JSON = {"nlohmann/json.hpp"}
CAIRO = {"cairo.h", "cairo-ft.h", "cairo-pdf.h", "cairo-svg.h", "ft2build.h"}
IMGUI = {"imgui.h", "imgui_internal.h", "imgui_stdlib.h", "imgui_freetype.h", "backends/imgui_impl_opengl3.h", "backends/imgui_impl_glfw.h"}
SQLITE = {"SQLiteCpp/SQLiteCpp.h", "SQLiteCpp/Backup.h", "sqlite3.h"}
ROOMS = {  # room: (folder, rooms it may include, headers it may include beside those of the language)
    "core": ("app/core", set(), set()),
    "platform": ("app/platform", {"core"}, FILES | CLOCK | THREADS | TERMINAL | NAMED_SYSTEM | {"GLFW/glfw3.h"}),
    "questions": ("app/questions", {"core"}, set()),
    "charts": ("app/charts", {"core", "questions"}, set()),
    "answers": ("app/answers", {"core", "platform", "questions", "charts"}, JSON | CAIRO | {"xlsxwriter.h"}),
    "help": ("app/help", set(), set()),
    "cli": ("app/cli", {"core", "platform", "questions", "answers", "charts", "help"}, {"CLI/CLI.hpp"}),
    "gui": ("app/gui", {"core", "platform", "questions", "charts", "answers", "help"}, IMGUI | JSON | {"GLFW/glfw3.h"}),
    "web": ("app/web", {"core", "platform", "gui", "store", "mesh"}, IMGUI | NAMED_SYSTEM | {"GLFW/glfw3.h"}),
    "store": ("db/store", {"core", "platform"}, SQLITE | FILES),
    "common": ("importers/common", {"core"}, JSON | {"fstream"}),
    "mesh": ("importers/mesh", {"core"}, {"fstream"}),
    "shop": ("importers/shop", {"core", "common"}, FILES),
    "compile": ("importers/compile", {"core", "common", "store"}, {"filesystem", "iostream"}),
}
# What reaches out of the program stands in few files, so that another system or a test can take their place.
REACH_OUT = {
    "answers/picture/film_writer.cpp": FILES,
    "answers/picture/font_files.cpp": FILES,
    "answers/writers/write_xlsx.cpp": FILES | CLOCK,  # the library writes to files only
    "cli/backup.cpp": FILES,
    "cli/export.cpp": FILES,
    "cli/run.cpp": {"cerrno"},
    "gui/state/background.hpp": THREADS | {"chrono"},
    "gui/state/save_folder.cpp": FILES,
    "gui/state/session.hpp": CLOCK,
    "gui/state/view_file.cpp": FILES,
    "gui/widgets/leave_row.cpp": FILES,
    "gui/widgets/picture_room.cpp": FILES,
    "gui/shell/frame_loop.hpp": CLOCK,
    "gui/shell/glfw_window.hpp": THREADS,
    "gui/shell/run_window.cpp": CLOCK,
}
PLACES = {"core/": "core", "platform/": "platform", "questions/": "questions", "charts/": "charts", "answers/": "answers", "help/": "help", "cli/": "cli",
          "gui/": "gui", "web/": "web", "db/store/": "store", "importers/common/": "common", "importers/compile/": "compile", "importers/mesh/": "mesh",
          "importers/shop/": "shop"}
faults = []
reached = set()  # files of REACH_OUT that need to stand there
arrows = collections.defaultdict(dict)  # folder: {folder it includes: one place where}


def check_own(room, name, target, where):
    owner = next((r for p, r in PLACES.items() if target.startswith(p)), None)
    if owner is None:
        faults.append(f"{where}: \"{target}\" is not named by its room")
    elif owner != room and owner not in ROOMS[room][1] and not (room == "compile" and name == "main.cpp"):
        faults.append(f"{where}: {room} may not include {owner}")


def check_foreign(room, file, target, where):
    if target in LANGUAGE or target in ROOMS[room][2]:
        return
    if target in REACH_OUT.get(file, ()):
        reached.add(file)
        return
    known = "a file, clock or thread here: see REACH_OUT" if target in SYSTEM else "unknown here: name it in ROOMS with its room"
    faults.append(f"{where}: {room} may not include <{target}>, {known}")


def circles():
    """Strongly connected sets of folders (Tarjan, SIAM J. Comput. 1, 146, 1972)."""
    number, low, stack, found = {}, {}, [], []

    def visit(v):
        number[v] = low[v] = len(number)
        stack.append(v)
        for w in arrows.get(v, ()):
            if w not in number:
                visit(w)
                low[v] = min(low[v], low[w])
            elif w in stack:
                low[v] = min(low[v], number[w])
        if low[v] == number[v]:
            ring = stack[stack.index(v):]
            del stack[stack.index(v):]
            if len(ring) > 1:
                found.append(ring)

    for v in list(arrows):
        if v not in number:
            visit(v)
    return found


for room, (folder, _, _) in ROOMS.items():
    for path, _, names in os.walk(os.path.join(ROOT, folder)):
        for name in sorted(n for n in names if n.endswith((".hpp", ".cpp"))):
            file = os.path.relpath(os.path.join(path, name), ROOT).removeprefix("app/")
            for number, line in enumerate(open(os.path.join(path, name), encoding="utf-8"), 1):
                match = re.match(r'\s*#include\s+([<"])([^>"]+)[>"]', line)
                words = SYSTEM_WORDS.search(line.split("//")[0])
                if words and room not in ("platform", "web"):
                    faults.append(f"{file}:{number}: {words[0]} names a system: that is for app/platform")
                lacking = NOT_IN_THE_BROWSER.search(line.split("//")[0])
                if lacking and room != "platform":
                    faults.append(f"{file}:{number}: {lacking[0]} is missing in the browser's standard library")
                if not match:
                    if re.search(r"\b(fopen|freopen|tmpfile)\b", line) and file not in REACH_OUT:
                        faults.append(f"{file}:{number}: a file here: see REACH_OUT")
                    continue
                sign, target = match.groups()
                where = f"{file}:{number}"
                if sign == "<":
                    check_foreign(room, file, target, where)
                    continue
                check_own(room, name, target, where)
                here, there = os.path.dirname(file), os.path.dirname(target)
                if here != there and name != "main.cpp":
                    arrows[here].setdefault(there, where)
faults += [f"{file}: needs no place in REACH_OUT" for file in sorted(set(REACH_OUT) - reached)]
for ring in circles():
    ways = "; ".join(f"{a} -> {b} ({arrows[a][b]})" for a in ring for b in ring if b in arrows[a])
    faults.append(f"folders in a circle: {ways}")
for fault in faults:
    print("FAILED:", fault)
print("rooms:", "failed" if faults else "passed", len(faults))
sys.exit(1 if faults else 0)
