// Handing over: what leaves the app by the clipboard, the printer and files, read back by something else; and what a
// link brings in.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, afterEach, before, beforeEach, test } from 'node:test';
import { DEVICES, keep_screenshot, open_site, policy_violations, start } from './support/harness.mjs';
import { at_rest, box_of, control, headline, mirror, open_damaged, reveal, settled_address, until, until_page, until_said } from './support/gestures.mjs';

const FOCAL = '/lens/focal_mm';

let site;
let page;
let trouble;
let folder;
before(async () => {
  site = await start();
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'widegate-handover-'));
});
after(async () => {
  await site.stop();
  fs.rmSync(folder, { recursive: true, force: true });
});
beforeEach(async () => {
  ({ page, trouble } = await open_site(site, {
    device: DEVICES.desktop, permissions: ['clipboard-read', 'clipboard-write'], acceptDownloads: true,
  }));
  await at_rest(page);
});
afterEach(async () => {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await page.context().close();
});

/** Presses a button of the drawn page by the mouse. */
async function press(id) {
  const box = await reveal(page, id);
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await at_rest(page);
}

async function download(id) {
  const [got] = await Promise.all([page.waitForEvent('download'), press(id)]);
  const file = path.join(folder, got.suggestedFilename());
  await got.saveAs(file);
  return { name: got.suggestedFilename(), text: fs.readFileSync(file, 'utf8'), file };
}

async function set_focal(text) {
  await page.locator(`[data-id="${FOCAL}"]`).focus();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await at_rest(page);
}

/** What an independent reader of CSV makes of a table. */
const python_rows = (text) => JSON.parse(execFileSync('python3', ['-c',
  'import csv, io, json, sys; print(json.dumps(list(csv.reader(io.TextIOWrapper(sys.stdin.buffer, "utf-8", newline=""), strict=True))))'],
{ input: text, encoding: 'utf8' }));

/** What an independent reader of QR codes finds in a picture. */
const read_qr = (file) => execFileSync('zbarimg', ['--quiet', '--nodbus', '--raw', file], { encoding: 'utf8' }).trimEnd();

const focal = async () => (await control(page, FOCAL)).value_text;

test('the address follows the plan, once for many changes', async () => {
  await page.evaluate(() => {
    window.calls = [];
    const replace = history.replaceState.bind(history);
    history.replaceState = (...args) => { window.calls.push(performance.now()); replace(...args); };
  });
  const length = await page.evaluate(() => history.length);
  const box = await reveal(page, FOCAL);
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + box.width / 2, y);
  await page.mouse.down();
  for (let i = 1; i <= 30; i += 1) await page.mouse.move(box.x + box.width / 2 + 2 * i, y);
  await page.mouse.up();
  await at_rest(page);
  await settled_address(page);
  // However long the machine takes for the drag: browsers allow only so many changes in a while.
  const calls = await page.evaluate(() => window.calls);
  assert.ok(calls.length > 0);
  calls.slice(1).forEach((at, i) => assert.ok(at - calls[i] > 390, `written again after ${at - calls[i]} ms`));
  assert.equal(await page.evaluate(() => history.length), length, 'no history of every change');
});

test('the copied link opens the same plan elsewhere', async () => {
  await set_focal('65');
  await press('command:copy-link');
  const link = await page.evaluate(() => navigator.clipboard.readText());
  assert.ok(link.startsWith(`${site.address}#`), link);
  const before = await headline(page);
  const other = await open_site(site, { fragment: link.slice(site.address.length) });
  await at_rest(other.page);
  assert.deepEqual(await headline(other.page), before);
  await other.context.close();
});

/** Waits for what a change of the address does: it arrives as an event of its own. */
const until_focal = (text) => until(`a focal length of ${text}`, focal, (now) => now === text);

