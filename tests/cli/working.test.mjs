// Show the working: every number of a report has one; every line of it, evaluated with its units by an independent
// evaluator, gives the number that is shown in the unit that is shown; and a person can read it.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { dimension, evaluate, same, told } from './working_evaluator.mjs';

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

/** A length on the sensor for each photosite is told as a length, as everywhere in the trade. */
const PER_PHOTOSITE = { 'mode.pitch_um': { 'µm': 1, photosite: -1 } };

/** A line without its numbers: the same for five digits and for twelve. */
const skeleton = (line) => line.replaceAll(/\(-([^()]*)\)/g, '$1').replaceAll(/\d{1,3}( \d{3})+(?!\d)|\d+(\.\d+)?(e[-+]?\d+)?/g, '#');

const names = new Map();
/** The reader's test: no function names but those of school, units on every line, one name a quantity. */
function check_reading({ key, title, formula, symbols, substituted, parts, source }) {
  for (const line of [formula, symbols, ...substituted]) {
    const functions = line.match(/[a-z_0-9₂]+\(/gi) ?? [];
    for (const name of functions) assert.ok(['arctan(', 'arccos(', 'sin(', 'log₂('].includes(name), `${key}: ${name} in ${line}`);
    assert.ok(!/[{}_@[\]]|null|nan|undefined/.test(line), `${key}: ${line}`);
  }
  for (const line of substituted) {
    // A factor or a share is a plain number; a line of nothing else says so with × or ∶1, or is a sum of shares.
    assert.ok(/[°×%∶]|\d [a-zµA-Z]/.test(line) || /^frame\.|share/.test(key), `${key} has no unit: ${line}`);
    const long = (line.match(/\d+\.\d+/g) ?? []).find((number) => number.replace('.', '').replace(/^0+/, '').length > 6);
    assert.equal(long, undefined, `${key}: more digits than anybody reads in ${line}`);
  }
  assert.equal(substituted.length > 0, formula !== '', key);
  const here = parts.map((part) => part.name);
  assert.equal(new Set(here).size, here.length, `${key} calls two quantities alike: ${here.join(', ')}`);
  for (const part of parts) {
    const known = names.get(part.key);
    assert.ok(known === undefined || known === part.name || /minutes|card|film|magazine/i.test(part.name + known), `${part.key} is "${part.name}" and "${known}"`);
    names.set(part.key, part.name);
    assert.ok(formula.includes(part.name), `${key}: ${part.name} is not in ${formula}`);
  }
  assert.ok(title && source, key);
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
    check_reading(working);
    working.exact.forEach((line, i) => {
      const { value, unit } = evaluate(line);
      const result = Number(working.results[i]);
      const tolerance = 2e-8 * Math.max(Math.abs(result), 1e-3) + 1e-9 + (working.unit === '°' ? 1e-5 : 0);
      assert.ok(Math.abs(value - result) <= tolerance, `${key}: ${line} gives ${value}, shown ${result}`);
      const expected = PER_PHOTOSITE[key] ?? dimension(working.unit || '×');
      assert.ok(same(unit, expected), `${key}: ${line} is ${told(unit)}, shown in ${working.unit}`);
      assert.equal(skeleton(working.substituted[i]), skeleton(line), `${key} has two forms`);
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

test('from any working one comes down to what was typed or looked up', () => {
  const workings = JSON.parse(run(['why', '--json', '-'], '{"widegate_plan": 1}'));
  const by_key = new Map(workings.map((working) => [working.key, working]));
  const depth = (key, above = []) => {
    assert.ok(!above.includes(key), `${key} is made of itself: ${above.join(' < ')}`);
    const working = by_key.get(key);
    assert.ok(working, `${key} (in ${above.at(-1)}) has no working`);
    return 1 + Math.max(0, ...working.parts.map((part) => depth(part.key, [...above, key])));
  };
  assert.ok(depth('store.cost') > 4);
  for (const key of by_key.keys()) depth(key);
});

test('an invented figure says so, and money has its currency', () => {
  const why = (key, ...set) => JSON.parse(run(['why', '--json', '-', ...key, ...set], '{"widegate_plan": 1}'));
  for (const { key, source } of why(['mode.width_photosites', 'cover.image_circle_mm', 'given.drive_price', 'run.flicker.read_out_s'])) {
    assert.match(source, /invented/, key);
  }
  const [cost, price] = why(['store.drive_cost', 'given.drive_price'], '--set', '/store/currency=SEK');
  assert.equal(cost.unit, 'SEK');
  assert.match(cost.told[0], /^[\d ]+ SEK$/);
  assert.match(cost.substituted[0], /drives · \d+ SEK$/);
  assert.equal(price.unit, 'SEK');
});

test('a condition is told as the step that was taken', () => {
  const why = (key, ...set) => JSON.parse(run(['why', '--json', '-', key, ...set.flatMap((each) => ['--set', each])], '{"widegate_plan": 1}'))[0];
  const plain = why('headline.horizontal_fov_deg');
  assert.deepEqual([plain.formula, plain.symbols, plain.because], ['2 · arctan(width of the frame line / (2 · focal length))', '2 · arctan(w / (2 · f))', []]);
  const squeezed = why('headline.horizontal_fov_deg', '/lens/set=wye');
  assert.deepEqual([squeezed.symbols, squeezed.because], ['2 · arctan(s · w / (2 · f))', ['the lens squeezes 2×']]);
  assert.match(squeezed.substituted[0], /^2 · arctan\(2× · [\d.]+ mm \/ \(2 · 35 mm\)\)$/);
  assert.deepEqual(why('frame.width_photosites', '/deliverable/frame_lines/0/protection=1/10').because, ['a share of 0.1 is kept as protection']);
  assert.deepEqual(why('store.tape_hours', '/store/drive_copies=0').because, ['no copy is on drives: the tape alone sets the pace']);
});

test('a key that is not a number is refused', () => {
  assert.throws(() => run(['why', '-', 'run.sensor_rate'], '{"widegate_plan": 1}'));
});
