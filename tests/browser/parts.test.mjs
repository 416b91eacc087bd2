// The program comes in two parts: the picture needs the first alone, and the rest follows at once. What stands on the
// screen while the first is on its way, what is true while the rest is missing, and that neither calls the other early.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { at_rest, control, ready, settled_address } from './support/gestures.mjs';
import { DEVICES, DIST, chromium, launch_options, note_violations, open_site, policy_violations, start, wait_for_picture, watch } from './support/harness.mjs';
import { first_part_runs, live_without_rest, rest_of, serve_by_line } from './support/parts_story.mjs';
import { load_puppeteer } from './support/tabs.mjs';

const NAMES = path.join(DIST, '../parts/widegate_rest.wasm.names');

/** What the program called of its rest too early, by name. */
async function called_early(page) {
  const lines = fs.readFileSync(NAMES, 'utf8').split('\n').map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1)]);
  const names = new Map(lines);
  return [...new Set((await rest_of(page)).called_early)].map((place) => names.get(String(place)) ?? place);
}

async function chromium_on_a_line(t) {
  const site = await serve_by_line();
  t.after(site.stop);
  const browser = await chromium.launch(launch_options());
  t.after(() => browser.close());
  return { ...site, browser };
}

test('no first picture calls the rest: a first visit, a link, a kept plan, on a phone and on a large screen', async (t) => {
  const site = await start();
  t.after(site.stop);
  const large = { viewport: { width: 2560, height: 2160 } };
  for (const device of [DEVICES.phone, DEVICES.desktop, large]) {
    const { page, context, trouble } = await open_site(site, { device });
    await at_rest(page);
    assert.deepEqual(await called_early(page), []);
    await page.locator('[data-id="/lens/focal_mm"]').focus();
    await page.keyboard.type('65');
    await page.keyboard.press('Enter');
    const link = await settled_address(page);
    await page.reload();
    await ready(page);
    assert.equal((await control(page, '/lens/focal_mm')).edit_text, '65');
    assert.deepEqual(await called_early(page), [], 'with a kept plan');
    const other = await site.browser.newContext();
    const second = await other.newPage();
    await second.goto(link);
    await ready(second);
    assert.equal((await control(second, '/lens/focal_mm')).edit_text, '65');
    assert.deepEqual(await called_early(second), [], 'with a link');
    assert.deepEqual(trouble, []);
    assert.deepEqual(await policy_violations(page), []);
    await context.close();
    await other.close();
  }
});

test('the rest is asked for after the first picture, and only then', async (t) => {
  const { address, line, browser } = await chromium_on_a_line(t);
  line.held = true;
  const page = await browser.newPage();
  await page.goto(address, { waitUntil: 'commit' });
  await page.waitForFunction(() => document.getElementById('loaded')?.value > 0);
  assert.equal(line.asked_for_rest, 0);
  line.let_go();
  await ready(page);
  const [picture, rest] = await page.evaluate(() => [
    performance.getEntriesByName('first-frame')[0].startTime,
    performance.getEntriesByType('resource').find((entry) => /widegate_rest/.test(entry.name)).startTime,
  ]);
  assert.ok(rest >= picture, `asked for at ${rest} ms, first picture at ${picture} ms`);
});

const LOOKS = [
  ['dark', { colorScheme: 'dark' }, 'rgb(14, 16, 19)', 'rgb(242, 242, 242)'],
  ['light', { colorScheme: 'light' }, 'rgb(246, 246, 243)', 'rgb(20, 20, 20)'],
  ['high contrast', { colorScheme: 'light', contrast: 'more' }, 'rgb(255, 255, 255)', 'rgb(0, 0, 0)'],
];

test('on a slow line the name, the question and the bytes so far are there at once, in the colours of the device', async (t) => {
  const { address, line, browser } = await chromium_on_a_line(t);
  for (const [name, options, page_colour, text_colour] of LOOKS) {
    line.held = true;
    const context = await browser.newContext({ ...options, viewport: { width: 390, height: 844 } });
    const page = await context.newPage();
    await page.addInitScript(note_violations);
    await page.goto(address, { waitUntil: 'commit' });
    await page.waitForFunction(() => document.getElementById('loaded')?.value > 0);
    const seen = await page.evaluate(() => ({
      words: document.getElementById('loading').innerText,
      progress: document.getElementById('loaded').value,
      page: getComputedStyle(document.body).backgroundColor,
      text: getComputedStyle(document.querySelector('#loading .name')).color,
    }));
    assert.match(seen.words, /Widegate[^]*Which recording format[^]*\d+ % of \d+ KB/, name);
    assert.ok(seen.progress < 1, name);
    assert.equal(seen.page, page_colour, name);
    assert.equal(seen.text, text_colour, name);
    line.let_go();
    await wait_for_picture(page);
    assert.equal(await page.locator('#loading').count(), 0);
    assert.deepEqual(await policy_violations(page), []);
    await context.close();
  }
});

test('a first part that breaks off is told', async (t) => {
  const { address, line, browser, stop } = await chromium_on_a_line(t);
  line.held = true;
  const page = await browser.newPage();
  await page.goto(address, { waitUntil: 'commit' });
  await page.waitForFunction(() => document.getElementById('loaded')?.value > 0);
  line.waiting.length = 0;
  await stop();
  await page.waitForFunction(() => !document.getElementById('message').hidden);
  assert.match(await page.locator('#message').innerText(), /did not reach this device whole/);
});

test('a line that drops between the parts leaves a working app that tells, tries again and becomes whole', async (t) => {
  const site = await serve_by_line();
  t.after(site.stop);
  site.line.rest = false;
  const browser = await (await load_puppeteer()).launch(launch_options());
  t.after(() => browser.close());
  const page = await browser.newPage();
  const trouble = watch(page, site.address);
  await page.evaluateOnNewDocument(note_violations);
  await page.goto(site.address);
  await live_without_rest(page, site.line);
  assert.deepEqual(trouble.filter((line) => !/widegate_rest|ERR_EMPTY_RESPONSE|ERR_CONNECTION/.test(line)), []);
  assert.deepEqual(await policy_violations(page), []);
});

test('without the rest every control can be set and every button pressed; nothing of the rest is called', async (t) => {
  const { address, line, browser } = await chromium_on_a_line(t);
  line.rest = false;
  const page = await browser.newPage();
  const trouble = watch(page, address);
  await page.goto(address);
  await first_part_runs(page);
  await at_rest(page);
  const controls = await page.evaluate(() => window.widegate.mirror().controls.filter((each) => each.enabled));
  assert.ok(controls.length > 30);
  for (const { id, kind } of controls) {
    // One that was set before may have put this one away.
    await page.evaluate(([place, what]) => {
      const element = document.querySelector(place);
      if (!element || element.disabled) return;
      if (what === 'action') element.click();
      else if (what === 'choice') element.selectedIndex = element.options.length - 1;
      else if (what === 'flag') element.checked = !element.checked;
      else if (what === 'text') element.value = '12';
      else element.value = element.max;
      element.dispatchEvent(new Event(what === 'slider' ? 'input' : 'change', { bubbles: true }));
    }, [`[data-id="${id}"]`, kind]);
    await at_rest(page);
  }
  const workings = await page.evaluate(() => window.widegate.mirror().results.map((row) => row.working).filter(Boolean));
  assert.ok(workings.length > 0);
  await page.locator('.why').first().evaluate((element) => element.click());
  await at_rest(page);
  assert.deepEqual(await called_early(page), []);
  assert.equal(await page.locator('#message').isHidden(), true);
  assert.deepEqual(trouble.filter((each) => /page error/.test(each)), []);
});
