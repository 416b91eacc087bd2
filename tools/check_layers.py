#!/usr/bin/env python3
"""Checks by #include lines that every file has a home and every folder keeps to those below it.

usage: check_layers.py [ROOT]              all breaches, and whether docs/code_map.md tells the same table
       check_layers.py [ROOT] --table      which folder includes which, as it is
       check_layers.py [ROOT] --write-map  writes docs/code_map.md from the table below

The table is the map of the code: a folder, what may live in it, which folders of ours it may include. A folder may
only name folders that stand before it, so no two can ever include each other. Besides that:

core    is pure: no input or output, clock, thread or random source, no graphics
web     the browser's and the graphics library's headers only where the table says so
tools   core/, tools/ and the chosen libraries; nothing of web/ or Dear ImGui
tests   anything; the folders of tests/core and tests/web are those of the code
"""
import re
import sys
from collections import namedtuple
from pathlib import Path

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]')
SOURCES = {".h", ".cpp", ".c", ".hpp"}

# folder, what may live in it, which folders of ours it may include besides itself. Lowest first.
Folder = namedtuple("Folder", "name sentence may")
QUESTION = "core/base core/catalogue core/plan core/optics core/frame"
HANDED = "core/base core/encode core/catalogue core/plan core/choose core/report core/show"
DRAWN = "core/base core/plan core/report core/handover/fdl web/door web/look web/app web/state web/view web/act"
FOLDERS = [Folder(*row) for row in [
    ("core/base", "Exact numbers, units, numbers as text, plain text, problems found at the boundary.", ""),
    ("core/encode", "File formats that know nothing of film: JSON, CSV, PNG, QR codes, markup.", "core/base"),
    ("core/field", "One scalar value as data: its limits, its words, how it is read and written.", "core/base core/encode"),
    ("core/catalogue", "The rows of the library, their tables, check, JSON and merging; the built-in rows as JSON beside.",
     "core/base core/encode core/field"),
    ("core/plan", "What a person chose: the plan, its table, check, edits, JSON, and the list of kept plans.",
     "core/base core/encode core/field core/catalogue"),
    ("core/optics", "What all questions share about the chosen format: the mode in millimetres, the squeeze of the lens.",
     "core/base core/catalogue core/plan"),
    ("core/frame", "Frame: where a frame line sits and the room around it.", "core/base core/catalogue core/plan core/optics"),
    ("core/cover", "Cover: the image circle of the lens against mode, protected area and frame line.", QUESTION),
    ("core/see", "See: field of view, scene size, the same view elsewhere, depth of field.", QUESTION),
    ("core/resolve", "Resolve: photosites, the commissioner's requirement, scales, diffraction.", QUESTION),
    ("core/commission", "What a plan's commission comes to: its row, the plan's own terms, sizes of the deliverable.",
     QUESTION + " core/resolve"),
    ("core/run", "Run: rates, shutter, exposure, flicker, time code.", QUESTION),
    ("core/store", "Store: from bytes a frame to cards, copying, copies, archive and money.", QUESTION),
    ("core/film", "Film as a medium: stock, magazines, money, the picture in a scan.", QUESTION),
    ("core/choose", "Choose: requirements, figures of every format, ranking, the smallest change that would do.",
     QUESTION + " core/field core/cover core/see core/resolve core/commission core/run core/store core/film"),
    ("core/report", "The report put together by evaluate() and told: figures as text, workings, notes, verdicts, differences.",
     QUESTION + " core/cover core/see core/resolve core/run core/store core/film core/choose"),
    ("core/answer", "Answers: changes of the plan that mend what a report found, each tried out.",
     "core/base core/catalogue core/plan core/choose core/report"),
    ("core/show", "A show: several plans summed, with their archive, calendar and money.",
     "core/base core/encode core/field core/catalogue core/plan core/store core/report"),
    ("core/handover/link", "The address that holds a plan, or a show.",
     "core/base core/encode core/field core/catalogue core/plan core/show"),
    ("core/handover/json", "Report and ranking for programs.", HANDED),
    ("core/handover/table", "Tables for spreadsheets.", HANDED),
    ("core/handover/chart", "The frame-line chart.", HANDED),
    ("core/handover/sheet", "The printed page.", HANDED),
    ("core/handover/fdl", "ASC framing decision lists: read, applied, written.", HANDED + " core/optics"),
    ("core/equipment", "The form in which people type rows of their own.",
     "core/base core/encode core/field core/catalogue core/plan core/optics"),
    ("core/lesson", "Lessons: documents, links, running them, the handout; the built-in ones stand in docs/lessons.",
     "core/base core/encode core/field core/catalogue core/plan core/report core/handover/link core/handover/sheet"),
    ("web/door", "What host and front end say to each other.", "core/report"),
    ("web/look", "Colours, type, fonts, and where the parts of the screen go.", "web/door"),
    ("web/app", "The plan on the screen with its report, undo and commands.", "core/base core/catalogue core/plan core/report"),
    ("web/state", "All that the screen remembers besides the plan, as plain data.",
     "core/plan core/handover/fdl core/equipment core/lesson web/door web/look"),
    ("web/view", "Everything shown, as strings and controls; nothing is drawn here.", "core web/door web/look web/app web/state"),
    ("web/act", "What the buttons do.", "core web/door web/look web/app web/state web/view"),
    ("web/draw/widgets", "Parts that draw and know no section.", DRAWN),
    ("web/draw/picture", "The drawing of sensor, scene and comparison.", DRAWN + " web/draw/widgets"),
    ("web/draw/sections", "The sections of the column: what each is made of, and what it draws itself.",
     DRAWN + " web/draw/widgets web/draw/picture"),
    ("web/draw", "The whole screen.", DRAWN + " web/draw/widgets web/draw/picture web/draw/sections"),
    ("web/ui", "The front door, and touch.",
     "core web/door web/look web/app web/state web/view web/act web/draw/widgets web/draw/picture web/draw/sections web/draw"),
    ("web/host", "The browser's side: the program's entry, the renderer, what the page is asked for.",
     "core/base core/catalogue web/door web/ui"),
    ("tools/cli", "The command line: one file a verb.", "core"),
    ("tools/schema", "Writes docs/schema from the tables of fields.", "core"),
]]
# What is no C++ source of the program, for the map's sake.
OTHERS = [
    ("web/shell", "The page around the program: scripts, style, service worker, icons."),
    ("shaders", "The scene through the lens, as GLSL."),
    ("tools", "Scripts to set up, build, check, test, pack and serve."),
    ("tests", "`core/` and `web/` mirror the code; `browser/`, `cli/`, `bench/`, `fuzz/`, `parity/`, `size/`, `tools/`, `data/`."),
    ("docs", "This map, the architecture, formulas, formats of documents, hosting, words of the trade."),
]

