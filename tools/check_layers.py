#!/usr/bin/env python3
"""Checks by #include lines that the layers stay apart. usage: check_layers.py [ROOT]

core    only core/, the chosen libraries (JSON, QR code, numbers), and the standard library's pure part:
        no input or output, clock, thread or random source
web     core/ and web/; the browser's and the graphics library's headers only in web/host/
tools   core/, tools/ and the chosen libraries; nothing of web/ or Dear ImGui
tests   anything
"""
import re
import sys
from pathlib import Path

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]')

# Standard headers that would make core do more than compute.
IMPURE = {
    "iostream", "istream", "ostream", "fstream", "sstream", "iomanip", "ios", "streambuf", "syncstream", "strstream",
    "chrono", "ctime", "time.h", "filesystem", "thread", "mutex", "shared_mutex", "condition_variable", "future",
    "atomic", "stop_token", "semaphore", "latch", "barrier", "random", "regex", "format", "locale", "csignal",
    "expected", "exception", "stdexcept", "coroutine",
}
STANDARD = re.compile(r"^[a-z0-9_]+(\.h)?$")
# Made by the build in its own folder (on the include path as they are).
GENERATED_FOR_WEB = {"font_data.h", "shader_sources.h"}

# For each layer: what it may include with a path in front, and whether any standard header is fine.
LAYERS = {
    "core": {"allowed": ("core/", "nlohmann/", "tl/", "fast_float/"), "pure": True, "names": {"qrcodegen.h"}},
    "web": {"allowed": ("core/", "web/", "nlohmann/", "tl/"), "pure": False,
            "names": {"imgui.h", "imgui_internal.h", "qrcodegen.h"} | GENERATED_FOR_WEB},
    "web/host": {"allowed": ("core/", "web/", "nlohmann/", "tl/", "emscripten/", "backends/", "GLES3/", "GLFW/"),
                     "pure": False,
                     "names": {"imgui.h", "imgui_internal.h", "emscripten.h", "qrcodegen.h"} | GENERATED_FOR_WEB},
    "tools": {"allowed": ("core/", "tools/", "nlohmann/", "tl/", "CLI/"), "pure": False,
              "names": {"qrcodegen.h", "unistd.h"}},
}
GENERATED_PREFIX = "generated/"


def layer_of(path):
    """The most particular layer a file (relative to the root) belongs to."""
    names = [name for name in LAYERS if path.as_posix().startswith(name + "/")]
    return max(names, key=len, default=None)


def is_standard(name):
    return bool(STANDARD.match(name)) and (not name.endswith(".h") or name in {"time.h", "math.h", "stdint.h"})


def complaint(layer, name):
    """Why a file of the layer may not include the name, or None."""
    rule = LAYERS[layer]
    if name in rule.get("names", ()) or name.startswith(rule["allowed"] + (GENERATED_PREFIX,)):
        return None
    if not is_standard(name):
        return f"{layer} may not include {name}"
    if rule["pure"] and name in IMPURE:
        return f"{layer} is pure: no <{name}>"
    return None


def check(root):
    """All complaints below a root, and how many files were read."""
    complaints, count = [], 0
    for path in sorted(p for top in ("core", "web", "tools") for p in (root / top).rglob("*")):
        relative = path.relative_to(root)
        if path.suffix not in {".h", ".cpp", ".c", ".hpp"} or "node_modules" in relative.parts:
            continue
        count += 1
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            found = INCLUDE.match(line)
            why = found and complaint(layer_of(relative), found.group(2))
            if why:
                complaints.append(f"{relative}:{number}: {why}")
    return complaints, count


def main():
    root = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).resolve().parent.parent
    complaints, count = check(root)
    for line in complaints:
        print(line)
    if count == 0:
        complaints = [f"no source files under {root}"]
        print(complaints[0])
    print(f"check_layers: {count} files, {len(complaints)} breaches")
    sys.exit(1 if complaints else 0)


main()
