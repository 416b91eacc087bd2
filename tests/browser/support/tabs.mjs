// Tabs steered by puppeteer, in Firefox and in Chromium alike, and worked by the keyboard. It keeps its hands off the
// pages' workers, which other automation holds on to.
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { serve_folder } from '../../../tools/lib/static_server.mjs';
import { at_rest, control, ready as app_ready, until_page } from './gestures.mjs';
import { DIST, note_violations, watch } from './harness.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../..');
const require = createRequire(path.join(root, 'tools/package.json'));

/** Puppeteer itself, which is loaded only where it is needed. */
export const load_puppeteer = async () => (await import(require.resolve('puppeteer-core'))).default;

/** Serves the site; stop() may be called twice. */
export async function serve({ prefix = '/', folder = DIST } = {}) {
  if (!fs.existsSync(path.join(folder, 'index.html'))) throw new Error(`no site in ${folder}: run tools/build web`);
  const { server, address } = await serve_folder({ root: folder, prefix });
  const stop = () => new Promise((done) => {
    server.closeAllConnections();
    if (server.listening) server.close(done);
    else done();
  });
  return { address, stop };
}

/** Until the app runs and has nothing to draw. Browsers give frames to the tab in front alone. */
export async function ready(page) {
  await page.bringToFront();
  await app_ready(page);
}

/** A tab that remembers all that goes wrong on it, at an address. `tabs` is a browser or one of its contexts. */
export async function open_tab(tabs, address) {
  const page = await tabs.newPage();
  const trouble = watch(page, address);
  await page.evaluateOnNewDocument(note_violations);
  await page.goto(address);
  await ready(page);
  return { page, trouble };
}

export async function reload(page) {
  await page.reload();
  await ready(page);
}

/** Until the worker has the whole site and answers for this page. */
export const kept_offline = (page) => until_page(page, 'the site is kept on the device', () => navigator.serviceWorker.controller !== null);

const selector = (id) => `[data-id="${id}"]`;

/** Sets a slider as the keyboard does: digits on the control open the field. */
export async function set_slider(page, id, text) {
  await page.bringToFront();
  await page.focus(selector(id));
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await at_rest(page);
}

/** Replaces the text of a field as the keyboard does, and leaves it. */
export async function type_into(page, field, text) {
  await page.bringToFront();
  await page.focus(field);
  await page.keyboard.down('Control');
  await page.keyboard.press('a');
  await page.keyboard.up('Control');
  await page.keyboard.type(text);
  await page.keyboard.press('Tab');
  await at_rest(page);
}

export const set_text = (page, id, text) => type_into(page, selector(id), text);

export async function pick(page, id, value) {
  await page.bringToFront();
  await page.select(selector(id), value);
  await at_rest(page);
}

export async function press(page, id) {
  await page.bringToFront();
  await page.focus(selector(id));
  await page.keyboard.press('Enter');
  await at_rest(page);
}

export const value_text = async (page, id) => (await control(page, id)).value_text;
