// Show the working: every number of a report has one, and every substituted line, evaluated by an
// independent evaluator, gives the number that is shown.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { evaluate } from './working_evaluator.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
// The program may be an interpreter with its arguments (the WASM build under Node).
const [program, ...firstArguments] = (
  process.env.WIDEGATE ?? join(root, 'build/native/widegate')
).split(' ');
const examples = join(root, 'docs/examples');

const run = (args, input) =>
  execFileSync(program, [...firstArguments, ...args], { encoding: 'utf8', input, maxBuffer: 64 * 1024 * 1024 });

/** Plans that between them reach every form of every formula. */
const variants = [
  { name: 'defaults', set: [] },
  { name: 'squeezed, protected, placed freely', set: [
    '/lens/set=wye', '/format/mode=squeeze-2-239', '/deliverable/frame_lines/0/protection=1/10',
    '/deliverable/frame_lines/0/anchor/kind=free', '/deliverable/frame_lines/0/anchor/x=-0.3',
    '/deliverable/frame_lines/0/anchor/y=0.7', '/lens/match=diagonal'] },
  { name: 'a circle that does not cover', set: [
    '/lens/image_circle_mm=26', '/deliverable/frame_lines/0/anchor/kind=top', '/lens/match=height'] },
  { name: 'lossless range, shutter time, wanted sizes', set: [
    '/format/codec=bayer-12-lossless', '/run/shutter_kind=time', '/run/shutter_time_s=1/60',
    '/lens/wanted_width_m=4', '/lens/wanted_height_m=0.3', '/lens/circle_of_confusion_mm=0.02'] },
  { name: 'compressed, slow motion, by ratio', set: [
    '/format/codec=bayer-12-3-1', '/run/sensor_rate=48', '/shooting/by=ratio', '/store/verification=none',
    '/shooting/cameras_per_unit=2'] },
  { name: 'macroblocks, no drives, no tape', set: [
    '/format/recording=resample-4096', '/format/codec=vc-3-1271', '/store/drive_copies=0', '/store/tape_copies=0'] },
  { name: 'no drives, copied only; 23.976', set: [
    '/store/drive_copies=0', '/store/verification=none', '/run/sensor_rate=24000/1001',
    '/run/project_rate=24000/1001'] },
  { name: 'a table of frame sizes', set: [
    '/format/mode=wide-16x9', '/format/recording=resample-1920', '/format/codec=avc-intra-100',
    '/run/sensor_rate=25', '/run/project_rate=25'] },
  { name: 'film', set: ['/format/camera=film-35-4-perf', '/format/codec=dpx-10', '/lens/focus_m=0.4'] },
  { name: 'a card that sets the rate', set: ['/store/card=sd-v60-256'] },
  { name: 'hardly any footage', set: ['/shooting/recorded_hours_per_day=0.05'] },
];

function reportNumbers(value, path = '') {
  if (typeof value === 'number') return [[path, value, value]];
  if (value === null || typeof value !== 'object') return [];
  const keys = Object.keys(value);
  if (keys.length === 2 && 'least' in value && 'most' in value) {
    return [[path, value.least, value.most]];
  }
  return keys.flatMap((key) => reportNumbers(value[key], path === '' ? key : `${path}.${key}`));
}

function checkPlan(args, input) {
  const report = JSON.parse(run(['evaluate', '--json', ...args], input));
  const workings = JSON.parse(run(['why', '--json', ...args], input));
  const byKey = new Map(workings.map((working) => [working.key, working]));
  let lines = 0;
  for (const [key, least, most] of reportNumbers(report)) {
    const working = byKey.get(key);
    assert.ok(working, `${key} has no working`);
    assert.ok(working.title && working.source, `${key} has no words`);
    const shown = working.results.map(Number).sort((a, b) => a - b);
    assert.deepEqual([shown[0], shown.at(-1)], [least, most], `${key} shows another number`);
    working.substituted.forEach((line, i) => {
      const value = evaluate(line);
      const result = Number(working.results[i]);
      const tolerance = 2e-8 * Math.max(Math.abs(result), 1e-3) + 1e-9;
      assert.ok(Math.abs(value - result) <= tolerance, `${key}: ${line} gives ${value}, shown ${result}`);
      ++lines;
    });
  }
  return lines;
}

for (const variant of variants) {
  test(`every number's working holds: ${variant.name}`, () => {
    const args = ['-', ...variant.set.flatMap((edit) => ['--set', edit])];
    const lines = checkPlan(args, '{"widegate_plan": 1}');
    assert.ok(lines > 60, `only ${lines} lines were evaluated`);
  });
}

const plans = readdirSync(examples).filter((file) => file.endsWith('.plan.json'));
test('there are example plans', () => assert.ok(plans.length > 0));
for (const file of plans) {
  test(`every number's working holds: ${file}`, () => {
    const text = readFileSync(join(examples, file), 'utf8');
    assert.ok(checkPlan(['-'], text) > 60);
  });
}

test('a key that is not a number is refused', () => {
  assert.throws(() => run(['why', '-', 'run.sensor_rate'], '{"widegate_plan": 1}'));
});
