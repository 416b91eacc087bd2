// Fingers on a phone: taps, sliders, scrolling with inertia, pinching; and a mouse with its wheel.
import assert from 'node:assert/strict';
import { after, afterEach, before, beforeEach, describe, test } from 'node:test';
import { DEVICES, decode_png, open_site, policy_violations, start } from './support/harness.mjs';
import { Fingers, at_rest, box_of, control, frame_count, headline, mirror, reload, reveal } from './support/gestures.mjs';

const FOCAL = '/lens/focal_mm';
const PROTECTION = '/deliverable/frame_lines/0/protection';
const ASPECT = '/deliverable/frame_lines/0/aspect';

let site;
let page;
let trouble;
let fingers;
before(async () => { site = await start(); });
after(() => site.stop());

async function open(device) {
  ({ page, trouble } = await open_site(site, { device }));
  fingers = await Fingers.on(page);
  await at_rest(page);
}

async function close_clean() {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await page.context().close();
}

const value = async (id) => (await control(page, id)).value;

/** Degrees across for a width in mm and a focal length, to compare the number in sight with its formula. */
const across_deg = (width_mm, focal_mm) => 2 * Math.atan(width_mm / (2 * focal_mm)) * 180 / Math.PI;

// The phone's own Back reaches the page as a request to close; the real one is asked for here.
test('the phone’s Back puts away a list and a working', async () => {
  const opened = await open_site(site, { device: DEVICES.phone });
  const phone = opened.page;
  await phone.addInitScript(() => {
    const { CloseWatcher } = window;
    window.close_watchers = [];
    window.CloseWatcher = class extends CloseWatcher {
      constructor() {
        super();
        window.close_watchers.push(this);
        this.addEventListener('close', () => { window.close_watchers.pop(); });
      }

      destroy() {
        super.destroy();
        window.close_watchers.pop();
      }
    };
  });
  await reload(phone);
  const watchers = () => phone.evaluate(() => window.close_watchers.length);
  const back = () => phone.evaluate(() => { window.close_watchers.at(-1).requestClose(); });
  const thumb = await Fingers.on(phone);
  assert.equal(await watchers(), 0);
  const camera = await reveal(phone, '/format/camera');
  const before = await phone.screenshot();
  await thumb.tap(camera.x + 60, camera.y + camera.height / 2);
  await at_rest(phone);
  assert.equal(await watchers(), 1);
  await back();
  await at_rest(phone);
  assert.equal(await watchers(), 0);
  assert.deepEqual(await phone.screenshot(), before, 'the list is gone');
  await phone.evaluate(() => document.querySelector('#section_store .why').click());
  await at_rest(phone);
  assert.equal(await watchers(), 1);
  assert.notEqual((await mirror(phone)).working.title, '');
  await back();
  await at_rest(phone);
  assert.equal((await mirror(phone)).working.title, '');
  await thumb.tap(camera.x + 60, camera.y + camera.height / 2);
  await at_rest(phone);
  await phone.keyboard.press('Escape');
  await at_rest(phone);
  assert.equal(await watchers(), 0, 'closed on the page, nothing waits for Back any more');
  assert.deepEqual(opened.trouble, []);
  await phone.context().close();
});

