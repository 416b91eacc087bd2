#!/usr/bin/env python3
"""Validates plans, shows, catalogues, lessons and reports with an independent JSON Schema validator.

usage: validate_documents.py WIDEGATE SOURCE_FOLDER

The schemas of docs/schema must hold for every example plan, as written and in the canonical form that comes out of a
link, for every example show and the plans in it, for every file of the built-in catalogue, every built-in lesson and
every report; and what they refuse, `widegate check` refuses too.
"""
import copy
import json
import subprocess
import sys
import warnings
from pathlib import Path

warnings.filterwarnings("ignore", category=DeprecationWarning)  # RefResolver: the way that every version has
from jsonschema import Draft202012Validator, RefResolver

# Changes to a good plan that a schema can see: where, and what is put there.
WRONG_PLAN_VALUES = [
    ("/widegate_plan", 2), ("/lense", {}), ("/lens/focal", 3), ("/lens/focal_mm", "35"), ("/lens/focal_mm", 0),
    ("/lens/focal_mm", None), ("/lens/squeeze", 5), ("/lens/squeeze", "NaN"), ("/run/sensor_rate", "fast"),
    ("/run/sensor_rate", -24), ("/run/shutter_angle_deg", 0), ("/deliverable/frame_lines", []),
    ("/deliverable/width_pixels", -1920), ("/deliverable/width_pixels", 1e30), ("/title", "two\nlines"),
    ("/store/verification", "some"), ("/store/card", ""), ("/commission/lossless", 1), ("/own/cars", []),
    ("/own/cards", [{"id": "x"}]),
]
WRONG_SHOW_VALUES = [
    ("/widegate_show", 2), ("/parts", []), ("/part", []), ("/archive/drives", "both"), ("/archive/station_hours_per_day", 0),
    ("/calendar/weekdays_off", ["sun"]), ("/calendar/shooting_days", 0), ("/calendar/start", 20270301),
    ("/people", [{}]), ("/people", [{"name": "A", "price": {"amount": -1, "currency": "EUR"}}]), ("/rent", [{"name": "A", "weeks": 1.5}]),
    ("/prices", [{"what": "lunch"}]), ("/cards", [{"count": 2}]), ("/title", "two\nlines"),
]
WRONG_CATALOGUES = [
    {}, {"widegate_catalogue": 2}, {"widegate_catalogue": 1, "camera": []},
    {"widegate_catalogue": 1, "codecs": [{"id": "c", "name": "C", "source": "s"}]},
    {"widegate_catalogue": 1, "codecs": [{"id": "c", "name": "C", "source": "s", "packed": {}, "ratio": {"bits_per_pixel": 8}}]},
    {"widegate_catalogue": 1, "tapes": [{"id": "T!", "name": "T", "source": "s", "capacity_bytes": 1e12, "write_bytes_per_s": 1e8}]},
    {"widegate_catalogue": 1, "cameras": [{"id": "c", "name": "C", "source": "s", "width_photosites": 100, "height_photosites": 100, "modes": []}]},
]
# Changes to a good lesson.
WRONG_LESSON_VALUES = [
    ("/widegate_lesson", 2), ("/title", ""), ("/aims", "x"), ("/steps", []), ("/steps", 3), ("/steps/0/word", "x"),
    ("/steps/0/words", 3), ("/steps/0/picture", "photo"), ("/steps/0/figures", []), ("/steps/0/figures/0/figure", 1),
    ("/steps/1/figures/0/does", "jumps"), ("/steps/1/figures/0/within", -1), ("/steps/1/plan", []),
    ("/steps/1/plan/lens", {"focal": 3}), ("/steps/1/plan/mandate", {"photosites": 0}),
    ("/steps/1/plan/run", {"sensor_rate": "fast"}), ("/steps/1/against", -1),
]


