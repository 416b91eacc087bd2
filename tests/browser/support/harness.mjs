// What every browser test stands on: the built site served on a free port, one Chromium, device profiles, and a
// page that remembers everything that went wrong on it. Tests themselves live beside this file in *.test.mjs.
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { inflateSync } from 'node:zlib';
import { serve_folder } from '../../../tools/lib/static_server.mjs';
import { PATIENCE_MS, until, until_page } from './gestures.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../..');
const require = createRequire(path.join(root, 'tools/package.json'));
export const { chromium } = require('playwright-core');

export const DIST = path.join(root, 'build/web/dist');
/** Where tests leave pictures for people to look at; not checked in. */
export const SHOTS = path.join(root, 'build/screenshots');

/** Screens the site promises to work on; sizes in CSS pixels. */
export const DEVICES = {
  phone: { viewport: { width: 390, height: 844 }, deviceScaleFactor: 3, hasTouch: true, isMobile: true },
  phone_landscape: { viewport: { width: 844, height: 390 }, deviceScaleFactor: 3, hasTouch: true, isMobile: true },
  desktop: { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1 },
  desktop_2x: { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 2 },
};

// Software WebGL 2 and colours that do not depend on the machine; nothing that calls home.
const LAUNCH_ARGUMENTS = [
  '--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader',
  '--force-color-profile=srgb', '--disable-quic', '--no-first-run', '--disable-background-networking',
  '--disable-component-update', '--disable-sync',
];

/** No file of tests may take longer, on a machine that is busy with others. */
const LONGEST_FILE_MS = 900000;

function browser_path() {
  const staged = path.join(root, 'build/deps/bin/chromium');
  return process.env.WIDEGATE_CHROMIUM || (fs.existsSync(staged) ? staged : '/usr/bin/chromium');
}

/** How every test starts the browser. */
export const launch_options = (more = []) => ({ executablePath: browser_path(), args: [...LAUNCH_ARGUMENTS, ...more] });

/**
 * Serves the site and starts the browser. prefix is the path the site appears under ("/", "/some/where/").
 * Close with stop().
 */
export async function start({ prefix = '/', launch_arguments = [], folder = DIST } = {}) {
  if (!fs.existsSync(path.join(folder, 'index.html'))) throw new Error(`no site in ${folder}: run tools/build web`);
  const { server, address } = await serve_folder({ root: folder, prefix });
  const browser = await chromium.launch(launch_options(launch_arguments));
  const stop = async () => {
    clearTimeout(guard);
    await browser.close();
    server.closeAllConnections();
    if (server.listening) await new Promise((done) => server.close(done));
  };
  // A test that failed before its stop() must not keep the whole run waiting for its browser.
  const guard = setTimeout(stop, LONGEST_FILE_MS).unref();
  return { browser, server, address, stop };
}

/** Notes every console error, page error, failed request, security-policy violation and request to another host. */
export function watch(page, address) {
  const trouble = [];
  const host = new URL(address).host;
  page.on('console', (message) => {
    if (['error', 'warning', 'warn'].includes(message.type())) trouble.push(`console ${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => trouble.push(`page error: ${error.message}`));
  page.on('requestfailed', (request) => {
    // What was still under way when the page was left is no failure of the site.
    if (['net::ERR_ABORTED', 'NS_BINDING_ABORTED'].includes(request.failure()?.errorText)) return;
    trouble.push(`request failed: ${request.url()}`);
  });
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (url.protocol.startsWith('http') && url.host !== host) trouble.push(`request to another host: ${url.href}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) trouble.push(`${response.status()} for ${response.url()}`);
  });
  return trouble;
}

/** Runs in the page before anything of its own: keeps what its content policy forbade. */
export function note_violations() {
  window.policy_violations = [];
  document.addEventListener('securitypolicyviolation', (event) => {
    window.policy_violations.push(`${event.violatedDirective}: ${event.blockedURI}`);
  });
}

/**
 * Opens the site in a fresh context of the given device. Resolves, once the canvas shows a picture, to
 * {page, context, trouble}; options are passed to the context (colorScheme, reducedMotion, permissions...).
 */
export async function open_site({ browser, address }, { device = DEVICES.desktop, fragment = '', ...options } = {}) {
  const context = await browser.newContext({ colorScheme: 'dark', ...device, ...options });
  context.setDefaultTimeout(PATIENCE_MS);
  const page = await context.newPage();
  const trouble = watch(page, address);
  await page.addInitScript(note_violations);
  await page.goto(address + fragment);
  await wait_for_picture(page);
  return { page, context, trouble };
}

export const policy_violations = (page) => page.evaluate(() => window.policy_violations);

/** Waits until a screenshot of the canvas has more than a flat colour on it. */
export async function wait_for_picture(page) {
  await until_page(page, 'the app has drawn', () => window.widegate?.frame_count() > 0);
  await until('a picture on the canvas', async () => colour_count(await page.locator('#canvas').screenshot({ scale: 'css' })), (colours) => colours > 8);
}

/** A PNG as {width, height, channels, pixels}: 8-bit RGB or RGBA, not interlaced, which is what Chromium writes. */
export function decode_png(png) {
  const width = png.readUInt32BE(16);
  const height = png.readUInt32BE(20);
  const channels = { 2: 3, 6: 4 }[png[25]];
  if (png[24] !== 8 || !channels || png[28] !== 0) throw new Error('not an 8-bit RGB or RGBA picture');
  const parts = [];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) {
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT') {
      parts.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
    }
  }
  return { width, height, channels, pixels: unfilter(inflateSync(Buffer.concat(parts)), width, height, channels) };
}

function unfilter(data, width, height, channels) {
  const stride = width * channels;
  const out = Buffer.alloc(stride * height);
  for (let y = 0; y < height; y += 1) {
    const kind = data[y * (stride + 1)];
    for (let x = 0; x < stride; x += 1) {
      const left = x >= channels ? out[y * stride + x - channels] : 0;
      const up = y > 0 ? out[(y - 1) * stride + x] : 0;
      const corner = x >= channels && y > 0 ? out[(y - 1) * stride + x - channels] : 0;
      out[y * stride + x] = data[y * (stride + 1) + 1 + x] + predicted(kind, left, up, corner);
    }
  }
  return out;
}

/** PNG's five row filters (ISO/IEC 15948, section 9). */
function predicted(kind, left, up, corner) {
  if (kind === 0) return 0;
  if (kind === 1) return left;
  if (kind === 2) return up;
  if (kind === 3) return (left + up) >> 1;
  const estimate = left + up - corner;
  const [a, b, c] = [left, up, corner].map((value) => Math.abs(estimate - value));
  if (a <= b && a <= c) return left;
  return b <= c ? up : corner;
}

/** How many different colours a PNG has. */
export function colour_count(png) {
  const { pixels, channels } = decode_png(png);
  const seen = new Set();
  for (let at = 0; at < pixels.length; at += channels) seen.add(pixels.readUIntBE(at, 3));
  return seen.size;
}

/** Writes a picture into build/screenshots and returns its path. */
export async function keep_screenshot(page, name) {
  fs.mkdirSync(SHOTS, { recursive: true });
  const file = path.join(SHOTS, `${name}.png`);
  await page.screenshot({ path: file });
  return file;
}
