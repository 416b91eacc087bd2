// widegate fdl from outside: export, import, apply, their messages and exit codes.
// WIDEGATE is the command to run, words separated by blanks ("build/native/widegate").
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, test } from "node:test";
import { fileURLToPath } from "node:url";

const [program, ...firstArguments] = process.env.WIDEGATE.split(" ");
const examples = join(dirname(fileURLToPath(import.meta.url)), "../../docs/examples");
const folder = mkdtempSync(join(tmpdir(), "widegate-fdl-"));
after(() => rmSync(folder, { recursive: true }));

function run(args, input = "") {
  const result = spawnSync(program, [...firstArguments, ...args], { input, encoding: "utf8" });
  return { code: result.status, out: result.stdout, err: result.stderr };
}

function fine(args, input) {
  const result = run(args, input);
  assert.equal(result.code, 0, result.err);
  return result;
}

function file(name, text) {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const plans = readdirSync(examples).filter((name) => name.endsWith(".plan.json"));
const frame = (report) => report.frame ?? report.frames[0];

test("every example plan exported and imported has the same frame line", () => {
  assert.ok(plans.length > 3);
  for (const name of plans) {
    const plan = join(examples, name);
    const exported = file("exported.fdl", fine(["fdl", "export", plan]).out);
    fine(["check", exported]);
    const imported = file("imported.plan.json", fine(["fdl", "import", exported, "--into", plan]).out);
    const [before, after] = [plan, imported].map((path) => frame(JSON.parse(fine(["evaluate", "--json", path]).out)));
    for (const key of ["room_protected_percent", "shift_horizontal_percent", "shift_vertical_percent"]) {
      assert.ok(Math.abs(before[key] - after[key]) < 1e-9, `${name}: ${key}`);
    }
  }
});

test("-o writes the document to a file, and nothing else", () => {
  const plan = join(examples, plans[0]);
  const output = join(folder, "written.fdl");
  assert.equal(fine(["fdl", "export", plan, "-o", output]).out, "");
  assert.equal(readFileSync(output, "utf8"), fine(["fdl", "export", plan]).out);
});

test("a delivery by its name and the same template from a file give the same canvas", () => {
  const source = file("source.fdl", fine(["fdl", "export", join(examples, plans[0])]).out);
  const built_in = JSON.parse(fine(["fdl", "apply", source, "--delivery", "UHD", "--new-id", "OUT"]).out);
  const templates = file("templates.fdl", JSON.stringify({
    uuid: "0f8fad5b-d9cb-469f-a165-70867728950e", version: { major: 2, minor: 0 },
    canvas_templates: built_in.canvas_templates,
  }));
  const from_file = JSON.parse(fine(["fdl", "apply", source, templates, "--new-id", "OUT"]).out);
  assert.deepEqual(from_file.contexts, built_in.contexts);
  const canvas = built_in.contexts[0].canvases.at(-1);
  assert.equal(canvas.id, "OUT");
  assert.deepEqual(canvas.dimensions, { width: 3840, height: 2160 });
});

test("the source may come from standard input, and a canvas and decision may be chosen", () => {
  const text = fine(["fdl", "export", join(examples, "three-frame-lines.plan.json")]).out;
  const document = JSON.parse(text);
  const canvas = document.contexts[0].canvases.at(-1);
  const decision = canvas.framing_decisions.at(-1);
  const result = JSON.parse(
    fine(["fdl", "apply", "-", "--delivery", "HD_PROXY", "--canvas", canvas.id, "--decision", decision.id], text).out);
  assert.equal(result.default_framing_intent, decision.framing_intent_id);
  assert.equal(result.contexts[0].canvases.at(-1).source_canvas_id, canvas.id);
});

test("what an import took and left is told on standard error", () => {
  const exported = JSON.parse(fine(["fdl", "export", join(examples, plans[0])]).out);
  exported.contexts[0].clip_id = { clip_name: "A001" };
  const { err } = fine(["fdl", "import", "-"], JSON.stringify(exported));
  assert.match(err, /taken: .*photosite_dimensions: Sensor mode/);
  assert.match(err, /left: \/contexts\/0\/clip_id: /);
});

test("bad input ends with 2 and says what is wrong and where", () => {
  const broken = JSON.parse(fine(["fdl", "export", join(examples, plans[0])]).out);
  broken.contexts[0].canvases[0].dimensions.width = 0;
  const path = file("broken.fdl", JSON.stringify(broken));
  for (const args of [["import", path], ["apply", path, "--delivery", "UHD"]]) {
    const { code, out, err } = run(["fdl", ...args]);
    assert.equal(code, 2);
    assert.equal(out, "");
    assert.match(err, /\/contexts\/0\/canvases\/0\/dimensions\/width: 0 is not accepted; expected a whole number/);
  }
  const good = file("good.fdl", fine(["fdl", "export", join(examples, plans[0])]).out);
  for (const args of [[], ["apply", good], ["apply", good, good, "--delivery", "UHD"],
    ["apply", good, "--delivery", "NONE"], ["apply", good, "--delivery", "UHD", "--canvas", "NONE"],
    ["apply", good, good], ["export", good], ["import", join(folder, "missing.fdl")]]) {
    const { code, out, err } = run(["fdl", ...args]);
    assert.equal(code, 2, args.join(" "));
    assert.equal(out, "");
    assert.notEqual(err, "");
  }
});
