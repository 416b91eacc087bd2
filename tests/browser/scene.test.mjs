// The scene through the lens, read from pixels: circles that the squeeze makes ellipses, darkness outside the image
// circle, samples under the magnifier, a lost drawing context.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { DEVICES, decode_png, keep_screenshot, open_site, policy_violations, start } from './support/harness.mjs';
import { Fingers, at_rest, box_of, control, frame_count, lose_context, reload, restore_context } from './support/gestures.mjs';

let site;
before(async () => { site = await start(); });
after(() => site.stop());

/** Opens the app and sets controls through the page's own, as the keyboard would. */
async function open_scene(device, settings = {}) {
  const opened = await open_site(site, { device, reducedMotion: 'reduce' });
  await at_rest(opened.page);
  await set_all(opened.page, { 'view:picture': 'scene', ...settings });
  return opened;
}

async function set_all(page, settings) {
  for (const [id, value] of Object.entries(settings)) {
    await page.evaluate(([wanted, text]) => {
      const element = document.querySelector(`[data-id="${CSS.escape(wanted)}"]`);
      const field = element.type === 'range' ? element.closest('.control').querySelector('.exact') : element;
      if (field.type === 'checkbox') field.checked = text === 'true';
      else field.value = text;
      field.dispatchEvent(new Event('change'));
    }, [id, String(value)]);
    await at_rest(page);
  }
}

/** The part of the canvas that holds the picture, as pixels. */
async function picture(page) {
  const bar = await box_of(page, 'view:picture');
  const { width } = page.viewportSize();
  const top = width > 1000 ? 100 : 48;
  const left = width > 1000 ? 270 : width > 800 ? 75 : 0;
  const right = width > 1000 ? 860 : width > 800 ? 300 : 250;
  const clip = { x: left, y: top, width: right - left, height: bar.y - top };
  return decode_png(await page.screenshot({ clip }));
}

const pixel = ({ pixels, width, channels }, x, y) => [0, 1, 2].map((i) => pixels[(y * width + x) * channels + i]);
const yellow = ([r, g, b]) => r > 225 && g > 130 && b < 90;
const dim = ([r, g, b]) => r + g + b < 60;

/** Extent of all pixels that a test holds for. */
function extent(image, holds) {
  const box = { left: Infinity, right: -1, top: Infinity, bottom: -1, count: 0 };
  for (let y = 0; y < image.height; y += 1) {
    for (let x = 0; x < image.width; x += 1) {
      if (!holds(pixel(image, x, y))) continue;
      box.left = Math.min(box.left, x);
      box.right = Math.max(box.right, x);
      box.top = Math.min(box.top, y);
      box.bottom = Math.max(box.bottom, y);
      box.count += 1;
    }
  }
  return { ...box, width: box.right - box.left + 1, height: box.bottom - box.top + 1 };
}

async function close_clean({ page, context, trouble }) {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await context.close();
}

/** A plan whose yellow circle, 1 m across, is whole in the picture whatever the squeeze. */
const WIDE = { '/lens/focal_mm': 24, '/lens/image_circle_mm': 60 };

describe('the chart\'s circle, measured on the screen', () => {
  for (const [name, device] of Object.entries({ phone: DEVICES.phone, desktop: DEVICES.desktop })) {
    test(`${name}: twice as high as wide as recorded with 2x, round when de-squeezed`, async () => {
      const opened = await open_scene(device, WIDE);
      const { page } = opened;
      const plain = extent(await picture(page), yellow);
      assert.ok(plain.count > 200, `${plain.count} yellow pixels`);
      assert.ok(Math.abs(plain.width / plain.height - 1) < 0.02, `${plain.width} x ${plain.height} without a squeeze`);
      await set_all(page, { '/lens/squeeze': 2 });
      const squeezed = extent(await picture(page), yellow);
      assert.ok(Math.abs(squeezed.height / squeezed.width - 2) < 0.08, `${squeezed.width} x ${squeezed.height} squeezed`);
      await keep_screenshot(page, `scene_squeezed_${name}`);
      await set_all(page, { 'view:desqueezed': 'true' });
      const round = extent(await picture(page), yellow);
      assert.ok(Math.abs(round.width / round.height - 1) < 0.03, `${round.width} x ${round.height} de-squeezed`);
      await keep_screenshot(page, `scene_desqueezed_${name}`);
      await close_clean(opened);
    });
  }

  test('a lens twice as long shows it twice as large', async () => {
    const opened = await open_scene(DEVICES.desktop, { ...WIDE, '/lens/focus_m': 10 });
    const wide = extent(await picture(opened.page), yellow);
    await set_all(opened.page, { '/lens/focal_mm': 48 });
    const long = extent(await picture(opened.page), yellow);
    assert.ok(Math.abs(long.width / wide.width - 2) < 0.05, `${wide.width} became ${long.width}`);
    await close_clean(opened);
  });
});