test('a link opened in place changes the plan; back and forward work; a damaged one is explained', async () => {
  await set_focal('66');
  await set_focal('65');
  await settled_address(page);
  const first = await page.evaluate(() => location.hash);
  await set_focal('75');
  await until_page(page, 'another address', (old) => location.hash !== old, first);
  await settled_address(page);
  await page.evaluate((hash) => { location.hash = hash; }, first);
  await until_focal('65');
  await page.goBack();
  await until_focal('75');
  await page.goForward();
  await until_focal('65');
  // Mangled, over-long, cut at several places, of a newer version, hostile, not even an address.
  const cuts = [0.1, 0.5, 0.9].map((share) => first.slice(0, Math.round(first.length * share)));
  const swapped = `${first.slice(0, 20)}${first[20] === 'A' ? 'B' : 'A'}${first.slice(21)}`;
  for (const damaged of ['#!!', `#${'A'.repeat(5000)}`, `#1.${'A'.repeat(200000)}`, first.slice(0, -3), ...cuts, swapped,
    first.replace('#1.', '#2.'), first.replace('#1.', '#999999999999.'), '#<img src=x onerror=alert(1)>', '#%E0%A4%A']) {
    await open_damaged(page, damaged, () => page.locator('#said').textContent());
    assert.equal(await focal(), '65', damaged.slice(0, 20));
  }
});

test('the QR code on the screen is read by a QR reader, has its words, and closes', async () => {
  for (const colorScheme of ['dark', 'light']) {
    await page.emulateMedia({ colorScheme });
    await press('command:show-qr');
    const dialog = page.locator('#picture');
    await until('the picture is shown', () => dialog.isVisible());
    const link = await dialog.locator('.words').textContent();
    assert.ok(link.startsWith(`${site.address}#`), link);
    assert.equal(await dialog.getByRole('img', { name: 'QR code of the link' }).count(), 1);
    const file = path.join(folder, `qr_${colorScheme}.png`);
    await page.screenshot({ path: file });
    assert.equal(read_qr(file), link);
    await keep_screenshot(page, `qr_${colorScheme}`);
    await page.keyboard.press('Escape');
    await until('the picture is put away', () => dialog.isVisible(), (seen) => !seen);
  }
  // On phones, upright and on their side, the whole code is in sight.
  for (const [width, height] of [[390, 844], [844, 390], [320, 568]]) {
    await page.setViewportSize({ width, height });
    await at_rest(page);
    await page.locator('[data-id="command:show-qr"]').evaluate((element) => element.click());
    await until('the picture is shown', () => page.locator('#picture').isVisible());
    await at_rest(page);
    const file = path.join(folder, `qr_${width}.png`);
    await page.screenshot({ path: file });
    await keep_screenshot(page, `qr_${width}x${height}`);
    assert.equal(read_qr(file), await page.locator('#picture .words').textContent(), `${width} x ${height}`);
    const close = await page.locator('#picture button').boundingBox();
    assert.ok(close.height >= 44 && close.y + close.height <= height, 'the button to close it is in sight');
    await page.locator('#picture button').click();
    await until('the picture is put away', () => page.locator('#picture').isVisible(), (seen) => !seen);
  }
});

test('a plan that fits no code says so', async () => {
  const plan = JSON.parse(fs.readFileSync(new URL('../../docs/examples/own-camera.plan.json', import.meta.url), 'utf8'));
  const [camera] = plan.own.cameras;
  const [mode] = camera.modes;
  // Names without any pattern, so that no coding makes them short.
  const noise = (i) => createHash('sha256').update(String(i)).digest('base64').slice(0, 40);
  for (let i = 0; i < 90; i += 1) camera.modes.push({ ...mode, id: `mode-${i}`, name: noise(i) });
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press('command:open-plan')]);
  await chooser.setFiles({ name: 'long.plan.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) });
  await until_said(page, /^Opened long\.plan\.json\.$/);
  await page.locator('[data-id="command:show-qr"]').evaluate((element) => element.click());
  await at_rest(page);
  await until_said(page, /too long for a QR code/);
  assert.equal(await page.locator('#picture').isVisible(), false);
});

