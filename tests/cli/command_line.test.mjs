// The command line from outside: what goes in, what comes out on which stream, and the exit code.
// WIDEGATE is the command to run, words separated by blanks ("build/native/widegate").
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, test } from "node:test";
import { fileURLToPath } from "node:url";

const [program, ...firstArguments] = process.env.WIDEGATE.split(" ");
const examples = join(dirname(fileURLToPath(import.meta.url)), "../../docs/examples");
const folder = mkdtempSync(join(tmpdir(), "widegate-"));
after(() => rmSync(folder, { recursive: true }));

function run(args, input = "") {
  const result = spawnSync(program, [...firstArguments, ...args], { input, encoding: "utf8" });
  return { code: result.status, out: result.stdout, err: result.stderr };
}

function file(name, text) {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const example = (name) => join(examples, `${name}.plan.json`);
const plan = (members) => `{"widegate_plan": 1${members ? ", " + members : ""}}`;

test("a plan from a file and from standard input gives the same report", () => {
  const path = file("plan.json", plan('"lens": {"focal_mm": 50}'));
  const fromFile = run(["evaluate", "--json", path]);
  const fromInput = run(["evaluate", "--json", "-"], plan('"lens": {"focal_mm": 50}'));
  assert.equal(fromFile.code, 0);
  assert.equal(fromFile.err, "");
  assert.equal(fromInput.code, 0);
  assert.equal(fromFile.out, fromInput.out);
  assert.equal(JSON.parse(fromFile.out).see.focal_mm, 50);
});

test("the report has the keys that other tools rely on", () => {
  const report = JSON.parse(run(["evaluate", "--json", example("anamorphic")]).out);
  const keys = {
    headline: ["horizontal_fov_deg", "vertical_fov_deg", "diagonal_fov_deg", "mode_megapixels", "frame_megapixels",
      "minutes_per_card", "data_rate_megabits_per_s"],
    mode: ["width_photosites", "height_photosites", "width_mm", "height_mm", "diagonal_mm", "desqueezed_aspect"],
    frame: ["push_in_percent", "shift_horizontal_percent", "shift_vertical_percent", "max_rotation_deg"],
    cover: ["mode", "protected", "frame"],
    see: ["width_at_focus_m", "height_at_focus_m", "equivalent_focal_mm", "hyperfocal_m", "near_m", "far_m",
      "circle_of_confusion_mm"],
    resolve: ["recorded_width_pixels", "recorded_height_pixels", "horizontal_scale", "vertical_scale", "mandate"],
    run: ["exposure_s", "speed_factor", "exposure_change_stops", "flicker"],
    store: ["bytes_per_frame", "bytes_per_s", "bytes_per_minute", "frames_per_card", "minutes_per_card",
      "write_headroom", "cards_per_day", "cards_in_rotation", "offload_minutes_per_card", "offload_hours_per_day",
      "shoot_total_bytes", "copies_total_bytes", "tapes", "upload_hours", "cost"],
  };
  for (const [section, names] of Object.entries(keys)) {
    for (const name of names) assert.ok(name in report[section], `${section}.${name}`);
  }
  for (const area of ["mode", "protected", "frame"]) {
    for (const name of ["covered", "margin_mm", "uncovered_area_percent", "largest_covered_scale"]) {
      assert.ok(name in report.cover[area], `cover.${area}.${name}`);
    }
  }
  assert.deepEqual(Object.keys(report.resolve.mandate).filter((key) => ["required", "have", "met"].includes(key)),
    ["required", "have", "met"]);
  for (const note of report.notes) {
    for (const name of ["severity", "topic", "text", "have", "need", "unit"]) assert.ok(name in note, name);
  }
});

test("the table is readable at 80 columns for every example plan", () => {
  for (const name of readdirSync(examples).filter((each) => each.endsWith(".plan.json"))) {
    const { code, out } = run(["evaluate", join(examples, name)]);
    assert.equal(code, 0, name);
    for (const line of out.split("\n")) assert.ok([...line].length <= 80, `${name}: ${line}`);
    for (const section of ["Frame", "Cover", "See", "Resolve", "Run", "Store", "Verdicts"]) {
      assert.ok(out.includes(`\n${section}\n`), `${name}: ${section}`);
    }
  }
});

test("--strict tells a failed requirement by exit code 1, and only with it", () => {
  assert.equal(run(["evaluate", example("just-short")]).code, 0);
  assert.equal(run(["evaluate", "--strict", example("just-short")]).code, 1);
  assert.equal(run(["evaluate", "--strict", example("anamorphic")]).code, 0);
  const checked = run(["check", "--strict", example("just-short")]);
  assert.equal(checked.code, 1);
  assert.match(checked.err, /does not cover the frame line/);
});

test("--set changes fields as a person types them, in any order", () => {
  const { code, out } = run(["evaluate", "--json", "-", "--set", "/run/sensor_rate=23.976", "--set",
    "/shooting/recorded_hours_per_day=12", "--set", "/shooting/day_hours=14", "--set", "/lens/focal_mm=50 mm"], plan(""));
  assert.equal(code, 0);
  const report = JSON.parse(out);
  assert.equal(report.run.sensor_rate_fps, 23.976023976);
  assert.equal(report.see.focal_mm, 50);
});

test("--catalogue brings rows of one's own", () => {
  const own = file("own.json", JSON.stringify({ widegate_catalogue: 1, cards: [{ id: "tin", name: "Biscuit tin",
    source: "invented for this test", capacity_bytes: 1e12, write_bytes_per_s: 1e9, read_bytes_per_s: 1e9 }] }));
  const text = plan('"store": {"card": "tin"}');
  assert.equal(run(["evaluate", "-"], text).code, 2);
  const { code, out } = run(["evaluate", "--json", "--catalogue", own, "-"], text);
  assert.equal(code, 0);
  assert.equal(JSON.parse(out).store.usable_card_bytes, 1e12);
  assert.equal(run(["check", own]).out, `${own}: catalogue, fine\n`);
});

// Every kind of wrong input: what is written, then where and how the first line complains.
const wrong = [
  ["no text", "", /^-: \/: the end of the text at byte 0 \(line 1\) is not accepted; expected a JSON document$/],
  ["not JSON", "hello", /^-: \/: "hello" at byte 0 \(line 1\) is not accepted; expected a JSON document$/],
  ["NaN", plan('"lens": {"focal_mm": NaN}'), /^-: \/: "NaN}}" at byte 42 \(line 1\) is not accepted/],
  ["cut", '{"widegate_plan": 1, "lens": {', /^-: \/: the end of the text at byte 30/],
  ["unknown key", plan('"lense": {}'), /^-: \/lense: an object is not accepted; expected one of the keys widegate_plan, /],
  ["wrong type", plan('"lens": {"focal_mm": "35"}'), /^-: \/lens\/focal_mm: "35" is not accepted; expected a number from 1 to 3000 mm$/],
  ["negative size", plan('"deliverable": {"width_pixels": -1}'), /^-: \/deliverable\/width_pixels: -1 is not accepted; expected a whole number from 16 to 65535 px$/],
  ["zero size", plan('"deliverable": {"width_pixels": 0}'), /^-: \/deliverable\/width_pixels: 0 is not accepted/],
  ["absurd size", plan('"deliverable": {"width_pixels": 1e30}'), /^-: \/deliverable\/width_pixels: 1e\+30 is not accepted/],
  ["unknown mode", plan('"format": {"mode": "half"}'), /^-: \/format\/mode: "half" is not accepted; expected a sensor mode of this camera: open-gate, /],
  ["NaN as text", plan('"lens": {"focal_mm": "NaN"}'), /^-: \/lens\/focal_mm: "NaN" is not accepted/],
  ["rate of 0\/0", plan('"run": {"sensor_rate": "0/0"}'), /^-: \/run\/sensor_rate: "0\/0" is not accepted; expected a whole number or an exact fraction/],
  ["another version", '{"widegate_plan": 2}', /^-: \/widegate_plan: 2 is not accepted; expected 1, the version of this kind of document$/],
  ["repeated key", '{"widegate_plan": 1, "title": "a", "title": "b"}', /^-: \/title: "title" is not accepted; expected each key once in an object$/],
];
for (const [name, text, complaint] of wrong) {
  test(`wrong input: ${name}`, () => {
    for (const verb of ["evaluate", "check"]) {
      const { code, out, err } = run([verb, "-"], text);
      assert.equal(code, 2);
      assert.equal(out, "");
      const lines = err.trimEnd().split("\n");
      assert.match(lines[0], complaint);
      for (const line of lines) assert.match(line, /^-: .+ is not accepted; expected .+$/);
    }
  });
}

test("check names every file and goes on after a bad one", () => {
  const good = file("good.json", plan(""));
  const bad = file("bad.json", plan('"title": 1, "lens": {"f_number": -1}'));
  const { code, out, err } = run(["check", bad, good, join(folder, "missing.json")]);
  assert.equal(code, 2);
  assert.equal(out, `${good}: plan, fine\n`);
  assert.deepEqual(err.trimEnd().split("\n").map((line) => line.replace(folder, "")), [
    "/bad.json: /title: 1 is not accepted; expected text on one line, 0 to 120 bytes",
    "/bad.json: /lens/f_number: -1 is not accepted; expected a number from 0.5 to 64",
    "/missing.json: cannot be read: No such file or directory",
  ]);
});

test("check tells documents apart by their root", () => {
  assert.match(run(["check", "-"], "[1]").err, /^-: \/: a list is not accepted; expected a key at the root/);
  assert.match(run(["check", "-"], '{"a": 1}').err, /^-: \/: an object is not accepted; expected a key at the root/);
  const framing = run(["check", "-"], '{"contexts": 3}');
  assert.equal(framing.code, 2);
  assert.match(framing.err, /^-: \/contexts: /m);
});

test("a folder, a missing file and a binary file are bad input", () => {
  assert.equal(run(["evaluate", folder]).code, 2);
  assert.equal(run(["evaluate", join(folder, "none.json")]).code, 2);
  assert.equal(run(["check", file("binary", Buffer.from([0, 255, 0, 200]))]).code, 2);
});

test("a file without an end is given up, and says so", { skip: !existsSync("/dev/zero") }, () => {
  const read = run(["check", "/dev/zero"]);
  assert.equal(read.code, 2);
  assert.match(read.err, /^\/dev\/zero: cannot be read: it has more than \d+ bytes/);
});

test("wrong use is bad input, help is not", () => {
  for (const args of [[], ["nonsense"], ["evaluate"], ["evaluate", "--nonsense", "-"], ["check"]]) {
    const { code, out, err } = run(args);
    assert.equal(code, 2, args.join(" "));
    assert.equal(out, "");
    assert.notEqual(err, "");
  }
  for (const args of [["--help"], ["evaluate", "--help"], ["check", "--help"]]) {
    const { code, out } = run(args);
    assert.equal(code, 0);
    assert.match(out, /Usage/);
  }
});

test("the version is told, of the program and of its links", () => {
  const { code, out } = run(["--version"]);
  assert.equal(code, 0);
  assert.match(out, /^widegate \d+\.\d+\.\d+, links of version \d+\n$/);
  const link = run(["link", "-"], plan("")).out;
  assert.ok(link.includes(`${out.match(/version (\d+)/)[1]}.`));
});

test("a wrong --set names the field", () => {
  for (const [setting, complaint] of [
    ["/lens/focal_mm=wide", /^--set: \/lens\/focal_mm: "wide" is not accepted; expected a number from 1 to 3000 mm$/],
    ["/lens/focal=35", /^--set: \/lens\/focal: "35" is not accepted; expected the pointer of a field of this plan/],
    ["/lens/focal_mm", /^--set: \/lens\/focal_mm: "" is not accepted/],
    ["/format/camera=oak", /^--set: \/format\/camera: "oak" is not accepted; expected a camera: alder/],
  ]) {
    const { code, err } = run(["evaluate", "-", "--set", setting], plan(""));
    assert.equal(code, 2);
    assert.match(err.trimEnd(), complaint);
  }
});
