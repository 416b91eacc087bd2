// A show by touch, on a phone: its link opens, a part goes on the screen as a plan and comes back, and the table leaves
// with the totals that stand on the page.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { after, afterEach, before, beforeEach, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { DEVICES, keep_screenshot, open_site, policy_violations, start } from './support/harness.mjs';
import { at_rest, control, mirror, reveal, until, until_said } from './support/gestures.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const example = path.join(root, 'docs/examples/salt-ferry.show.json');
const link = execFileSync(path.join(root, 'build/native/widegate'), ['link', example], { encoding: 'utf8' }).trim();
const totals = JSON.parse(execFileSync(path.join(root, 'build/native/widegate'), ['show', '--json', example], { encoding: 'utf8' })).totals;

let site;
let page;
let trouble;
before(async () => { site = await start(); });
after(async () => { await site.stop(); });
beforeEach(async () => {
  ({ page, trouble } = await open_site(site, { device: DEVICES.phone, fragment: `#${link}`, acceptDownloads: true }));
  await at_rest(page);
  await until('the show is open', async () => (await mirror(page)).controls.some((each) => each.id === 'show:title'));
});
afterEach(async () => {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await page.context().close();
});

/** A tap of a finger on a drawn control. */
async function tap(id) {
  const box = await reveal(page, id);
  await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
  await at_rest(page);
}

const figure = async (label) => (await mirror(page)).results.find((row) => row.section === 'show' && row.label === label)?.value_text;

test('a link of four parts opens as a show beside the plan, with its sums', async () => {
  assert.equal((await control(page, 'show:title')).edit_text, 'The Salt Ferry');
  assert.equal(await figure('Shooting days'), `${totals.shooting_days} days`);
  assert.equal(await figure('Drives'), `${totals.drives} drives`);
  assert.match(await figure('Sum, with invented prices'), /EUR$/);
  assert.equal((await control(page, 'show:part')).choices.length, 4);
  await reveal(page, 'show:title');
  await keep_screenshot(page, 'show-phone');
});

test('a part opens as a plan by a tap, and comes back into the show by another', async () => {
  const before = (await control(page, '/title')).edit_text;
  await tap('command:the-show-open-part');
  await until('the part is on the screen', async () => (await control(page, '/title')).edit_text, (title) => title === 'The Salt Ferry, main unit');
  await tap('command:the-show-take-part');
  await until('the plan of before is back', async () => (await control(page, '/title')).edit_text, (title) => title === before);
  assert.equal(await figure('Drives'), `${totals.drives} drives`);
});

test('the table leaves by a tap and holds what the page says', async () => {
  const [got] = await Promise.all([page.waitForEvent('download'), tap('command:the-show-save-table')]);
  assert.equal(got.suggestedFilename(), 'The-Salt-Ferry-show.csv');
  const text = fs.readFileSync(await got.path(), 'utf8');
  assert.ok(text.includes(`\r\nDrives,the show,${totals.drives},${totals.drives},drives,`));
  await until_said(page, /Handed to the device/);
});

test('the show is there again after the page is opened anew', async () => {
  await page.reload();
  await at_rest(page);
  await until('the show is open', async () => (await mirror(page)).controls.some((each) => each.id === 'show:title'));
  assert.equal((await control(page, 'show:title')).edit_text, 'The Salt Ferry');
});
