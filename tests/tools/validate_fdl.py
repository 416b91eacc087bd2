#!/usr/bin/env python3
"""Validates what `widegate fdl` writes with an independent JSON Schema validator.

usage: validate_fdl.py WIDEGATE SCHEMA [PLAN.json ...]

SCHEMA is the JSON Schema published with the ASC FDL standard. Every plan given, and variations of a new plan, are
exported, sent through every built-in delivery, and imported again; every document written must be valid.
"""
import json
import subprocess
import sys
import tempfile
from pathlib import Path

from jsonschema import Draft202012Validator

DELIVERIES = ("UHD", "SCOPE_4K", "FLAT_4K", "HD_PROXY", "VFX_PULL")
LINE = "/deliverable/frame_lines/0"
VARIATIONS = (
    [],
    ["/lens/squeeze=2"],
    ["/lens/squeeze=9/5", f"{LINE}/protection=1/10"],
    ["/lens/image_circle_mm=31.5", f"{LINE}/protection=1/20"],
    ["/lens/image_circle_mm=10"],
    [f"{LINE}/aspect=1", f"{LINE}/anchor/kind=top", f"{LINE}/name=Ünïcode \"q\""],
    ["/title=x", "/format/camera=birch"],
    ["/format/camera=cedar"],
    ["/format/camera=dogwood", "/lens/set=dart"],
)


class Checker:
    def __init__(self, program, schema, folder):
        self.program, self.folder, self.count = program, folder, 0
        self.validator = Draft202012Validator(schema)

    def run(self, *arguments):
        result = subprocess.run([self.program, *arguments], capture_output=True, text=True)
        if result.returncode != 0:
            sys.exit(f"validate_fdl: {' '.join(arguments)}: exit code {result.returncode}\n{result.stderr}")
        return result.stdout

    def valid(self, name, text):
        """Ends the run unless the text is valid; gives the file it was put in."""
        for error in self.validator.iter_errors(json.loads(text)):
            sys.exit(f"validate_fdl: {name}: /{'/'.join(map(str, error.absolute_path))}: {error.message}")
        self.count += 1
        file = self.folder / f"{self.count}.fdl"
        file.write_text(text, encoding="utf-8")
        self.run("check", str(file))
        return str(file)

    def plan(self, name, arguments):
        exported = self.valid(name, self.run("fdl", "export", *arguments))
        for delivery in DELIVERIES:
            self.valid(f"{name}, {delivery}", self.run("fdl", "apply", exported, "--delivery", delivery))
        self.run("fdl", "import", exported)


def main():
    program, schema_file, *plans = sys.argv[1:]
    schema = json.loads(Path(schema_file).read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(schema)
    with tempfile.TemporaryDirectory() as folder:
        checker = Checker(program, schema, Path(folder))
        if checker.validator.is_valid({"uuid": "x", "version": {"major": 2, "minor": 0}, "other": 1}):
            sys.exit("validate_fdl: the schema refuses nothing")
        new_plan = Path(folder) / "new.plan.json"
        new_plan.write_text('{"widegate_plan": 1}', encoding="utf-8")
        for settings in VARIATIONS:
            sets = [word for setting in settings for word in ("--set", setting)]
            checker.plan(" ".join(settings) or "new plan", [str(new_plan), *sets])
        for plan in plans:
            checker.plan(plan, [plan])
        print(f"validate_fdl: {checker.count} documents valid")


main()
