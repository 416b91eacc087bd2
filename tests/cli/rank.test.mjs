// widegate rank from outside: the table, JSON and CSV, limits, exit codes, silence on standard error.
// WIDEGATE is the command to run, words separated by blanks.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { test } from "node:test";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const [program, ...firstArguments] = process.env.WIDEGATE.split(" ");
const examples = join(dirname(fileURLToPath(import.meta.url)), "../../docs/examples");
const plan = join(examples, "salt-ferry.plan.json");

function rank(...args) {
  const result = spawnSync(program, [...firstArguments, "rank", plan, ...args],
    { encoding: "utf8", maxBuffer: 64 << 20 });
  return { code: result.status, out: result.stdout, err: result.stderr };
}

test("the table fits 80 columns and tells nothing on standard error", () => {
  for (const args of [[], ["--rejected"], ["--limit", "500", "--rejected"]]) {
    const { code, out, err } = rank(...args);
    assert.equal(code, 0);
    assert.equal(err, "");
    for (const line of out.split("\n")) assert.ok([...line].length <= 80, line);
  }
});

test("accepted formats are listed best first, rejected ones with reasons and changes", () => {
  const accepted = rank("--limit", "3").out;
  assert.match(accepted, /Accepted, best first/);
  assert.match(accepted, /^ {7}3 {3}\S+ \/ \S+ \/ \S+ \/ \S+$/m);
  assert.doesNotMatch(accepted, /^ {7}4 {3}/m);
  const rejected = rank("--rejected", "--limit", "40", "--set", "/run/sensor_rate=200").out;
  assert.match(rejected, /fails {2}Highest rate of the mode: [\d.]+ fps, 200\.000 fps needed; [\d.]+ fps/);
  assert.match(rejected, /change Sensor rate: [\d.]+ fps instead of 200 fps/);
});

test("JSON holds every format, and changes only where asked for", () => {
  const ranking = JSON.parse(rank("--json").out);
  assert.equal(ranking.formats.length, ranking.considered);
  assert.equal(ranking.accepted + ranking.rejected, ranking.considered);
  assert.equal(ranking.formats.filter((format) => format.accepted).length, ranking.accepted);
  assert.ok(ranking.formats.some((format) => format.on_pareto_front));
  assert.ok(!ranking.formats.some((format) => "changes" in format));
  const few = JSON.parse(rank("--json", "--changes", "--rejected", "--limit", "50").out);
  assert.equal(few.considered, ranking.considered);
  assert.equal(few.formats.length, 50);
  for (const format of few.formats) {
    assert.equal(format.accepted, false);
    assert.ok(format.requirements.some((row) => !row.met && row.margin < 0));
    assert.ok(Array.isArray(format.changes));
  }
  assert.ok(few.formats.some((format) => format.changes.length > 0));
});

test("a change of the plan's that JSON proposes makes the format pass", () => {
  const { formats } = JSON.parse(rank("--json", "--changes", "--rejected").out);
  const chosen = formats.filter((format) => format.changes.some((change) => change.patch.length > 0)).slice(0, 300)
    .filter((_, index) => index % 60 === 0);
  assert.ok(chosen.length > 2);
  for (const { format, changes } of chosen) {
    const change = changes.find((candidate) => candidate.patch.length > 0);
    const sets = change.patch.flatMap((field) => ["--set", `${field.pointer}=${field.value}`]);
    const ranking = JSON.parse(rank("--json", ...sets).out);
    const row = ranking.formats.find((other) => JSON.stringify(other.format) === JSON.stringify(format));
    assert.equal(row.accepted, true, JSON.stringify({ format, change }));
  }
});

test("CSV has one row for each format, all of one length", () => {
  const lines = rank("--csv").out.split("\r\n");
  assert.equal(lines.pop(), "");
  const { considered } = JSON.parse(rank("--json", "--limit", "0").out);
  assert.equal(lines.length, considered + 1);
  const columns = lines[0].split(",").length;
  for (const line of lines) assert.equal(line.split(",").length, columns);
  assert.equal(rank("--csv", "--limit", "2").out.split("\r\n").length, 4);
});

test("only the cameras considered are ranked", () => {
  const { formats } = JSON.parse(rank("--json", "--set", "/choose/cameras=dogwood").out);
  assert.deepEqual(new Set(formats.map((row) => row.format.camera)), new Set(["dogwood"]));
});

test("exit codes: fine, nothing accepted with --strict, bad input", () => {
  assert.equal(rank("--strict", "--limit", "1").code, 0);
  const nothing = ["--limit", "1", "--set", "/commission/photosites=4000000000"];
  assert.equal(rank(...nothing).code, 0);
  assert.equal(rank("--strict", ...nothing).code, 1);
  const bad = rank("--set", "/choose/weight_area=11");
  assert.equal(bad.code, 2);
  assert.equal(bad.out, "");
  assert.match(bad.err, /\/choose\/weight_area/);
  assert.equal(rank("--json", "--csv").code, 2);
  assert.equal(rank("--limit", "-1").code, 2);
});