class Checks:
    def __init__(self, widegate, folder):
        self.widegate = widegate
        self.schemas = {}
        for file in sorted((folder / "docs/schema").glob("*.schema.json")):
            self.schemas[file.name] = json.loads(file.read_text())
            Draft202012Validator.check_schema(self.schemas[file.name])
        self.made = 0
        self.failures = []

    def run(self, *arguments, given=None):
        return subprocess.run([self.widegate, *arguments], input=given, capture_output=True, text=True)

    def errors(self, kind, document):
        schema = self.schemas[f"{kind}.schema.json"]
        resolver = RefResolver("", schema, store=self.schemas)
        return [f"{error.json_path}: {error.message[:200]}"
                for error in Draft202012Validator(schema, resolver=resolver).iter_errors(document)]

    def expect(self, what, holds, detail=""):
        self.made += 1
        if not holds:
            self.failures.append(f"{what}: {detail}")

    def valid(self, what, kind, document):
        errors = self.errors(kind, document)
        self.expect(what, not errors, "; ".join(errors[:3]))

    def refused(self, what, kind, document):
        self.expect(f"{what}: schema", self.errors(kind, document), "not refused")
        result = self.run("check", "-", given=json.dumps(document))
        self.expect(f"{what}: widegate check", result.returncode == 2, f"exit code {result.returncode}")


def put(document, pointer, value):
    place = document
    *path, last = pointer.strip("/").split("/")
    for step in path:
        place = place[int(step)] if isinstance(place, list) else place.setdefault(step, {})
    place[last] = value


def main():
    widegate, folder = sys.argv[1], Path(sys.argv[2])
    checks = Checks(widegate, folder)
    plans = sorted((folder / "docs/examples").glob("*.plan.json"))
    checks.expect("example plans", len(plans) >= 8, "too few")
    for file in plans:
        plan = json.loads(file.read_text())
        checks.valid(file.name, "plan", plan)
        link = checks.run("link", str(file)).stdout.strip()
        canonical = checks.run("open", link)
        checks.expect(f"{file.name} through a link", canonical.returncode == 0, canonical.stderr)
        checks.valid(f"{file.name}, canonical", "plan", json.loads(canonical.stdout))
        report = checks.run("evaluate", "--json", str(file))
        checks.valid(f"{file.name}, its report", "report", json.loads(report.stdout))
        checks.expect(f"{file.name}, table", max(map(len, checks.run("evaluate", str(file)).stdout.splitlines())) <= 80)
    good = json.loads(plans[0].read_text())
    for pointer, value in WRONG_PLAN_VALUES:
        wrong = copy.deepcopy(good)
        put(wrong, pointer, value)
        checks.refused(f"{pointer} = {value!r}", "plan", wrong)
    shows = sorted((folder / "docs/examples").glob("*.show.json"))
    checks.expect("example shows", len(shows) >= 1, "too few")
    for file in shows:
        show = json.loads(file.read_text())
        checks.valid(file.name, "show", show)
        checks.expect(f"{file.name}, table", max(map(len, checks.run("show", str(file)).stdout.splitlines())) <= 80)
        for pointer, value in WRONG_SHOW_VALUES:
            wrong = copy.deepcopy(show)
            put(wrong, pointer, value)
            checks.refused(f"{pointer} = {value!r}", "show", wrong)
    for file in sorted((folder / "core/catalogue").glob("*.json")):
        checks.valid(file.name, "catalogue", json.loads(file.read_text()))
    for document in WRONG_CATALOGUES:
        checks.refused(json.dumps(document)[:80], "catalogue", document)
    lessons = sorted((folder / "docs/lessons").glob("*.lesson.json"))
    checks.expect("lessons", len(lessons) >= 10, "too few")
    for file in lessons:
        checks.valid(file.name, "lesson", json.loads(file.read_text()))
        checks.expect(f"{file.name}, check", checks.run("check", "--strict", str(file)).returncode == 0, "not fine")
        width = max(map(len, checks.run("lesson", str(file)).stdout.splitlines()))
        checks.expect(f"{file.name}, table", width <= 80, f"{width} columns")
    good = json.loads(lessons[0].read_text())
    for pointer, value in WRONG_LESSON_VALUES:
        wrong = copy.deepcopy(good)
        put(wrong, pointer, value)
        checks.refused(f"{pointer} = {value!r}", "lesson", wrong)
    for failure in checks.failures:
        print(failure, file=sys.stderr)
    print(f"{checks.made} checks, {len(checks.failures)} failed")
    return 1 if checks.failures else 0


if __name__ == "__main__":
    sys.exit(main())