# Standard headers that would make core do more than compute.
IMPURE = {
    "iostream", "istream", "ostream", "fstream", "sstream", "iomanip", "ios", "streambuf", "syncstream", "strstream",
    "chrono", "ctime", "time.h", "filesystem", "thread", "mutex", "shared_mutex", "condition_variable", "future",
    "atomic", "stop_token", "semaphore", "latch", "barrier", "random", "regex", "format", "locale", "csignal",
    "expected", "exception", "stdexcept", "coroutine",
}
STANDARD = re.compile(r"^[a-z0-9_]+(\.h)?$")

# What of others' a part may include, the most particular part first.
Part = namedtuple("Part", "folder pure prefixes names")
GRAPHICS = {"imgui.h", "imgui_internal.h"}
PARTS = [
    Part("core", True, ("nlohmann/", "tl/"), {"qrcodegen.h"}),
    Part("web/look", False, ("tl/",), GRAPHICS | {"font_data.h"}),
    Part("web/draw", False, ("tl/",), GRAPHICS | {"qrcodegen.h"}),
    Part("web/ui", False, ("tl/",), GRAPHICS),
    Part("web/host", False, ("emscripten/", "backends/", "GLES3/", "GLFW/", "tl/"), GRAPHICS | {"emscripten.h", "shader_sources.h"}),
    Part("web", False, ("nlohmann/", "tl/"), set()),
    Part("tools", False, ("nlohmann/", "tl/", "CLI/"), {"qrcodegen.h", "unistd.h"}),
]
TOPS = ("core", "web", "tools")


def folder_of(path):
    """Where a file or header lives, as the table writes it."""
    return Path(path).parent.as_posix()


def is_standard(name):
    return bool(STANDARD.match(name)) and (not name.endswith(".h") or name in {"time.h", "math.h", "stdint.h"})


def inside(name, folder):
    return name == folder or name.startswith(folder + "/")


def complaint_about_ours(folder, name):
    """Why a file of a folder may not include a header of ours, or None."""
    target = folder_of(name)
    may = folder.may.split() + [folder.name]
    if target in may or ("core" in may and inside(target, "core")) or (inside(folder.name, "tools") and inside(target, "tools")):
        return None
    return f"{folder.name} may not include {name}"


def complaint_about_others(folder, name):
    """Why a file of a folder may not include a header that is not ours, or None."""
    part = next(part for part in PARTS if inside(folder.name, part.folder))
    if name in part.names or name.startswith(part.prefixes + ("generated/",)):
        return None
    if not is_standard(name):
        return f"{folder.name} may not include {name}"
    return f"{part.folder} is pure: no <{name}>" if part.pure and name in IMPURE else None


