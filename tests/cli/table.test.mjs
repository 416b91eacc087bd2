// Tables for spreadsheets, read back by Python's csv module: what comes out of the command line is what any
// RFC 4180 reader gets, and no cell begins as a formula. Also the QR code's file, read by an XML parser.
// WIDEGATE is the command to run, words separated by blanks.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const [program, ...first_arguments] = process.env.WIDEGATE.split(' ');
const example = (name) => path.join(root, `docs/examples/${name}.plan.json`);
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'widegate-table-'));
after(() => fs.rmSync(folder, { recursive: true, force: true }));

const run = (...args) => execFileSync(program, [...first_arguments, ...args], { encoding: 'utf8', maxBuffer: 64 << 20 });
const READER = 'import csv, io, json, sys; print(json.dumps(list(csv.reader(io.TextIOWrapper(sys.stdin.buffer, "utf-8", newline=""), strict=True))))';
const python_rows = (text) => JSON.parse(execFileSync('python3', ['-c', READER], { input: text, encoding: 'utf8' }));

/** The salt ferry under names that a spreadsheet would compute. */
function hostile_plan() {
  const plan = JSON.parse(fs.readFileSync(example('own-camera'), 'utf8'));
  plan.title = '=HYPERLINK("http://a.example","x"), or not';
  plan.own.cameras[0].name = '+1+cmd|x';
  const file = path.join(folder, 'hostile.plan.json');
  fs.writeFileSync(file, JSON.stringify(plan));
  return file;
}

for (const table of ['ranking', 'storage', 'cover']) {
  test(`${table}: the same number of cells in every row, no formula, CR LF`, () => {
    for (const plan of [example('salt-ferry'), example('three-frame-lines'), hostile_plan()]) {
      const text = run('table', table, plan);
      assert.ok(text.endsWith('\r\n'));
      const rows = python_rows(text);
      for (const row of rows) {
        assert.equal(row.length, rows[0].length, row.join('|'));
        for (const cell of row) assert.ok(!/^[=@\t\r]/.test(cell) && (!/^[+-]/.test(cell) || Number.isFinite(Number(cell))), cell);
      }
    }
  });
}

test('a name that looks like a formula is the same name behind an apostrophe', () => {
  const rows = new Map(python_rows(run('table', 'storage', hostile_plan())).map(([name, ...cells]) => [name, cells]));
  assert.equal(rows.get('plan')[0], '\'=HYPERLINK("http://a.example","x"), or not');
  assert.equal(rows.get('camera')[0], '\'+1+cmd|x');
});

test('the storage plan\'s numbers are the report\'s', () => {
  const { store } = JSON.parse(run('evaluate', '--json', example('three-frame-lines')));
  const rows = new Map(python_rows(run('table', 'storage', example('three-frame-lines'))).map(([name, ...cells]) => [name, cells]));
  const range = (value) => (typeof value === 'object' ? [value.least, value.most] : [value, value]);
  for (const [name, value] of [['minutes on a card', store.minutes_per_card], ['drives', store.drives], ['cost', store.cost], ['whole shoot', store.shoot_total_bytes]]) {
    assert.deepEqual(rows.get(name).slice(0, 2).map(Number), range(value).map(Number), name);
  }
});

test('the lens cover has a row for each focal length, in the report\'s words', () => {
  const { cover } = JSON.parse(run('evaluate', '--json', example('salt-ferry')));
  const [, ...rows] = python_rows(run('table', 'cover', example('salt-ferry')));
  assert.equal(rows.length, cover.lens_set.length);
  rows.forEach((row, i) => {
    const lens = cover.lens_set[i];
    assert.deepEqual([Number(row[0]), Number(row[1])], [lens.focal_mm, lens.image_circle_mm]);
    assert.deepEqual(row.slice(2, 5), [lens.covers_frame, lens.covers_protected, lens.covers_mode].map((yes) => (yes ? 'yes' : 'no')));
  });
});

test('an unknown table and a broken plan are refused with exit code 2', () => {
  for (const args of [['table', 'colours', example('salt-ferry')], ['table', 'storage', path.join(root, 'README.md')]]) {
    const { status, stdout, stderr } = spawnSync(program, [...first_arguments, ...args], { encoding: 'utf8' });
    assert.equal(status, 2, args.join(' '));
    assert.equal(stdout, '');
    assert.notEqual(stderr, '');
  }
});

test('link --qr writes a picture that an XML parser reads', () => {
  const file = path.join(folder, 'code.svg');
  const link = run('link', example('salt-ferry'), '--address', 'https://plans.example/', '--qr', file).trim();
  assert.ok(link.startsWith('https://plans.example/#'));
  const tag = execFileSync('python3', ['-c', 'import sys, xml.etree.ElementTree as e; print(e.parse(sys.argv[1]).getroot().tag)', file], { encoding: 'utf8' });
  assert.equal(tag.trim(), '{http://www.w3.org/2000/svg}svg');
});
