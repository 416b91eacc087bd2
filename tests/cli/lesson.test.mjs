// Lessons from outside: run, checked, linked and opened by the command line.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

const [program, ...first] = process.env.WIDEGATE.split(' ');
const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const lessons = join(root, 'docs/lessons');
const folder = mkdtempSync(join(tmpdir(), 'widegate-'));
after(() => rmSync(folder, { recursive: true }));

function run(args, input = '') {
  const result = spawnSync(program, [...first, ...args], { input, encoding: 'utf8' });
  return { code: result.status, out: result.stdout, err: result.stderr };
}

const files = readdirSync(lessons).map((name) => join(lessons, name));
const mandate = files.find((name) => name.includes('pixels-in-the-file'));
const read = (path) => readFileSync(path, 'utf8');

/** The lesson with another title: none of the built-in ones. */
function own(path) {
  const lesson = JSON.parse(read(path));
  lesson.title = 'A lesson of my own';
  const copy = join(folder, 'own.lesson.json');
  writeFileSync(copy, JSON.stringify(lesson));
  return copy;
}

test('every built-in lesson runs, keeps its claims, and is checked', () => {
  assert.ok(files.length >= 10);
  for (const path of files) {
    assert.deepEqual(run(['lesson', '--strict', '--json', path]).code, 0, path);
    assert.deepEqual(run(['check', '--strict', path]), { code: 0, out: `${path}: lesson, fine\n`, err: '' });
  }
});

test('a lesson prints what its figures were and are, and JSON says it exactly', () => {
  const table = run(['lesson', mandate]).out;
  assert.match(table, /2\. The same photosites, another file/);
  assert.match(table, /Recorded width +4096 px → 2048 px/);
  assert.match(table, /Counted +9 437 184 photosites, as before/);
  const { steps, holds } = JSON.parse(run(['lesson', '--json', mandate]).out);
  assert.equal(holds, true);
  const [width] = steps[1].figures;
  assert.deepEqual([width.figure, width.before, width.after, width.since_step, width.changed, width.holds],
    ['resolve.recorded_width_pixels', 4096, 2048, 1, true, true]);
  assert.equal(steps[1].control.pointer, '/format/recording');
});

test('a step of a lesson is what evaluate says of its plan', () => {
  const { steps } = JSON.parse(run(['lesson', '--json', mandate]).out);
  const plan = { widegate_plan: 1, commission: { id: 'uhd' }, format: { mode: 'centre-4096', recording: 'resample-2048', codec: 'vc-3-1270' },
    deliverable: { frame_lines: [{ aspect: '16/9' }] } };
  const report = JSON.parse(run(['evaluate', '--json', '-'], JSON.stringify(plan)).out);
  for (const { figure, after } of steps[1].figures) {
    const value = figure.split('.').reduce((at, key) => at[key], report);
    if (typeof value === 'number') assert.equal(after, value, figure);
  }
});

test('a link to a lesson opens it at its step, whole, and its length is said', () => {
  const path = own(mandate);
  const { code, out, err } = run(['link', '--step', '2', '--address', 'https://any.host/', path]);
  assert.equal(code, 0);
  assert.match(out, /^https:\/\/any\.host\/#lesson-1\.2\.[A-Za-z0-9_-]+\n$/);
  assert.equal(err, `widegate: ${out.length - 1} characters\n`);
  const opened = run(['open', out.trim()]);
  assert.equal(opened.err, 'widegate: a lesson, opens at step 2\n');
  assert.deepEqual(JSON.parse(opened.out), JSON.parse(read(path)));
  // A built-in lesson goes by its name.
  assert.equal(run(['link', '--step', '3', mandate]).out, 'lesson-1.3.id.pixels-in-the-file\n');
  assert.deepEqual(JSON.parse(run(['open', 'lesson-1.3.id.pixels-in-the-file']).out), JSON.parse(read(mandate)));
  assert.match(run(['link', '--step', '9', path]).err, /--step: \/: 9 is not accepted; expected the number of a step of this lesson: 1 to 4/);
  assert.equal(run(['link', '--qr', join(folder, 'qr.svg'), path]).code, 0);
});

test('a claim that does not hold is told, and fails only with --strict', () => {
  const lesson = JSON.parse(read(mandate));
  lesson.steps[1].figures[1].does = 'rises';
  const text = JSON.stringify(lesson);
  const plain = run(['check', '-'], text);
  assert.equal(plain.code, 0);
  assert.equal(plain.err, '-: step 2: Counted is 9 437 184 photosites, and the lesson says that it rises\n');
  assert.equal(run(['check', '--strict', '-'], text).code, 1);
  assert.equal(run(['lesson', '--strict', '-'], text).code, 1);
  assert.match(run(['lesson', '-'], text).out, /DOES NOT HOLD: +rises|DOES NOT HOLD:\s+rises/);
});

test('a bad lesson is refused by every verb that takes one', () => {
  const text = '{"widegate_lesson": 1, "title": "x", "steps": [{"title": "a", "words": "b", "control": "/lens", "figures": []}]}';
  for (const verb of ['lesson', 'check', 'link']) {
    const { code, out, err } = run([verb, '-'], text);
    assert.deepEqual([code, out], [2, ''], verb);
    assert.match(err, /^-: \/steps\/0\/control: "\/lens" is not accepted; expected the pointer of a value of this step's plan/);
  }
});