describe('a finger on a phone', () => {
  beforeEach(() => open(DEVICES.phone));
  afterEach(close_clean);

  test('five taps are five steps', async () => {
    const box = await reveal(page, PROTECTION);
    for (let i = 0; i < 5; i += 1) await fingers.tap(box.x + box.width + 22, box.y + box.height / 2);
    await at_rest(page);
    assert.equal((await control(page, PROTECTION)).value_text, '5');
  });

  test('drags a slider, and the numbers follow in the same frame', async () => {
    const box = await reveal(page, FOCAL);
    const y = box.y + box.height / 2;
    const width_mm = 26.9568;
    const seen = new Set();
    await fingers.send('touchStart', [[box.x + 60, y]], 200);
    for (let i = 1; i <= 12; i += 1) {
      await fingers.send('touchMove', [[box.x + 60 + 16 * i, y]]);
      const state = await mirror(page);
      const focal = state.controls.find((each) => each.id === FOCAL).value;
      const [fov] = state.headline.map((row) => Number(row.value_text));
      assert.ok(Math.abs(fov - across_deg(width_mm, focal)) < 0.06, `${fov} degrees at ${focal} mm`);
      seen.add(focal);
    }
    await fingers.send('touchEnd', []);
    assert.ok(seen.size > 3, `${seen.size} values on the way`);
    await at_rest(page);
    assert.ok(await value(FOCAL) > 35);
  });

  test('moves all three numbers by sliders', async () => {
    for (const [id, place] of [[FOCAL, 0], [ASPECT, 1], ['/run/sensor_rate', 2]]) {
      const box = await reveal(page, id);
      const before = await headline(page);
      const y = box.y + box.height / 2;
      await fingers.drag([box.x + box.width / 2, y], [box.x + box.width / 2 - 70, y]);
      await at_rest(page);
      const now = await headline(page);
      assert.notEqual(now[place], before[place], `${id} changed nothing in sight`);
    }
  });

  test('scrolls across a slider without changing it, and runs on', async () => {
    const box = await reveal(page, FOCAL);
    const before = await value(FOCAL);
    await fingers.drag([box.x + 60, box.y + 10], [box.x + 66, box.y - 110], { steps: 6 });
    await at_rest(page);
    const later = await box_of(page, FOCAL);
    assert.equal(await value(FOCAL), before);
    const moved = box.y - (later?.y ?? -Infinity);
    assert.ok(moved > 115, `moved by ${moved}`);
  });

  test('scrolls back to the very top with a few flings', async () => {
    await reveal(page, FOCAL);
    for (let i = 0; i < 8; i += 1) await fingers.drag([190, 420], [194, 700], { steps: 5 });
    await at_rest(page);
    assert.ok(await box_of(page, '/format/camera'), 'the first control is in sight again');
  });

  test('pinches the picture, not the page', async () => {
    const picture = { x: 0, y: 50, width: 390, height: 180 };
    const shot = async () => decode_png(await page.screenshot({ clip: picture })).pixels;
    const before = await shot();
    await fingers.pinch([140, 145], 60, 180);
    await at_rest(page);
    const zoomed = await shot();
    let different = 0;
    for (let at = 0; at < before.length; at += 3) different += before[at] !== zoomed[at];
    assert.ok(different > 2000, `${different} pixels differ`);
    assert.equal(await page.evaluate(() => visualViewport.scale), 1);
    assert.equal(await page.evaluate(() => window.scrollY), 0);
  });

  test('opens a list of choices, and picks from it', async () => {
    const box = await box_of(page, '/format/camera');
    await fingers.tap(box.x + 100, box.y + box.height / 2);
    await at_rest(page);
    const before = await frame_count(page);
    await page.waitForTimeout(500);
    assert.equal(await frame_count(page), before, 'an open list draws nothing at rest');
    await fingers.drag([190, 700], [190, 500], { steps: 6, rest_ms: 300 });
    await at_rest(page);
    assert.equal((await control(page, '/format/camera')).edit_text, 'alder', 'scrolling picks nothing');
    await fingers.tap(190, 640);
    await at_rest(page);
    assert.notEqual((await control(page, '/format/camera')).edit_text, 'alder');
  });
});

describe('a mouse on a desktop', () => {
  beforeEach(() => open(DEVICES.desktop));
  afterEach(close_clean);

  test('drags a slider, and the numbers follow', async () => {
    const box = await reveal(page, FOCAL);
    const [before] = await headline(page);
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + box.width / 2, y);
    await page.mouse.down();
    for (let i = 1; i <= 10; i += 1) await page.mouse.move(box.x + box.width / 2 + 5 * i, y);
    await page.mouse.up();
    await at_rest(page);
    assert.notEqual((await headline(page))[0], before);
    assert.equal((await control(page, 'command:undo')).enabled, true);
    await page.keyboard.press('Control+z');
    await at_rest(page);
    assert.equal((await headline(page))[0], before, 'one drag is one step of undo');
    await page.keyboard.press('Control+Shift+z');
    await at_rest(page);
    assert.notEqual((await headline(page))[0], before);
  });

  test('scrolls by the wheel, pixel for pixel', async () => {
    const box = await reveal(page, ASPECT);
    await page.mouse.move(box.x + box.width / 2, box.y);
    await page.mouse.wheel(0, 100);
    await at_rest(page);
    assert.equal((await box_of(page, ASPECT)).y, box.y - 100);
    await page.mouse.wheel(0, -60);
    await at_rest(page);
    assert.equal((await box_of(page, ASPECT)).y, box.y - 40);
  });
});
