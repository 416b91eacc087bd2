// The example plans as an experienced person reads them: what the ranking puts first draws no caution and no failure
// about pixels, cover, lens, media or copies, and a well planned example none at all. WIDEGATE is the command to run,
// words separated by blanks.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { test } from "node:test";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const [program, ...firstArguments] = process.env.WIDEGATE.split(" ");
const examples = join(dirname(fileURLToPath(import.meta.url)), "../../docs/examples");
const names = readdirSync(examples).filter((name) => name.endsWith(".plan.json")).sort();

/** Examples made to show something wrong, and what. */
const FAULTY = {
  "file-below-the-mandate.plan.json": ["choose.commission", "resolve.raster", "resolve.upscaled"],
  "just-short.plan.json": ["choose.commission", "cover.frame", "cover.mode", "cover.protected"],
};

function run(verb, input) {
  const result = spawnSync(program, [...firstArguments, verb, "-", "--json"],
    { input: JSON.stringify(input), encoding: "utf8", maxBuffer: 64 << 20 });
  assert.equal(result.status, 0, result.stderr);
  return JSON.parse(result.stdout);
}

/** Topics of what is off in this plan; what holds for every plan is none of it. */
function warned(plan) {
  const topics = run("evaluate", plan).notes.filter((note) => note.severity !== "ok" && !note.standing);
  return [...new Set(topics.map((note) => note.topic))].sort();
}

/** The plan with a format of its ranking and the lens that it was ranked with. */
function shot_with(plan, row) {
  return { ...plan, format: row.format, lens: { ...plan.lens, focal_mm: row.focal_mm } };
}

test("there are examples", () => assert.ok(names.length >= 10));

for (const name of names) {
  const plan = JSON.parse(readFileSync(join(examples, name), "utf8"));

  test(`${name}: what is ranked first draws no caution`, () => {
    const ranking = run("rank", plan);
    const first = ranking.formats[0];
    assert.ok(first.accepted);
    assert.deepEqual(first.cautions, []);
    assert.deepEqual(warned(shot_with(plan, first)), []);
  });

  test(`${name}: what is off in it is what it was made to show`, () => {
    assert.deepEqual(warned(plan), FAULTY[name] ?? []);
  });

  test(`${name}: a well planned format is as good as the first, or the same camera and mode`, () => {
    if (name in FAULTY) return;
    const { formats } = run("rank", plan);
    const own = formats.find((row) => JSON.stringify(row.format) === JSON.stringify(plan.format));
    const of_mode = own.format.camera === formats[0].format.camera && own.format.mode === formats[0].format.mode;
    assert.ok(own.accepted && (own.as_good || of_mode));
  });
}
