// A show on the command line: four parts, each equal to its plan's own report, and sums that can be added by hand.
// WIDEGATE is the command to run, words separated by blanks.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const [program, ...first_arguments] = process.env.WIDEGATE.split(' ');
const file = path.join(root, 'docs/examples/salt-ferry.show.json');
const show = JSON.parse(fs.readFileSync(file, 'utf8'));
const run = (args, input) => execFileSync(program, [...first_arguments, ...args], { input, encoding: 'utf8', maxBuffer: 64 << 20 });
const report = JSON.parse(run(['show', '--json', file]));
const range = (value) => (typeof value === 'object' ? [value.least, value.most] : [value, value]);
const near = (have, want, what) => assert.ok(Math.abs(have - want) <= 1e-9 * Math.abs(want), `${what}: ${have} is not ${want}`);
const summed = (values) => values.map(range).reduce(([a, b], [c, d]) => [a + c, b + d], [0, 0]);

test('a part is what evaluate says of its plan', () => {
  assert.equal(report.parts.length, 4);
  for (const [i, part] of show.parts.entries()) {
    const { store } = JSON.parse(run(['evaluate', '--json', '-'], JSON.stringify(part.plan)));
    const told = report.parts[i];
    assert.equal(told.name, part.name);
    assert.deepEqual(told.total_bytes, store.shoot_total_bytes);
    assert.deepEqual(told.copies_total_bytes, store.copies_total_bytes);
    assert.deepEqual(told.cards_to_have, store.cards_in_all);
    assert.deepEqual(told.copy_hours_per_day, store.offload_hours_per_day);
    assert.deepEqual(told.drives, store.drives);
    assert.deepEqual(told.tapes, store.tapes);
  }
});

test('totals are the sums of the parts', () => {
  for (const [key, of_part] of [['total_bytes', 'total_bytes'], ['copies_total_bytes', 'copies_total_bytes'], ['cards_to_have', 'cards_to_have'], ['tape_hours', 'tape_hours']]) {
    const want = summed(report.parts.map((part) => part[of_part]));
    range(report.totals[key]).forEach((have, end) => near(have, want[end], key));
  }
  const largest = Math.max(...report.days.map((day) => range(day.bytes)[1]));
  near(range(report.totals.largest_day_bytes)[1], largest, 'largest day');
  assert.equal(report.days.length, report.totals.shooting_days);
});

test('days off are not shot on', () => {
  const dates = report.days.map((day) => day.date);
  assert.equal(dates[0], '2027-03-01');
  assert.ok(!dates.includes('2027-03-26'));  // Good Friday
  assert.ok(!dates.includes('2027-03-29'));
  for (const date of dates) assert.ok(![0, 6].includes(new Date(`${date}T12:00:00Z`).getUTCDay()), date);
  const main = show.parts[0].plan.shooting.days;
  assert.equal(dates.length, main);
});

test('money: every line is quantity times price, the sum is of the lines, invented is marked', () => {
  const { lines, sums, missing } = report.money;
  assert.deepEqual(missing, []);
  assert.equal(sums.length, 1);
  for (const line of lines) {
    range(line.cost).forEach((cost, end) => near(cost, range(line.quantity)[end] * line.price, line.name));
    assert.ok(line.invented && line.date === '2026-11-02', line.name);
  }
  range(sums[0].cost).forEach((cost, end) => near(cost, summed(lines.map((line) => line.cost))[end], 'sum'));
  assert.equal(sums[0].invented, true);
  assert.match(run(['show', file]), /Sum +[\d –]+ EUR, invented/);
});

test('the order of the parts changes no total', () => {
  const turned = { ...show, parts: [...show.parts].reverse() };
  assert.deepEqual(JSON.parse(run(['show', '--json', '-'], JSON.stringify(turned))).totals, report.totals);
});