def sources(root):
    """Every source file of the program below a root, relative to it."""
    for path in sorted(p for top in TOPS for p in (root / top).rglob("*")):
        relative = path.relative_to(root)
        if path.suffix in SOURCES and "node_modules" not in relative.parts:
            yield relative


def includes(root, relative):
    """(line number, header) of each include of a file."""
    for number, line in enumerate((root / relative).read_text(encoding="utf-8").splitlines(), 1):
        if found := INCLUDE.match(line):
            yield number, found.group(2)


def check_files(root):
    """Complaints about the files below a root, and how many were read."""
    folders = {folder.name: folder for folder in FOLDERS}
    complaints, count = [], 0
    for relative in sources(root):
        count += 1
        folder = folders.get(folder_of(relative))
        if folder is None:
            complaints.append(f"{relative}: has no home: its folder is not in the table of tools/check_layers.py")
            continue
        for number, name in includes(root, relative):
            ours = name.split("/")[0] in ("core", "web", "tools", "tests") and "/" in name
            why = complaint_about_ours(folder, name) if ours else complaint_about_others(folder, name)
            if why:
                complaints.append(f"{relative}:{number}: {why}")
    return complaints, count


def check_table():
    """Complaints about the table itself: a folder names only folders before it."""
    complaints, before = [], {"core"}
    for folder in FOLDERS:
        for name in folder.may.split():
            if name not in before:
                complaints.append(f"the table: {folder.name} names {name}, which does not stand before it")
        before.add(folder.name)
    return complaints


def check_tests(root):
    """Complaints about folders of the tests that mirror no folder of the code."""
    homes = {folder.name for folder in FOLDERS}
    homes |= {parent.as_posix() for name in homes for parent in Path(name).parents}
    homes |= {"core/support", "web/support"}
    used = sorted({path.parent.relative_to(root / "tests").as_posix()
                   for top in ("core", "web") for path in (root / "tests" / top).rglob("*") if path.suffix in SOURCES})
    return [f"tests/{folder}: mirrors no folder of the code" for folder in used if folder not in homes]


def map_text():
    """docs/code_map.md."""
    lines = ["# The map of the code", "",
             "Written by `tools/check_layers.py --write-map` from the table it enforces: change the table there. Lowest first:",
             "a folder includes itself and folders that stand above it here, so no two include each other.",
             "`tools/check_layers.py --table` prints which folder includes which at present.", ""]
    order = [folder.name for folder in FOLDERS]
    for top, title in (("core", "The core: no input or output, clock, thread, random source or graphics"),
                       ("web", "The front end"), ("tools", "The programs of the command line")):
        lines += [f"## {title}", "", "| Folder | What lives there | It may include |", "|---|---|---|"]
        for folder in FOLDERS:
            if inside(folder.name, top):
                may = " ".join(f"`{name}`" for name in sorted(folder.may.split(), key=(["core"] + order).index))
                lines.append(f"| `{folder.name}` | {folder.sentence} | {may or 'nothing of ours'} |")
        lines.append("")
    lines += ["## Everything else", "", "| Folder | What lives there |", "|---|---|"]
    lines += [f"| `{name}` | {sentence} |" for name, sentence in OTHERS]
    return "\n".join(lines) + "\n"


def check_map(root):
    """Complaints about docs/code_map.md and about rows of the table that have no folder; only for a whole checkout."""
    path = root / "docs/code_map.md"
    if not (root / "docs").is_dir():
        return []
    complaints = [f"the table: there is no folder {name}" for name in
                  [folder.name for folder in FOLDERS] + [name for name, _ in OTHERS] if not (root / name).is_dir()]
    if not path.is_file() or path.read_text(encoding="utf-8") != map_text():
        complaints.append("docs/code_map.md does not tell the table: run tools/check_layers.py --write-map")
    return complaints


def print_table(root):
    used = {folder.name: set() for folder in FOLDERS}
    for relative in sources(root):
        for _, name in includes(root, relative):
            if folder_of(name) in used and folder_of(name) != folder_of(relative):
                used.setdefault(folder_of(relative), set()).add(folder_of(name))
    order = [folder.name for folder in FOLDERS]
    for name in order:
        print(f"{name:22} {' '.join(sorted(used[name], key=order.index)) or '-'}")


def main():
    words = [word for word in sys.argv[1:] if not word.startswith("--")]
    root = Path(words[0]) if words else Path(__file__).resolve().parent.parent
    if "--table" in sys.argv:
        print_table(root)
        return
    if "--write-map" in sys.argv:
        (root / "docs/code_map.md").write_text(map_text(), encoding="utf-8")
    complaints, count = check_files(root)
    complaints += check_table() + check_tests(root) + check_map(root)
    if count == 0:
        complaints = [f"no source files under {root}"]
    for line in complaints:
        print(line)
    print(f"check_layers: {count} files, {len(complaints)} breaches")
    sys.exit(1 if complaints else 0)


main()