test('without a sheet the page itself prints as its figures', async () => {
  const file = path.join(folder, 'page.pdf');
  fs.writeFileSync(file, await page.pdf({ format: 'A4' }));
  const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
  for (const word of ['Frame', 'Cover', 'Store', 'Field of view', '42.1']) assert.ok(text.includes(word), word);
  assert.doesNotMatch(text, /Skip to|Loading/);
});

test('files: plan out and in, ranking, chart, framing', async () => {
  await set_focal('65');
  const plan = await download('command:save-plan');
  assert.match(plan.name, /\.plan\.json$/);
  assert.equal(JSON.parse(plan.text).lens.focal_mm, 65);
  const ranking = await download('command:save-ranking');
  assert.ok(ranking.text.split('\r\n').length > 10);
  const storage = await download('command:save-storage');
  const [head, ...rows] = python_rows(storage.text);
  assert.deepEqual(head, ['figure', 'least', 'most', 'unit']);
  assert.ok(rows.some(([name]) => name === 'minutes on a card'));
  const cover = await download('command:save-cover');
  assert.equal(python_rows(cover.text)[0][0], 'focal_mm');
  assert.ok(python_rows(ranking.text).every((row, i, all) => row.length === all[0].length));
  const chart = await download('command:save-chart');
  assert.match(chart.text, /^<svg|^<\?xml/);
  const framing = await download('command:save-framing');
  assert.ok(JSON.parse(framing.text).contexts);
  await set_focal('75');
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press('command:open-plan')]);
  await chooser.setFiles(plan.file);
  await until_focal('65');
  const [again] = await Promise.all([page.waitForEvent('filechooser'), press('command:open-plan')]);
  await again.setFiles({ name: 'rubbish.json', mimeType: 'application/json', buffer: Buffer.from('{"lens":{"focal_mm":-1}}') });
  await until_said(page, /rubbish\.json/);
  assert.equal(await focal(), '65');
});

test('a figure shows its working, from the drawing and from the page, and Escape closes it', async () => {
  const why = page.locator('.why').first();
  await why.focus();
  assert.equal(await page.locator('#focus_words').isVisible(), true, 'what has the focus is in sight');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await at_rest(page);
  const { working } = await mirror(page);
  assert.ok(working.title && working.result);
  assert.ok((await page.locator('#working').textContent()).includes(working.result));
  assert.equal(await page.evaluate(() => document.activeElement.id), 'working');
  await page.keyboard.press('Escape');
  await at_rest(page);
  assert.equal((await mirror(page)).working.title, '');
  assert.equal(await page.evaluate(() => document.activeElement.className), 'why');
});

test('a lesson is walked through by the keys of a presenter', async () => {
  const lessons = await control(page, 'view:lesson');
  await page.locator('[data-id="view:lesson"]').selectOption(lessons.choices[1].value);
  await at_rest(page);
  const first = (await mirror(page)).lesson.step;
  assert.match(first, /^1 of \d/);
  await page.mouse.click(700, 30);
  await page.keyboard.press('PageDown');
  await at_rest(page);
  assert.match((await mirror(page)).lesson.step, /^2 of \d/);
  assert.ok((await page.locator('#section_lesson .story').textContent()).includes((await mirror(page)).lesson.words));
  await page.keyboard.press('PageUp');
  await at_rest(page);
  assert.equal((await mirror(page)).lesson.step, first);
});

test('the list of keys opens and closes', async () => {
  await page.keyboard.press('?');
  await until('the keys are shown', () => page.locator('#keys').isVisible());
  assert.match(await page.locator('#version').textContent(), /^Widegate \d+\.\d+\.\d+$/);
  await page.keyboard.press('Escape');
  await until('the keys are put away', () => page.locator('#keys').isVisible(), (seen) => !seen);
  await at_rest(page);
  await page.keyboard.press('End');
  await at_rest(page);
  assert.equal(await box_of(page, '/format/camera'), null, 'End scrolls the questions');
});
