"""The whole list of checks behind tools/test: builds one tree while the tests of another run, goes on after a failure,
and ends with where the time went, the runners' own closing lines and one total. Results come from what the runners
print, never from this file.

usage: tools/test [--list] [--quick | --long] [--rounds N] [NAME...]

  NAME        only these checks; all of --list but tidy without one
  --quick     the inner loop: native, and in the browser the smoke test and the changed tests, when what the site is
              made of has changed since main
  --long      the same as --rounds 100000
  --rounds N  at least so many rounds in the native tests of random plans, links, libraries and framing lists
"""
import json
import os
import re
import subprocess
import sys
import threading
import time
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
CORES = os.cpu_count() or 1
COLOUR = re.compile(r"\x1b\[[0-9;]*m")
MANY_ROUNDS = 100_000
SHOWN = 10
# Seconds that each file of browser tests took when it last ran here: the longest start first.
LAST_TIMES = ROOT / "build/browser_times.json"
# What the site is made of.
SITE = ("CMakeLists.txt", "CMakePresets.json", "core/", "web/", "shaders/", "tests/browser/", "tools/pack", "tools/lib/",
        "tools/cmake/")


@dataclass
class Spent:
    """Wall time and processor time of some commands, seconds."""
    wall: float = 0
    cpu: float = 0

    def __iadd__(self, other):
        self.wall += other.wall
        self.cpu += other.cpu
        return self


@dataclass
class Step:
    """One check: its builds, then its tests run in order until one fails; reader finds its numbers in what the
    commands printed. each: every command of tests is a program of its own, several run at a time on an otherwise
    quiet machine, and each is read by itself."""
    name: str
    what: str
    reader: callable
    builds: list = field(default_factory=list)
    tests: list = field(default_factory=list)
    each: bool = False
    built: threading.Event = field(default_factory=threading.Event)
    fine: bool = True
    lines: list = field(default_factory=list)
    passed: int = 0
    failed: int = 0
    closing: list = field(default_factory=list)
    building: Spent = field(default_factory=Spent)
    testing: Spent = field(default_factory=Spent)


def ctest(tree):
    return ["ctest", "--test-dir", f"build/{tree}", "--verbose", "--output-on-failure", "-j", str(CORES), "--timeout", "1500",
            "--no-tests=error"]


