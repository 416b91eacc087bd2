// Every screen the site promises: sharp at every pixel ratio, everything inside the screen and large enough for a
// finger, with notches, large text, turning, and what the system prefers. Leaves pictures in build/screenshots.
//
// WIDEGATE_README_PICTURE=docs/screenshot.png node --test tests/browser/screens.test.mjs   also takes README's picture.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { DEVICES, colour_count, keep_screenshot, open_site, policy_violations, start } from './support/harness.mjs';
import { at_rest, box_of, mirror, reveal, until_page } from './support/gestures.mjs';

const SCREENS = [
  { width: 360, height: 640, ratio: 2, finger: true },
  { width: 390, height: 844, ratio: 3, finger: true },
  { width: 844, height: 390, ratio: 3, finger: true },
  { width: 768, height: 1024, ratio: 2, finger: true },
  { width: 1440, height: 900, ratio: 1, finger: false },
  { width: 1920, height: 1080, ratio: 1.5, finger: false },
];
const FOCAL = '/lens/focal_mm';

let site;
before(async () => { site = await start(); });
after(() => site.stop());

const device_of = ({ width, height, ratio, finger }) => ({
  viewport: { width, height }, deviceScaleFactor: ratio, hasTouch: finger, isMobile: finger,
});

async function close_clean({ page, context, trouble }) {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await context.close();
}

/** Device pixels of the canvas against what its CSS size and the pixel ratio ask for. */
const sharpness = (page) => page.evaluate(() => {
  const canvas = document.getElementById('canvas');
  const { width, height } = canvas.getBoundingClientRect();
  return {
    off_x: Math.abs(canvas.width - width * devicePixelRatio), off_y: Math.abs(canvas.height - height * devicePixelRatio),
    fills: width === innerWidth && height === innerHeight,
  };
});

async function assert_sharp(page) {
  const { off_x, off_y, fills } = await sharpness(page);
  assert.ok(fills, 'the canvas fills the screen');
  assert.ok(off_x <= 1 && off_y <= 1, `off by ${off_x}, ${off_y} device pixels`);
}

/** Where all controls are drawn that are in sight. */
const boxes = (page) => page.locator('.control:not(.away)').evaluateAll((all) => all.map((element) => {
  const { x, y, width, height } = element.getBoundingClientRect();
  return { id: element.dataset.key, x, y, width, height };
}));

describe('every screen', () => {
  for (const screen of SCREENS) {
    test(`${screen.width} x ${screen.height} at ${screen.ratio}`, async () => {
      const opened = await open_site(site, { device: device_of(screen) });
      const { page } = opened;
      await at_rest(page);
      await assert_sharp(page);
      for (const place of [null, FOCAL, '/run/shutter_angle_deg', '/title']) {
        if (place) await reveal(page, place);
        const name = place ? place.replace(/\W+/g, '_') : '';
        await keep_screenshot(page, `screen_${screen.width}x${screen.height}${name}`);
        const found = await boxes(page);
        assert.ok(found.length >= 4, `${found.length} controls in sight`);
        for (const { id, x, width, height } of found) {
          assert.ok(x >= 0 && x + width <= screen.width, `${id} is cut at the sides`);
          if (screen.finger) assert.ok(width >= 44 && height >= 43.5, `${id} is ${width} x ${height}`);
        }
      }
      await close_clean(opened);
    });
  }
});

describe('the system\'s wishes', () => {
  for (const [name, options] of Object.entries({
    light: { colorScheme: 'light' },
    forced_colours: { forcedColors: 'active' },
    more_contrast: { contrast: 'more' },
  })) {
    test(`${name.replace('_', ' ')}`, async () => {
      const opened = await open_site(site, { device: DEVICES.phone });
      await at_rest(opened.page);
      const before = await opened.page.screenshot();
      await opened.page.emulateMedia(options);
      await at_rest(opened.page);
      await keep_screenshot(opened.page, `wish_${name}`);
      assert.notDeepEqual(await opened.page.screenshot(), before, 'the picture follows without a reload');
      assert.ok(colour_count(await opened.page.screenshot()) > 8);
      await close_clean(opened);
    });
  }

  test('large text makes controls larger', async () => {
    const opened = await open_site(site, { device: DEVICES.phone });
    const { page } = opened;
    await at_rest(page);
    const before = await reveal(page, '/format/camera');
    const session = await page.context().newCDPSession(page);
    await session.send('Page.setFontSizes', { fontSizes: { standard: 24 } });
    await at_rest(page);
    await until_page(page, 'larger text', () => parseFloat(getComputedStyle(document.documentElement).fontSize) === 24);
    await at_rest(page);
    await keep_screenshot(page, 'wish_large_text');
    const now = await reveal(page, '/format/camera');
    assert.ok(now.height > before.height * 1.3, `${before.height} became ${now.height}`);
    await close_clean(opened);
  });

  test('notches and bars stay free', async () => {
    const opened = await open_site(site, { device: DEVICES.phone_landscape });
    const { page } = opened;
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setSafeAreaInsetsOverride', { insets: { left: 47, right: 47, top: 20, bottom: 21 } });
    await page.evaluate(() => window.dispatchEvent(new Event('resize')));
    await at_rest(page);
    await keep_screenshot(page, 'wish_notches');
    for (const { id, x, width } of await boxes(page)) {
      assert.ok(x >= 47 && x + width <= 844 - 47, `${id} from ${x} to ${x + width}`);
    }
    await close_clean(opened);
  });
});

describe('a screen that changes', () => {
  test('turning keeps the picture sharp and the plan', async () => {
    const opened = await open_site(site, { device: DEVICES.phone });
    const { page } = opened;
    await at_rest(page);
    const { headline } = await mirror(page);
    for (const [width, height] of [[844, 390], [390, 844], [320, 568], [1440, 900]]) {
      await page.setViewportSize({ width, height });
      await at_rest(page);
      await assert_sharp(page);
    }
    assert.deepEqual((await mirror(page)).headline, headline);
    await close_clean(opened);
  });

  test('another pixel ratio is followed', async () => {
    const opened = await open_site(site, { device: DEVICES.desktop });
    const { page } = opened;
    await at_rest(page);
    const session = await page.context().newCDPSession(page);
    for (const deviceScaleFactor of [1.75, 1.25, 3]) {
      // As zooming does: the window stays, so its size in CSS pixels changes with the ratio.
      const [width, height] = [1200, 800].map((pixels) => Math.round(pixels / deviceScaleFactor));
      await session.send('Emulation.setDeviceMetricsOverride', { width, height, deviceScaleFactor, mobile: false });
      await until_page(page, 'another pixel ratio', (ratio) => devicePixelRatio === ratio, deviceScaleFactor);
      await at_rest(page);
      await assert_sharp(page);
    }
    await close_clean(opened);
  });
});

test('the picture of the README', { skip: !process.env.WIDEGATE_README_PICTURE }, async () => {
  const opened = await open_site(site, { device: DEVICES.desktop });
  await at_rest(opened.page);
  await opened.page.locator('[data-id="/lens/focal_mm"]').evaluate((element) => element.focus({ preventScroll: true }));
  await at_rest(opened.page);
  await opened.page.locator('[data-id="/lens/focal_mm"]').evaluate((element) => element.blur());
  await at_rest(opened.page);
  await opened.page.screenshot({ path: process.env.WIDEGATE_README_PICTURE });
  await close_clean(opened);
});
