// Every section in every theme against a stored small picture of it. A text that moves by a pixel passes; a missing
// panel, a wrong theme, a control gone astray does not. What failed is left in build/screenshots, whole.
//
// WIDEGATE_GOLDEN=record node --test tests/browser/golden.test.mjs   stores the pictures anew: look at each of them.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { after, before, describe, test } from 'node:test';
import { SHOTS, decode_png, open_site, start } from './support/harness.mjs';
import { at_rest, box_of, mirror, reveal } from './support/gestures.mjs';
import { difference, encode_png, thumbnail } from './support/pictures.mjs';

const GOLDEN = path.join(path.dirname(fileURLToPath(import.meta.url)), 'golden');
const RECORD = process.env.WIDEGATE_GOLDEN === 'record';
/** Thumbnails are this much smaller than the screen. */
const BY = 5;
/** Blocks that may differ before a picture is another one. */
const ALLOWED = 0.05;
/** Bytes that all stored pictures may take. */
const BUDGET = 600_000;

const THEMES = {
  dark: { colorScheme: 'dark' },
  light: { colorScheme: 'light' },
  sunlight: { colorScheme: 'light', contrast: 'more' },
  forced: { colorScheme: 'dark', forcedColors: 'active' },
};
const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 1, hasTouch: true, isMobile: true };
const WHOLE = {
  desktop: { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1 },
  landscape: { viewport: { width: 844, height: 390 }, deviceScaleFactor: 1, hasTouch: true, isMobile: true },
};
const SECTIONS = ['format', 'frame', 'cover', 'see', 'resolve', 'run', 'store', 'choose', 'delivery', 'handover', 'lesson'];

let site;
before(async () => { site = await start(); });
after(() => site.stop());

async function open(device, theme) {
  const opened = await open_site(site, { device, ...THEMES[theme] });
  await at_rest(opened.page);
  return opened.page;
}

/** Scrolls the section's first control to the same height of the screen, whatever stands above it. */
async function bring_up(page, section) {
  const { id } = (await mirror(page)).controls.find((each) => each.section === section && each.enabled && !each.further);
  let { y } = await reveal(page, id);
  for (let turn = 0; turn < 6 && Math.abs(y - 480) > 1; turn += 1) {
    await page.mouse.move(195, 600);
    await page.mouse.wheel(0, y - 480);
    await at_rest(page);
    const before = y;
    y = (await box_of(page, id))?.y ?? (await reveal(page, id)).y;
    if (y === before) break;
  }
  await page.mouse.move(0, 0);
  await at_rest(page);
}

const golden_file = (name) => path.join(GOLDEN, `${name}.png`);

function stored(name) {
  const file = golden_file(name);
  assert.ok(fs.existsSync(file), `no stored picture ${name}: record with WIDEGATE_GOLDEN=record, and look at it`);
  return decode_png(fs.readFileSync(file));
}

/** Compares, or stores. Returns what is wrong, or null. */
async function check(page, name) {
  const png = await page.screenshot();
  const now = thumbnail(png, BY);
  if (RECORD) {
    fs.mkdirSync(GOLDEN, { recursive: true });
    fs.writeFileSync(golden_file(name), encode_png(now));
    fs.mkdirSync(SHOTS, { recursive: true });
    fs.writeFileSync(path.join(SHOTS, `golden_${name}.png`), png);
    return null;
  }
  const off = difference(now, stored(name));
  if (off <= ALLOWED) return null;
  fs.mkdirSync(SHOTS, { recursive: true });
  const kept = path.join(SHOTS, `golden_${name}.png`);
  fs.writeFileSync(kept, png);
  return `${name}: ${(off * 100).toFixed(1)} % differs; see ${kept}`;
}

describe('every section looks as it did', () => {
  for (const theme of Object.keys(THEMES)) {
    test(theme, async () => {
      const page = await open(PHONE, theme);
      const wrong = [];
      for (const section of SECTIONS) {
        await bring_up(page, section);
        wrong.push(await check(page, `${theme}_${section}`));
      }
      await page.context().close();
      assert.deepEqual(wrong.filter(Boolean), []);
    });

    test(`${theme}, whole screens`, async () => {
      const wrong = [];
      for (const [shape, device] of Object.entries(WHOLE)) {
        const page = await open(device, theme);
        wrong.push(await check(page, `${theme}_${shape}`));
        await page.context().close();
      }
      assert.deepEqual(wrong.filter(Boolean), []);
    });
  }
});

describe('the comparison itself', { skip: RECORD }, () => {
  test('notices another theme and another section', () => {
    for (const section of SECTIONS) {
      assert.ok(difference(stored(`dark_${section}`), stored(`light_${section}`)) > ALLOWED, section);
      for (const other of SECTIONS) {
        if (other === section) continue;
        assert.ok(difference(stored(`light_${section}`), stored(`light_${other}`)) > ALLOWED, `${section}, ${other}`);
      }
    }
  });

  test('notices a missing panel, and lets text move by a pixel', async () => {
    const page = await open(PHONE, 'light');
    await bring_up(page, 'store');
    const png = await page.screenshot();
    const whole = thumbnail(png, BY);
    const blank = { ...whole, pixels: Buffer.from(whole.pixels) };
    for (let y = Math.floor(whole.height * 0.4); y < whole.height * 0.9; y += 1) {
      blank.pixels.fill(whole.pixels[(y * whole.width + 1) * 3], y * whole.width * 3, (y + 1) * whole.width * 3);
    }
    assert.ok(difference(whole, blank) > ALLOWED);
    await page.mouse.move(195, 600);
    await page.mouse.wheel(0, 1);
    await at_rest(page);
    const moved = thumbnail(await page.screenshot(), BY);
    assert.ok(difference(whole, moved) <= ALLOWED, `${difference(whole, moved)}`);
    await page.context().close();
  });

  test('the stored pictures are small', () => {
    const bytes = fs.readdirSync(GOLDEN).reduce((sum, name) => sum + fs.statSync(path.join(GOLDEN, name)).size, 0);
    assert.ok(bytes < BUDGET, `${bytes} bytes`);
  });
});
