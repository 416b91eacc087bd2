"""What tools/test runs, and the numbers it reads from what the runners print: nothing that failed may be counted as
passed."""
import contextlib
import io
import sys
import unittest
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "tools/lib"))
import suite  # noqa: E402
from suite import Step, read_ctest, read_node, read_one  # noqa: E402

DOCTEST = "{}: [doctest] test cases: {} |  {} passed | {} failed | 0 skipped"


class ReadingCtest(unittest.TestCase):
    def numbers(self, lines, fine):
        return read_ctest(lines, fine)[:2]

    def test_counts_cases_where_a_runner_names_them_and_tests_elsewhere(self):
        lines = [DOCTEST.format(1, 10, 9, 1), "1/3 Test #1: core .....***Failed    1.50 sec",
                 "2: # pass 7", "2: # fail 0", "2/3 Test #2: command_line ...   Passed    0.50 sec",
                 "3/3 Test #3: layers .......   Passed    0.50 sec"]
        self.assertEqual(self.numbers(lines, False), (17, 1))

    def test_a_crash_after_good_cases_is_a_failure(self):
        lines = [DOCTEST.format(4, 3, 3, 0), "1/1 Test #4: ui ....Subprocess aborted***Exception:   0.00 sec"]
        self.assertEqual(self.numbers(lines, False), (3, 1))

    def test_a_runner_without_a_single_case_is_a_failure(self):
        lines = [DOCTEST.format(1, 0, 0, 0), "1/1 Test #1: core ......   Passed    0.00 sec"]
        self.assertEqual(self.numbers(lines, True), (0, 1))

    def test_a_time_out_and_a_build_that_stopped_are_failures(self):
        self.assertEqual(self.numbers(["1/1 Test #1: core .........***Timeout 600 sec"], False), (0, 1))
        self.assertEqual(self.numbers(["ninja: build stopped: subcommand failed."], False), (0, 1))


class ReadingTheOthers(unittest.TestCase):
    def test_node(self):
        self.assertEqual(read_node(["ℹ tests 14", "ℹ pass 11", "ℹ fail 2", "ℹ cancelled 1"], False)[:2], (11, 3))
        self.assertEqual(read_node(["ℹ tests 11", "ℹ pass 11", "ℹ fail 0"], True)[:2], (11, 0))
        self.assertEqual(read_node([], False)[:2], (0, 1))

    def test_node_without_a_single_test_is_a_failure(self):
        self.assertEqual(read_node(["ℹ tests 0", "ℹ pass 0", "ℹ fail 0"], True)[:2], (0, 1))
        self.assertEqual(read_node([], True)[:2], (0, 1))

    def test_one(self):
        self.assertEqual(read_one("tidy:")(["tidy: 3 files"], True), (1, 0, ["tidy: 3 files"]))
        self.assertEqual(read_one("tidy:")([], False), (0, 1, []))


def printed(lines, code=0):
    """A command that prints these lines and ends with this code."""
    return [sys.executable, "-c", f"print({chr(10).join(lines)!r}); raise SystemExit({code})"]


def run(*steps, rounds=0):
    suite.LAST_TIMES = Path("/dev/null")
    with contextlib.redirect_stdout(io.StringIO()) as said:
        files = suite.run_all(list(steps), rounds)
    return files, said.getvalue()


class Running(unittest.TestCase):
    def test_a_failed_build_is_a_failure_and_its_tests_do_not_run(self):
        broken = Step("broken", "", read_ctest, builds=[printed(["error"], 1)], tests=[printed(["ran anyway"])])
        fine = Step("fine", "", read_one("x"), builds=[printed(["built"])], tests=[printed(["x: 3 files"])])
        _, said = run(broken, fine)
        self.assertEqual((broken.passed, broken.failed), (0, 1))
        self.assertNotIn("ran anyway", said)
        self.assertEqual((fine.passed, fine.failed, fine.closing), (1, 0, ["x: 3 files"]))

    def test_files_run_each_by_itself_and_none_is_lost(self):
        good = printed(["✔ opens (1500.5ms)", "ℹ tests 2", "ℹ pass 2", "ℹ fail 0"])
        bad = printed(["ℹ tests 2", "ℹ pass 1", "ℹ fail 1"], 1)
        crashed = printed(["nothing was counted"], 139)
        step = Step("browser", "", read_node, tests=[[*good, "a"], [*bad, "b"], [*crashed, "c"]], each=True)
        files, said = run(step)
        self.assertEqual((step.passed, step.failed), (3, 2))
        self.assertEqual(sorted(files), ["a", "b", "c"])
        self.assertIn("nothing was counted", said)
        self.assertEqual(suite.slowest_tests(step), [(1.5005, "browser: opens")])

    def test_more_rounds_are_for_the_native_tests(self):
        tell = [sys.executable, "-c", "import os; print('x:', os.environ.get('WIDEGATE_ROUNDS', 'usual'))"]
        native, other = (Step(name, "", read_one("x"), tests=[tell]) for name in ("native", "asan"))
        run(native, other, rounds=7)
        self.assertEqual(native.closing + other.closing, ["x: 7", "x: usual"])


class Choosing(unittest.TestCase):
    def test_the_words_of_the_command_line(self):
        self.assertEqual(suite.parsed(["native", "--rounds", "500"]), (["native"], False, 500))
        self.assertEqual(suite.parsed(["--long"]), ([], False, 100000))
        for wrong in (["--rounds"], ["--rounds", "-3"], ["--rounds", "many"], ["--quick", "web"]):
            with self.assertRaises(SystemExit, msg=wrong):
                suite.parsed(wrong)

    def test_everything_runs_unless_named(self):
        names = [step.name for step in suite.chosen([], False)]
        self.assertEqual(names, ["format", "native", "asan", "wasm", "web", "size", "browser"])
        self.assertEqual([step.name for step in suite.chosen(["size", "web"], False)], ["web", "size"])
        with self.assertRaises(SystemExit):
            suite.chosen(["webb"], False)

    def test_every_browser_test_runs(self):
        named = {command[-1] for step in suite.chosen(["browser"], False) for command in step.tests}
        there = {f"tests/browser/{path.name}" for path in (suite.ROOT / "tests/browser").glob("*.test.mjs")}
        self.assertEqual(named, there)

    def quick(self, changed):
        steps = suite.quick_steps(suite.all_steps(), changed)
        return [step.name for step in steps], [command[-1] for step in steps if step.each for command in step.tests]

    def test_the_inner_loop_takes_the_browser_when_the_site_may_differ(self):
        smoke = "tests/browser/smoke.test.mjs"
        self.assertEqual(self.quick(["docs/fdl.md", "tests/core/run_test.cpp"]), (["format", "native"], []))
        self.assertEqual(self.quick(["core/run.cpp"]), (["format", "native", "web", "browser"], [smoke]))
        self.assertEqual(self.quick(None), (["format", "native", "web", "browser"], [smoke]))
        twin = "tests/browser/twin.test.mjs"
        self.assertEqual(sorted(self.quick([twin, "tests/browser/gone.test.mjs"])[1]), [smoke, twin])


class Telling(unittest.TestCase):
    def test_the_slowest_tests_of_every_runner(self):
        step = Step("native", "", read_ctest)
        step.lines = ["1: 12.500000 s: random links", "2: ✔ evaluates (75ms)", "2: ℹ pass 1", "1: something else",
                      "1/2 Test #1: core ......   Passed   14.00 sec"]
        self.assertEqual(suite.slowest_tests(step), [(12.5, "native: random links"), (0.075, "native: evaluates"),
                                                     (14, "native: all of core")])


unittest.main()
