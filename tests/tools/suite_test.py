"""The numbers that tools/test reads from what the runners print: nothing that failed may be counted as passed."""
import sys
import unittest
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "tools/lib"))
from suite import read_ctest, read_node, read_one  # noqa: E402

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
        self.assertEqual(read_node(["ℹ pass 11", "ℹ fail 2", "ℹ cancelled 1"], False)[:2], (11, 3))
        self.assertEqual(read_node([], False)[:2], (0, 1))

    def test_one(self):
        self.assertEqual(read_one("tidy:")(["tidy: 3 files"], True), (1, 0, ["tidy: 3 files"]))
        self.assertEqual(read_one("tidy:")([], False), (0, 1, []))


unittest.main()
