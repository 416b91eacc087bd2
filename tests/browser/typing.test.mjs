// Typing: a real text field over the drawn value, with the number pad, commas, steps, Escape; and from the keyboard.
import assert from 'node:assert/strict';
import { after, afterEach, before, beforeEach, test } from 'node:test';
import { DEVICES, open_site, policy_violations, start } from './support/harness.mjs';
import { Fingers, at_rest, control, reveal } from './support/gestures.mjs';

const FOCAL = '/lens/focal_mm';

let site;
let page;
let trouble;
let fingers;
before(async () => { site = await start(); });
after(() => site.stop());
beforeEach(async () => {
  ({ page, trouble } = await open_site(site, { device: DEVICES.phone }));
  fingers = await Fingers.on(page);
  await at_rest(page);
});
afterEach(async () => {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await page.context().close();
});

const entry = () => page.locator('#entry');
const focused_id = () => page.evaluate(() => document.activeElement.id);
const text_of = async (id) => (await control(page, id)).value_text;

/** Taps the value of a slider: it stands at the right end of the line above the track. */
async function tap_value(id) {
  const box = await reveal(page, id);
  const y = box.y - box.height / 2;
  await fingers.tap(box.x + box.width, y);
  await at_rest(page);
  return { x: box.x + box.width, y };
}

test('a tap on a value opens the number pad in place, all selected', async () => {
  const at = await tap_value(FOCAL);
  assert.equal(await entry().isVisible(), true);
  assert.equal(await focused_id(), 'entry');
  assert.equal(await entry().getAttribute('inputmode'), 'decimal');
  assert.equal(await entry().inputValue(), '35');
  const [start_, end] = await entry().evaluate((field) => [field.selectionStart, field.selectionEnd]);
  assert.deepEqual([start_, end], [0, 2]);
  const box = await entry().boundingBox();
  assert.ok(box.x < at.x && at.x < box.x + box.width && box.y < at.y && at.y < box.y + box.height, 'it lies over the value');
  assert.ok(await entry().evaluate((field) => parseFloat(getComputedStyle(field).fontSize)) >= 16);
});

test('a decimal comma is a point; Enter ends; the numbers follow each key', async () => {
  await tap_value(FOCAL);
  await page.keyboard.type('52,5');
  await at_rest(page);
  assert.equal(await text_of(FOCAL), '52.5');
  await page.keyboard.press('Enter');
  await at_rest(page);
  assert.equal(await entry().isVisible(), false);
  assert.equal(await text_of(FOCAL), '52.5');
});

test('Escape puts the old value back', async () => {
  await tap_value(FOCAL);
  await page.keyboard.type('85');
  await at_rest(page);
  assert.equal(await text_of(FOCAL), '85');
  await page.keyboard.press('Escape');
  await at_rest(page);
  assert.equal(await entry().isVisible(), false);
  assert.equal(await text_of(FOCAL), '35');
});

test('arrow keys step the value', async () => {
  await tap_value(FOCAL);
  await page.keyboard.press('ArrowUp');
  await at_rest(page);
  const up = Number(await text_of(FOCAL));
  assert.ok(up > 35);
  assert.equal(await entry().inputValue(), String(up));
  await page.keyboard.press('ArrowDown');
  await at_rest(page);
  assert.equal(await text_of(FOCAL), '35');
});

test('what is no number keeps the plan, and says what is accepted', async () => {
  await tap_value(FOCAL);
  await page.keyboard.type('wide');
  await at_rest(page);
  assert.equal(await entry().getAttribute('aria-invalid'), 'true');
  assert.match((await control(page, FOCAL)).problem, /\d/);
  await page.keyboard.press('Escape');
  await at_rest(page);
  assert.equal((await control(page, FOCAL)).problem, '');
  assert.equal(await text_of(FOCAL), '35');
});

test('a tap elsewhere ends the typing and keeps the value', async () => {
  await tap_value(FOCAL);
  await page.keyboard.type('40');
  await fingers.tap(195, 20);
  await at_rest(page);
  assert.equal(await entry().isVisible(), false);
  assert.equal(await text_of(FOCAL), '40');
});

test('the field stays over its value when the screen turns', async () => {
  await tap_value(FOCAL);
  await page.setViewportSize({ width: 844, height: 390 });
  await at_rest(page);
  assert.equal(await entry().isVisible(), true);
  const { x, y, width, height } = await entry().boundingBox();
  assert.ok(x >= 0 && y >= 0 && x + width <= 844 && y + height <= 390, 'it is on the turned screen');
});

test('typing from the keyboard: a digit on a focused slider, Enter, and back', async () => {
  await page.locator(`[data-id="${FOCAL}"]`).focus();
  await at_rest(page);
  await page.keyboard.press('6');
  assert.equal(await focused_id(), 'entry');
  await page.keyboard.type('5');
  await page.keyboard.press('Enter');
  await at_rest(page);
  assert.equal(await text_of(FOCAL), '65');
  assert.equal(await page.evaluate(() => document.activeElement.dataset.id), FOCAL);
});
