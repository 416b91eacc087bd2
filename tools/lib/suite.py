"""The whole list of checks behind tools/test: runs them in order, goes on after a failure, and ends with the
runners' own closing lines and one total. Results come from what the runners print, never from this file."""
import os
import re
import subprocess
import sys
import time
from dataclasses import dataclass, field
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
JOBS = str(os.cpu_count())
COLOUR = re.compile(r"\x1b\[[0-9;]*m")


@dataclass
class Step:
    """One check: its commands run in order until one fails; reader finds its numbers in what they printed."""
    name: str
    what: str
    commands: list
    reader: callable
    passed: int = 0
    failed: int = 0
    seconds: float = 0
    closing: list = field(default_factory=list)


def ctest(tree):
    return ["ctest", "--test-dir", f"build/{tree}", "--verbose", "--output-on-failure", "-j", JOBS, "--timeout", "1500",
            "--no-tests=error"]


def browser_tests():
    files = sorted(str(path.relative_to(ROOT)) for path in (ROOT / "tests/browser").glob("*.test.mjs"))
    return ["node", "--test", "--test-reporter=spec", *files]


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
    return numbers.get("pass", 0), failed or (0 if fine else 1), closing


def read_one(prefix):
    """A check that is one pass or one failure; its closing line starts with the prefix."""
    def read(lines, fine):
        return int(fine), int(not fine), [line for line in lines if line.startswith(prefix)][-1:]
    return read


STEPS = [
    Step("format", "layout of the C++ sources", [["tools/check_format"]], read_one("check_format:")),
    Step("native", "core, command line and UI tests; layers", [["tools/build", "native"], ctest("native")], read_ctest),
    Step("asan", "the same under the address and undefined-behaviour sanitizers",
         [["tools/build", "asan"], ctest("asan")], read_ctest),
    Step("wasm", "the core tests as WASM under Node", [["tools/build", "wasm-tests"], ctest("wasm-tests")], read_ctest),
    Step("web", "the site builds", [["tools/build", "web"]], read_one(("ninja:", "["))),
    Step("browser", "the site in Chromium and Firefox", [browser_tests()], read_node),
    Step("tidy", "clang-tidy", [["tools/tidy"]], read_one("tidy:")),
    Step("size", "the download against its budget", [["tools/size_report"]], read_one("size:")),
]

# Only run when named (tools/test tidy): slow from a clean checkout, and no sign of a program that does not work.
ON_REQUEST = {"tidy"}


def run_command(command):
    """Runs one command, passing on what it prints as it comes; returns (it succeeded, lines)."""
    environment = {**os.environ, "CTEST_OUTPUT_ON_FAILURE": "1"}
    process = subprocess.Popen(command, cwd=ROOT, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                               stderr=subprocess.STDOUT, text=True, errors="replace", env=environment)
    lines = []
    for line in process.stdout:
        line = COLOUR.sub("", line.rstrip("\n"))
        print(line, flush=True)
        lines.append(line)
    return process.wait() == 0, lines


def run_step(step):
    print(f"\n==== {step.name}: {step.what}", flush=True)
    start, fine, lines = time.monotonic(), True, []
    for command in step.commands:
        fine, said = run_command(command)
        lines += said
        if not fine:
            break
    step.passed, step.failed, step.closing = step.reader(lines, fine)
    step.seconds = time.monotonic() - start


def chosen(names):
    known = {step.name for step in STEPS}
    if names == ["--list"]:
        print("\n".join(f"{step.name:10}{step.what}" for step in STEPS))
        sys.exit(0)
    for name in names:
        if name not in known:
            sys.exit(f'tools/test: no check called "{name}": choose from {", ".join(sorted(known))}')
    return [step for step in STEPS if step.name in names or not (names or step.name in ON_REQUEST)]


def main():
    steps = chosen(sys.argv[1:])
    for step in steps:
        run_step(step)
    print("\n==== closing lines")
    for step in steps:
        print(f"{step.name} ({step.seconds:.0f} s): {step.passed} passed, {step.failed} failed")
        for line in step.closing:
            print(f"  {line}")
    passed, failed = sum(s.passed for s in steps), sum(s.failed for s in steps)
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
