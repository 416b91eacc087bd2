// Firefox for the browser tests, steered by WebDriver BiDi: on a screen of its own (Xvfb), because without one it has
// no WebGL 2; where there is no Xvfb, headless, and then the site is its text page. Both are worked by the keyboard.
import { spawn } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { load_puppeteer } from './tabs.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../..');

const SIZE = { width: 1440, height: 900 };
const START_MS = 90000;
const LONGEST_FILE_MS = 900000;

const candidates = [process.env.WIDEGATE_FIREFOX, path.join(root, 'build/deps/bin/firefox'), '/usr/bin/firefox-esr'];
const firefox = candidates.find((name) => name && fs.existsSync(name));

/** Why there is nothing to test with, or false. */
export const skip = firefox ? false : 'no Firefox that starts here: install firefox-esr, or set WIDEGATE_FIREFOX to its path, and run tools/setup';

/** A screen in memory as {name, close}, or null where there is no Xvfb. Its number comes through the pipe. */
async function open_screen() {
  const child = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', `${SIZE.width}x${SIZE.height}x24`, '-nolisten', 'tcp'], { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
  const number = await new Promise((done) => {
    child.once('error', () => done(null));
    child.once('exit', () => done(null));
    child.stdio[3].once('data', (data) => done(String(data).trim()));
  });
  if (number === null) return null;
  const close = () => child.kill();
  // A browser that did not start leaves nobody to close its screen.
  process.once('exit', close);
  return { name: `:${number}`, close };
}

// The panel that shows what was saved would take the keyboard from the page.
const downloads_into = (folder) => ({ 'browser.download.folderList': 2, 'browser.download.dir': folder, 'browser.download.alwaysOpenPanel': false });

/** Starts the browser: a fresh profile unless one is named; downloads go into a folder. Close with close(). */
export async function start_firefox({ profile, downloads, headless = false } = {}) {
  const puppeteer = await load_puppeteer();
  const screen = headless ? null : await open_screen();
  const browser = await puppeteer.launch({
    browser: 'firefox', executablePath: firefox, headless: !screen, userDataDir: profile, timeout: START_MS, defaultViewport: SIZE,
    env: { ...process.env, ...screen && { DISPLAY: screen.name } },
    extraPrefsFirefox: downloads ? downloads_into(downloads) : {},
  });
  const close = async () => {
    clearTimeout(guard);
    await browser.close();
    screen?.close();
  };
  // A test that failed before its close() must not keep the whole run waiting for its browser.
  const guard = setTimeout(close, LONGEST_FILE_MS).unref();
  return { browser, drawn: screen !== null, close };
}