test('check reads shows and says where they are wrong', () => {
  assert.match(run(['check', file]), /salt-ferry\.show\.json: show, fine\n$/);
  const wrong = structuredClone(show);
  wrong.parts[2].plan.lens.focal_mm = -2;
  const { status, stderr } = spawnSync(program, [...first_arguments, 'check', '-'], { input: JSON.stringify(wrong), encoding: 'utf8' });
  assert.equal(status, 2);
  assert.equal(stderr, '-: /parts/2/plan/lens/focal_mm: -2 is not accepted; expected a number from 1 to 3000 mm\n');
});

test('every price of the demo is marked invented', () => {
  for (const row of [...show.prices, ...show.people, ...show.rent]) assert.equal(row.price.invented, true);
});

const READER = 'import csv, io, json, sys; print(json.dumps(list(csv.reader(io.TextIOWrapper(sys.stdin.buffer, "utf-8", newline=""), strict=True))))';
const rows_of = (table) => JSON.parse(execFileSync('python3', ['-c', READER], { input: run(['table', table, file]), encoding: 'utf8' }));

test('the table, by an independent reader: every total, every sum of money, what it rests on', () => {
  const rows = rows_of('show');
  for (const row of rows) assert.equal(row.length, 6);
  const row_of = (what, of) => rows.find((row) => row[0] === what && row[1] === of);
  const close = (cell, value) => assert.ok(Math.abs(Number(cell) - value) <= 1e-5 * value, `${cell} is not ${value}`);
  for (const [what, key, factor] of [['Footage in all', 'total_bytes', 1e-12], ['All copies', 'copies_total_bytes', 1e-12], ['The largest day', 'largest_day_bytes', 1e-12], ['Cards to have', 'cards_to_have', 1], ['Drives', 'drives', 1], ['Tapes', 'tapes', 1]]) {
    const row = row_of(what, 'the show');
    range(report.totals[key]).forEach((value, end) => close(row[2 + end], value * factor));
    assert.ok(row[4]);
  }
  const sum = row_of('Cost in all', '');
  assert.equal(sum[4], 'EUR');
  assert.equal(sum[5], 'invented');
  close(sum[3], range(report.money.sums[0].cost)[1]);
  const lines = rows.filter(([what]) => what.startsWith('Cost: '));
  close(sum[3], lines.reduce((all, row) => all + Number(row[3]), 0));
  assert.ok(lines.every((row) => row[5].includes('2026-11-02') && row[5].includes('invented')));
  assert.ok(rows.some(([what, of]) => what === 'Rests on' && of === 'Main unit'));
  assert.ok(rows.some(([, of]) => of === 'Rowan magazine, 1 TB (rowan-1)'));
});

test('the calendar as a table ends with the totals', () => {
  const [head, ...days] = rows_of('calendar');
  assert.equal(days.length, 42);
  const last = Object.fromEntries(head.map((name, i) => [name, days.at(-1)[i]]));
  assert.equal(last.date, '2027-04-29');
  assert.equal(Number(last['drives so far']), range(report.totals.drives)[1]);
  assert.ok(Math.abs(Number(last['money so far, EUR, invented']) - range(report.money.sums[0].cost)[1]) < 0.01);
});

test('a link of four parts fits one QR code, and opens as the same show', () => {
  const link = run(['link', file]).trim();
  assert.ok(link.length <= 1800, `${link.length} characters`);
  const opened = run(['open', `https://any.host/#${link}`]);
  assert.deepEqual(JSON.parse(run(['show', '--json', '-'], opened)), report);
  assert.equal(run(['link', '-'], opened).trim(), link);
  const { status, stderr } = spawnSync(program, [...first_arguments, 'open', link.slice(0, -3)], { encoding: 'utf8' });
  assert.equal(status, 2);
  assert.match(stderr, /damaged or cut short/);
});

test('the sheet holds every sum of the table, and the day it was made', () => {
  const html = run(['sheet', file, '--address', 'https://any.host/', '--date', '2026-12-01']);
  const words = html.replace(/<style>.*?<\/style>/s, '').replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
  for (const text of ['The Salt Ferry', '108–109 TB', '324–326 TB', '82 386–82 484 EUR', 'with invented prices', 'Made on 2026-12-01', 'Main unit', 'Day on 35 mm film', 'https://any.host/#s1.']) {
    assert.ok(words.includes(text), text);
  }
});