def browser_files():
    """The longest first, as last time; what has never run here by the size of its text."""
    try:
        last = json.loads(LAST_TIMES.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        last = {}
    files = [str(path.relative_to(ROOT)) for path in (ROOT / "tests/browser").glob("*.test.mjs")]
    return sorted(files, key=lambda name: (-last.get(name, 0), -(ROOT / name).stat().st_size, name))


def browser_tests(files):
    return [["node", "--test", "--test-reporter=spec", name] for name in files]


# ---- readers: (lines, all commands succeeded) -> (passed, failed, closing lines)

def read_ctest(lines, fine):
    """doctest's or node's own counts where a test printed them; a ctest test without them counts as one."""
    cases, results, closing = {}, {}, []
    for line in lines:
        found = re.match(r"(\d+): \[doctest\] test cases:\s*\d+\s*\|\s*(\d+) passed\s*\|\s*(\d+) failed", line)
        if found:
            cases[found[1]] = (int(found[2]), int(found[3]))
        if re.match(r"\d+: (\[doctest\] (test cases|assertions):|(ℹ|#) (pass|fail) \d+$)", line):
            closing.append(line.split(": ", 1)[1])
        found = re.match(r"(\d+): (?:ℹ|#) (pass|fail) (\d+)$", line)
        if found:
            so_far = cases.get(found[1], (0, 0))
            counted = (int(found[3]) * (found[2] == "pass"), int(found[3]) * (found[2] == "fail"))
            cases[found[1]] = (so_far[0] + counted[0], so_far[1] + counted[1])
        result = re.match(r"\s*\d+/\d+ Test\s+#(\d+): \S+ \.*\s*(\S.*)", line)
        if result:
            results[result[1]] = result[2].startswith("Passed")
        if re.match(r"\d+% tests passed, \d+ tests failed out of \d+", line):
            closing.append(line)
    passed = failed = 0
    for number, good in results.items():
        good_cases, bad_cases = cases.get(number, (int(good), int(not good)))
        passed += good_cases
        # A run that failed without a failed case (a sanitizer's finding, a crash) or without any case is a failure.
        failed += max(bad_cases, int(not good), int(good_cases + bad_cases == 0))
    return passed, failed or (0 if fine else 1), closing


def read_node(lines, fine):
    numbers = {kind: int(count) for kind, count in
               (match.groups() for match in (re.match(r"(?:ℹ|#) (tests|pass|fail|cancelled) (\d+)$", l) for l in lines) if match)}
    closing = [line for line in lines if re.match(r"(ℹ|#) (tests|pass|fail) \d+$", line)]
    failed = numbers.get("fail", 0) + numbers.get("cancelled", 0)
    return numbers.get("pass", 0), failed or (0 if fine and numbers.get("tests") else 1), closing


def read_one(prefix):
    """A check that is one pass or one failure; its closing line starts with the prefix."""
    def read(lines, fine):
        return int(fine), int(not fine), [line for line in lines if line.startswith(prefix)][-1:]
    return read


def all_steps():
    """In the order of building: the tests of one tree run while the next one is built."""
    return [
        Step("format", "layout of the C++ sources", read_one("check_format:"), tests=[["tools/check_format"]]),
        Step("native", "core, command line and UI tests; layers", read_ctest,
             builds=[["tools/build", "native"]], tests=[ctest("native")]),
        Step("asan", "the same under the address and undefined-behaviour sanitizers", read_ctest,
             builds=[["tools/build", "asan"]], tests=[ctest("asan")]),
        Step("wasm", "the core tests as WASM under Node", read_ctest,
             builds=[["tools/build", "wasm-tests"]], tests=[ctest("wasm-tests")]),
        Step("web", "the site builds", read_one(("ninja:", "[")), builds=[["tools/build", "web"]]),
        Step("size", "the download against its budget", read_one("size:"), tests=[["tools/size_report"]]),
        Step("browser", "the site in Chromium and Firefox", read_node, tests=browser_tests(browser_files()), each=True),
        Step("tidy", "clang-tidy", read_one("tidy:"), tests=[["tools/tidy"]]),
    ]


# Only run when named (tools/test tidy): slow from a clean checkout, and no sign of a program that does not work.
ON_REQUEST = {"tidy"}


# ---- running

printing = threading.Lock()


def say(text):
    with printing:
        print(text, flush=True)


def is_duration(line):
    """doctest's time for each case: hundreds of lines that only the table of the slowest reads."""
    return re.match(r"\d+: \d+\.\d+ s: ", line)


def run_command(command, name, aloud=True, rounds=0):
    """Runs one command, passing on what it prints as it comes; returns (it succeeded, lines, time spent)."""
    environment = {**os.environ, "CTEST_OUTPUT_ON_FAILURE": "1"}
    if rounds:
        environment["WIDEGATE_ROUNDS"] = str(rounds)
    start = time.monotonic()
    process = subprocess.Popen(command, cwd=ROOT, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                               stderr=subprocess.STDOUT, text=True, errors="replace", env=environment)
    lines = []
    with process.stdout:
        for line in process.stdout:
            line = COLOUR.sub("", line.rstrip("\n"))
            lines.append(line)
            if aloud and not is_duration(line):
                say(f"{name}| {line}")
    _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    return process.returncode == 0, lines, Spent(time.monotonic() - start, used.ru_utime + used.ru_stime)


def build_all(steps):
    for step in steps:
        for command in step.builds:
            if step.fine:
                step.fine, said, spent = run_command(command, step.name)
                step.lines += said
                step.building += spent
        step.built.set()


def test_in_order(step, rounds):
    for command in step.tests:
        if step.fine:
            step.fine, said, spent = run_command(command, step.name, rounds=rounds if step.name == "native" else 0)
            step.lines += said
            step.testing += spent
    step.passed, step.failed, step.closing = step.reader(step.lines, step.fine)


def test_each(step):
    """Returns {last word of the command, which is the file: seconds}."""
    def run(command):
        fine, lines, spent = run_command(command, step.name, aloud=False)
        say("\n".join([f"\n---- {command[-1]} ({spent.wall:.0f} s)", *lines]))
        return fine, lines, spent

    start = time.monotonic()
    with ThreadPoolExecutor(CORES) as pool:
        results = list(pool.map(run, step.tests))
    for fine, lines, spent in results:
        passed, failed, _ = step.reader(lines, fine)
        step.passed += passed
        step.failed += failed
        step.lines += lines
        step.testing.cpu += spent.cpu
    step.testing.wall = time.monotonic() - start
    step.closing = [f"{len(results)} files, {step.passed} passed, {step.failed} failed"]
    return {command[-1]: spent.wall for command, (_, _, spent) in zip(step.tests, results)}


def keep_times(files):
    try:
        last = json.loads(LAST_TIMES.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        last = {}
    LAST_TIMES.write_text(json.dumps({**last, **files}, indent=1) + "\n", encoding="utf-8")


def run_all(steps, rounds):
    """Returns the seconds of each file of browser tests."""
    builder = threading.Thread(target=build_all, args=[steps])
    builder.start()
    files = {}
    for step in steps:
        step.built.wait()
        if step.each:
            # Pages that are drawn by the processor want it for themselves.
            builder.join()
        say(f"\n==== {step.name}: {step.what}")
        if step.each:
            files = test_each(step)
            keep_times(files)
        else:
            test_in_order(step, rounds)
    builder.join()
    return files


# ---- what to run

def changed_files():
    """What differs from where this branch left main, as paths from the root; None where there is no main."""
    def git(*words):
        return subprocess.run(["git", *words], cwd=ROOT, capture_output=True, text=True, check=False)

    for main in ("origin/main", "main"):
        base = git("merge-base", "HEAD", main)
        if base.returncode == 0:
            changed = git("diff", "--name-only", base.stdout.strip()).stdout.splitlines()
            return changed + git("ls-files", "--others", "--exclude-standard").stdout.splitlines()
    return None


def quick_steps(steps, changed):
    """The inner loop's steps, cut down to what the changed files can have broken."""
    by_name = {step.name: step for step in steps}
    names = ["format", "native"]
    if changed is None or any(path.startswith(SITE) for path in changed):
        names += ["web", "browser"]
        wanted = {"tests/browser/smoke.test.mjs", *(changed or [])}
        by_name["browser"].tests = [command for command in by_name["browser"].tests if command[-1] in wanted]
    return [by_name[name] for name in names]


def parsed(words):
    """(names, quick, rounds) of a command line."""
    names, quick, rounds = [], False, 0
    words = list(words)
    while words:
        word = words.pop(0)
        if word == "--list":
            print("\n".join(f"{step.name:10}{step.what}" for step in all_steps()))
            sys.exit(0)
        elif word in ("-h", "--help"):
            print(__doc__)
            sys.exit(0)
        elif word == "--quick":
            quick = True
        elif word == "--long":
            rounds = MANY_ROUNDS
        elif word == "--rounds":
            count = words.pop(0) if words else ""
            if not re.fullmatch(r"[1-9]\d{0,8}", count):
                sys.exit(f'tools/test: --rounds is "{count}": give a whole number from 1 to 999999999')
            rounds = int(count)
        else:
            names.append(word)
    if quick and names:
        sys.exit("tools/test: --quick chooses the checks itself: leave out the names")
    return names, quick, rounds


def chosen(names, quick):
    steps = all_steps()
    known = {step.name for step in steps}
    for name in names:
        if name not in known:
            sys.exit(f'tools/test: no check called "{name}": choose from {", ".join(sorted(known))}')
    if quick:
        return quick_steps(steps, changed_files())
    return [step for step in steps if step.name in names or not (names or step.name in ON_REQUEST)]


# ---- where the time went

def slowest_tests(step):
    """(seconds, name) of every test that told its time: doctest's cases, node's tests, ctest's programs."""
    found = []
    for line in step.lines:
        case = re.match(r"\d+: (\d+\.\d+) s: (.+)", line)
        whole = re.match(r"\s*\d+/\d+ Test\s+#\d+: (\S+) .* (\d+\.\d+) sec$", line)
        single = re.match(r"(?:\d+: )?\s*[✔✖] (.+) \((\d+(?:\.\d+)?)ms\)$", line)
        if case:
            found.append((float(case[1]), f"{step.name}: {case[2]}"))
        elif whole:
            found.append((float(whole[2]), f"{step.name}: all of {whole[1]}"))
        elif single:
            found.append((float(single[2]) / 1000, f"{step.name}: {single[1]}"))
    return found


def print_times(steps, files, wall):
    print("\n==== where the time went: seconds, and seconds of processor")
    print(f"{'':10}{'build':>8}{'cpu':>8}{'tests':>8}{'cpu':>8}")
    for step in steps:
        print(f"{step.name:10}{step.building.wall:8.0f}{step.building.cpu:8.0f}{step.testing.wall:8.0f}{step.testing.cpu:8.0f}")
    cpu = sum(step.building.cpu + step.testing.cpu for step in steps)
    print(f"all: {wall:.0f} s, {cpu:.0f} s of processor on {CORES} cores")
    tests = sorted((test for step in steps for test in slowest_tests(step)), reverse=True)
    for title, rows in (("slowest browser files", sorted(((s, name) for name, s in files.items()), reverse=True)),
                        ("slowest tests", tests)):
        if rows:
            print(f"{title}:")
        for seconds, name in rows[:SHOWN]:
            print(f"{seconds:8.1f} s  {name}")


def main():
    names, quick, rounds = parsed(sys.argv[1:])
    steps = chosen(names, quick)
    start = time.monotonic()
    files = run_all(steps, rounds)
    print_times(steps, files, time.monotonic() - start)
    print("\n==== closing lines")
    for step in steps:
        print(f"{step.name} ({step.building.wall + step.testing.wall:.0f} s): {step.passed} passed, {step.failed} failed")
        for line in step.closing:
            print(f"  {line}")
    passed, failed = sum(s.passed for s in steps), sum(s.failed for s in steps)
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