test('outside the image circle it is dark', async () => {
  const opened = await open_scene(DEVICES.desktop, { '/lens/image_circle_mm': 60 });
  const covered = await picture(opened.page);
  const mode = extent(covered, (colour) => !dim(colour));
  await set_all(opened.page, { '/lens/image_circle_mm': 24 });
  const image = await picture(opened.page);
  await keep_screenshot(opened.page, 'scene_dark_corners');
  for (const [x, y] of [[mode.left + 8, mode.top + 8], [mode.left + 8, mode.bottom - 8]]) {
    assert.ok(!dim(pixel(covered, x, y)), `covered at ${x}, ${y}`);
    assert.ok(dim(pixel(image, x, y)), `dark at ${x}, ${y}: ${pixel(image, x, y)}`);
  }
  assert.ok(extent(image, (colour) => !dim(colour)).count > 10000, 'the middle is not');
  await close_clean(opened);
});

/** How often the colour changes along the rows of the magnifier's middle pane. */
async function changes_in_recorded_pane(page) {
  const bar = await box_of(page, 'view:picture');
  const clip = { x: 530, y: bar.y - 200, width: 200, height: 140 };
  const image = decode_png(await page.screenshot({ clip }));
  let changes = 0;
  for (let y = 0; y < image.height; y += 1) {
    for (let x = 1; x < image.width; x += 1) {
      const [a, b] = [pixel(image, x - 1, y), pixel(image, x, y)];
      changes += Math.abs(a[1] - b[1]) > 8 ? 1 : 0;
    }
  }
  return changes;
}

test('the magnifier shows larger blocks for a 2048 resample than as read', async () => {
  const opened = await open_scene(DEVICES.desktop, { 'view:magnifier': 'true' });
  const { page } = opened;
  const { choices } = await control(page, '/format/recording');
  const resample = choices.find((item) => /^2048 ×/.test(item.detail));
  assert.ok(resample, choices.map((item) => item.detail).join(', '));
  await keep_screenshot(page, 'scene_magnified_as_read');
  const as_read = await changes_in_recorded_pane(page);
  await set_all(page, { '/format/recording': resample.value });
  await keep_screenshot(page, 'scene_magnified_resampled');
  const resampled = await changes_in_recorded_pane(page);
  assert.ok(as_read > 500, `${as_read} changes as read`);
  assert.ok(resampled < as_read * 0.7, `${as_read} changes became ${resampled}`);
  await close_clean(opened);
});

test('a finger moves the magnifier\'s spot, and nothing is drawn at rest', async () => {
  const opened = await open_scene(DEVICES.phone, { 'view:magnifier': 'true', 'view:scene': 'deck' });
  const { page } = opened;
  const fingers = await Fingers.on(page);
  const before = (await control(page, 'view:spot-across')).value;
  await fingers.drag([130, 95], [160, 95], { rest_ms: 300 });
  await at_rest(page);
  const moved = (await control(page, 'view:spot-across')).value;
  assert.ok(moved > before + 1, `${before} became ${moved}`);
  const frames = await frame_count(page);
  await page.waitForTimeout(2000);
  assert.equal(await frame_count(page), frames);
  await keep_screenshot(page, 'scene_deck_magnified_phone');
  await close_clean(opened);
});

test('a lost drawing context comes back with the same scene', async () => {
  const opened = await open_scene(DEVICES.phone, { 'view:scene': 'deck' });
  const { page } = opened;
  const before = decode_png(await page.screenshot()).pixels;
  await lose_context(page);
  await restore_context(page);
  assert.equal(Buffer.compare(decode_png(await page.screenshot()).pixels, before), 0);
  assert.equal(await page.evaluate(() => document.getElementById('canvas').getContext('webgl2').getError()), 0);
  await close_clean(opened);
});

describe('two formats', () => {
  for (const [name, device] of Object.entries({
    phone: DEVICES.phone, landscape: DEVICES.phone_landscape, desktop: DEVICES.desktop,
  })) {
    test(`${name}: over each other, side by side, in the page's table, after a reload`, async () => {
      const opened = await open_site(site, { device, reducedMotion: 'reduce' });
      const { page } = opened;
      await at_rest(page);
      await set_all(page, { 'view:picture': 'compare' });
      await keep_screenshot(page, `compare_nothing_${name}`);
      await set_all(page, { 'compare:camera': 'birch' });
      await keep_screenshot(page, `compare_overlay_${name}`);
      const over = await picture(page);
      await set_all(page, { 'view:scene': 'deck', 'view:picture': 'compare', 'compare:side-by-side': 'true' });
      await keep_screenshot(page, `compare_beside_${name}`);
      const beside = await picture(page);
      const warm = ([r, g, b]) => r > g + 40 && r > b;
      assert.ok(extent(over, warm).count < extent(beside, warm).count - 500, 'two sunsets are seen');
      const cell = page.locator('[data-report="compare.mode.width_mm"] td');
      assert.equal(await cell.textContent(), '26.96 mm against 36.19 mm, +34 %');
      await reload(page);
      assert.equal((await control(page, 'compare:camera')).edit_text, 'birch');
      await close_clean(opened);
    });
  }
});

test('the pictures of every screen', async () => {
  for (const [name, device] of Object.entries({
    phone: DEVICES.phone, landscape: DEVICES.phone_landscape, desktop: DEVICES.desktop,
  })) {
    for (const scene of ['chart', 'deck']) {
      const opened = await open_scene(device, { 'view:scene': scene });
      const lit = extent(await picture(opened.page), (colour) => !dim(colour));
      assert.ok(lit.count > 5000, `${scene} on ${name}: ${lit.count} lit pixels`);
      await keep_screenshot(opened.page, `scene_${scene}_${name}`);
      await close_clean(opened);
    }
  }
});
