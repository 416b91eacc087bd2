// Back puts away what lies over the screen before it leaves the app, in browsers that tell of requests to close
// (touch.test.mjs) and, here, in those that do not: by the history.
import assert from 'node:assert/strict';
import { after, afterEach, before, beforeEach, test } from 'node:test';
import { DEVICES, open_site, policy_violations, start } from './support/harness.mjs';
import { Fingers, at_rest, control, headline, mirror, reload, reveal, settled_address, until } from './support/gestures.mjs';

const FOCAL = '/lens/focal_mm';

let site;
let page;
let trouble;
let fingers;
before(async () => { site = await start(); });
after(() => site.stop());
beforeEach(async () => {
  ({ page, trouble } = await open_site(site, { device: DEVICES.phone }));
  await page.addInitScript(() => { delete window.CloseWatcher; });
  await reload(page);
  fingers = await Fingers.on(page);
  await at_rest(page);
});
afterEach(async () => {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await page.context().close();
});

const layers = () => page.evaluate(() => history.state?.layers ?? 0);
const until_layers = (wanted) => page.waitForFunction((count) => (history.state?.layers ?? 0) === count, wanted);

async function open_list() {
  const camera = await reveal(page, '/format/camera');
  await fingers.tap(camera.x + 60, camera.y + camera.height / 2);
  await at_rest(page);
}

async function back() {
  await page.evaluate(() => history.back());
  await at_rest(page);
}

test('Back closes a list, and the app stays', async () => {
  await open_list();
  await until_layers(1);
  const before = page.url();
  await back();
  await until_layers(0);
  assert.equal(page.url(), before);
  assert.equal(await page.evaluate(() => Boolean(window.widegate)), true);
});

test('what is put away on the page leaves no entry behind', async () => {
  const length = await page.evaluate(() => history.length);
  for (let i = 0; i < 3; i += 1) {
    await open_list();
    await until_layers(1);
    await page.keyboard.press('Escape');
    await until_layers(0);
  }
  assert.equal(await page.evaluate(() => history.length), length + 1, 'one entry, used again');
});

test('Back over a changed plan keeps the change', async () => {
  await page.locator(`[data-id="${FOCAL}"]`).evaluate((element) => element.focus());
  await page.keyboard.press('ArrowRight');
  await settled_address(page);
  await open_list();
  await until_layers(1);
  await page.evaluate((id) => {
    const native = document.querySelector(`[data-id="${id}"]`);
    native.value = '85';
    native.dispatchEvent(new Event('input', { bubbles: true }));
  }, FOCAL);
  await at_rest(page);
  const focal = (await control(page, FOCAL)).value_text;
  const numbers = await headline(page);
  await settled_address(page);
  await back();
  await until_layers(0);
  await settled_address(page);
  assert.equal((await control(page, FOCAL)).value_text, focal);
  assert.deepEqual(await headline(page), numbers);
  await reload(page);
  assert.equal((await control(page, FOCAL)).value_text, focal);
});

test('a link that comes while a list is open is opened, and Back leads to the plan before it', async () => {
  await page.locator(`[data-id="${FOCAL}"]`).evaluate((element) => element.focus());
  await page.keyboard.press('ArrowRight');
  const linked = (await control(page, FOCAL)).value_text;
  const link = new URL(await settled_address(page)).hash;
  await page.keyboard.press('ArrowRight');
  const own = (await control(page, FOCAL)).value_text;
  assert.notEqual(own, linked);
  await settled_address(page);
  await open_list();
  await until_layers(1);
  await page.evaluate((hash) => { location.hash = hash; }, link);
  await until('the link is opened', async () => (await control(page, FOCAL)).value_text === linked);
  await page.keyboard.press('Escape');
  await until_layers(0);
  await page.evaluate(() => history.back());
  await until('the plan before', async () => (await control(page, FOCAL)).value_text === own);
});

test('Back ends the typing, and then the lesson under it', async () => {
  await page.evaluate(() => {
    const list = document.querySelector('[data-id="view:lesson"]');
    list.value = [...list.options].at(1).value;
    list.dispatchEvent(new Event('change', { bubbles: true }));
  });
  await at_rest(page);
  await until_layers(1);
  await page.locator(`[data-id="${FOCAL}"]`).focus();
  await page.keyboard.press('6');
  await at_rest(page);
  await until_layers(2);
  await back();
  await until_layers(1);
  assert.equal(await page.locator('#entry').isVisible(), false);
  assert.notEqual((await mirror(page)).lesson.title, '');
  await back();
  await until_layers(0);
  assert.equal((await mirror(page)).lesson.title, '');
  assert.equal(await layers(), 0);
});

test('Back closes the QR code', async () => {
  await page.locator('[data-id="command:show-qr"]').evaluate((element) => element.click());
  await at_rest(page);
  assert.equal(await page.locator('#picture').isVisible(), true);
  await until_layers(1);
  await back();
  assert.equal(await page.locator('#picture').isVisible(), false);
  await until_layers(0);
});
