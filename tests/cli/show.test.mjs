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
