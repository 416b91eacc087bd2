// Equipment of one's own in the real browser: a camera typed in by thumb and by keyboard, kept, linked, exported and
// brought in again; and the list of kept plans across reloads and tabs.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { after, before, describe, test } from 'node:test';
import { DEVICES, keep_screenshot, open_site, policy_violations, start, watch } from './support/harness.mjs';
import { Fingers, at_rest, box_of, control, headline, mirror, ready, reload, reveal, settled_address, until, until_said } from './support/gestures.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const SHEET = [
  ['library:/name', 'Hazel'], ['library:/width_photosites', '5760'], ['library:/height_photosites', '3240'],
  ['library:/pitch_um', '4,3'], ['library:/max_rate', '60'],
];

let site;
let folder;
before(async () => {
  site = await start();
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'widegate-library-'));
});
after(async () => {
  await site.stop();
  fs.rmSync(folder, { recursive: true, force: true });
});

const find = async (page, id) => (await mirror(page)).controls.find((each) => each.id === id);
const native = (page, id) => page.locator(`[data-id="${id}"]`);
const offered = async (page, id) => (await control(page, id)).choices.map((item) => item.label);

async function close_clean({ page, context, trouble }) {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await context.close();
}

async function tap(page, fingers, id) {
  const box = await reveal(page, id);
  await fingers.tap(box.x + box.width / 2, box.y + box.height / 2);
  await at_rest(page);
}

/** Taps an entry of the open list: 48 pixels each below its title, or below its search, the list against the lower edge
 *  of the screen. */
async function tap_entry(page, fingers, count, index) {
  const search = await find(page, 'view:search') && await box_of(page, 'view:search');
  const height = Math.min(80 + 48 * count, page.viewportSize().height * 0.78);
  const first = search ? search.y + search.height + 12 : page.viewportSize().height - height + 60;
  await fingers.tap(195, first + 48 * index + 24);
  await at_rest(page);
}

/** Sets a text of the page's own controls as the keyboard does. */
async function type_into(page, id, text) {
  await native(page, id).focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Tab');
  await at_rest(page);
}

async function pick(page, id, value) {
  await native(page, id).selectOption(value);
  await at_rest(page);
}

async function press(page, id) {
  await native(page, id).focus();
  await page.keyboard.press('Enter');
  await at_rest(page);
}

/** The camera of SHEET by keyboard alone. */
async function add_by_keyboard(page) {
  await pick(page, 'library:new', 'cameras');
  for (const [id, text] of SHEET) await type_into(page, id, text);
  await pick(page, 'library:/modes/0/recordings/0/codecs', 'bayer-12-3-1');
  await press(page, 'library:keep');
}

test('a camera from its sheet, by thumb, in well under two minutes', async (t) => {
  const opened = await open_site(site, { device: DEVICES.phone });
  const { page } = opened;
  await at_rest(page);
  const fingers = await Fingers.on(page);
  const began = Date.now();
  let taps = 2;
  await tap(page, fingers, 'library:new');
  await tap_entry(page, fingers, (await control(page, 'library:new')).choices.length, 1);
  for (const [id, text] of SHEET) {
    await tap(page, fingers, id);
    assert.equal(await page.locator('#entry').isVisible(), true, id);
    assert.equal(await page.locator('#entry').getAttribute('inputmode'), id === 'library:/name' ? 'text' : 'decimal');
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
    await at_rest(page);
    taps += 1;
  }
  await keep_screenshot(page, 'library_form_phone');
  await tap(page, fingers, 'library:/modes/0/recordings/0/codecs');
  await tap_entry(page, fingers, 99, 1);
  const findings = (await control(page, 'library:keep')).help;
  assert.ok(findings.includes('4.30 µm'), findings);
  await reveal(page, 'library:keep');
  await keep_screenshot(page, 'library_form_end_phone');
  await tap(page, fingers, 'library:keep');
  assert.equal(await find(page, 'library:/name'), undefined, (await mirror(page)).message);
  await tap(page, fingers, 'library:use');
  await keep_screenshot(page, 'library_list_phone');
  taps += 4;
  t.diagnostic(`${taps} taps, ${SHEET.map(([, text]) => text).join('').length} letters, ${Date.now() - began} ms by machine`);
  assert.ok((await offered(page, '/format/camera')).some((label) => label === 'Hazel'));
  assert.equal((await control(page, '/format/camera')).value_text, 'Hazel');
  const numbers = await headline(page);
  assert.ok(numbers.every((text) => /\d/.test(text)), numbers.join());
  await reload(page);
  assert.equal((await control(page, '/format/camera')).value_text, 'Hazel');
  assert.deepEqual(await headline(page), numbers);
  await settled_address(page);
  const fragment = await page.evaluate(() => location.hash);
  const other = await open_site(site, { device: DEVICES.phone_landscape, fragment });
  await at_rest(other.page);
  assert.equal((await control(other.page, '/format/camera')).value_text, 'Hazel');
  assert.deepEqual(await headline(other.page), numbers);
  assert.match((await mirror(other.page)).message, /Hazel/);
  await reveal(other.page, 'library:brought');
  await keep_screenshot(other.page, 'library_brought_landscape');
  await close_clean(other);
  await close_clean(opened);
});

test('by keyboard alone; what does not fit is said; the export keeps the published schema; a conflict asks', async () => {
  const opened = await open_site(site, { device: DEVICES.desktop, acceptDownloads: true });
  const { page } = opened;
  await at_rest(page);
  await pick(page, 'library:new', 'cameras');
  await press(page, 'library:keep');
  assert.match((await control(page, 'library:/name')).problem, /^Needed/);
  assert.equal(await native(page, 'library:/name').getAttribute('aria-invalid'), 'true');
  await press(page, 'library:cancel');
  await add_by_keyboard(page);
  assert.ok((await offered(page, '/format/camera')).includes('Hazel'));
  await pick(page, 'library:row', 'cameras/hazel');
  await type_into(page, 'library:/width_mm', '36');
  assert.match((await control(page, 'library:/width_mm')).problem, /36.*24\.768/);
  await reveal(page, 'library:/width_mm');
  await keep_screenshot(page, 'library_contradiction_desktop');
  await press(page, 'library:cancel');

  const [got] = await Promise.all([page.waitForEvent('download'), press(page, 'library:export')]);
  const file = path.join(folder, got.suggestedFilename());
  await got.saveAs(file);
  const validator = 'import json,sys; from jsonschema import Draft202012Validator as V; '
    + 'V(json.load(open(sys.argv[1]))).validate(json.load(open(sys.argv[2])))';
  execFileSync('python3', ['-c', validator, path.join(root, 'docs/schema/catalogue.schema.json'), file], { stdio: 'pipe' });
  const document = JSON.parse(fs.readFileSync(file, 'utf8'));
  assert.equal(document.cameras.length, 1);

  const kept = () => page.evaluate(() => localStorage.getItem('widegate/1/library'));
  const mine = await kept();
  document.cameras[0].name = 'Hazel, other body';
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'library:import')]);
  await chooser.setFiles({ name: 'other.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(document)) });
  await until('the question about what is brought in', () => find(page, 'library:import-all'));
  await at_rest(page);
  assert.match((await control(page, 'library:import-new')).help, /Different.*Hazel, other body/);
  await reveal(page, 'library:import-all');
  await keep_screenshot(page, 'library_import_desktop');
  assert.equal(await kept(), mine, 'nothing is replaced unasked');
  await press(page, 'library:import-all');
  assert.ok((await kept()).includes('Hazel, other body'));
  const before_rubbish = await kept();
  const [again] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'library:import')]);
  await again.setFiles({ name: 'rubbish.json', mimeType: 'application/json', buffer: Buffer.from('{"cameras":[1]}') });
  await until_said(page, /rubbish\.json/);
  assert.equal(await kept(), before_rubbish);
  await close_clean(opened);
});

test('a codec by the size of a file, and equipment known to every tab', async () => {
  const opened = await open_site(site);
  const { page } = opened;
  await at_rest(page);
  const second = await opened.context.newPage();
  const trouble = watch(second, site.address);
  await second.goto(site.address);
  await ready(second);
  await page.bringToFront();
  await pick(page, 'library:new', 'codecs');
  for (const [key, text] of [['name', 'Test clip'], ['bytes', '11.2 GB'], ['seconds', '1 min'], ['rate', '24'],
    ['width_pixels', '3840'], ['height_pixels', '2160']]) await type_into(page, `library:/${key}`, text);
  assert.match((await control(page, 'library:keep')).help, /7\.778 MB/);
  await press(page, 'library:keep');
  await second.bringToFront();
  await until('the codec is known to the other tab', () => find(second, 'library:row'), (row) => row?.choices.length === 2);
  assert.deepEqual(trouble, []);
  await close_clean(opened);
});

describe('plans by name', () => {
  test('kept, opened, and there after a reload', async () => {
    const opened = await open_site(site, { device: DEVICES.phone });
    const { page } = opened;
    await at_rest(page);
    await type_into(page, '/title', 'Day one');
    await press(page, 'plans:add');
    await type_into(page, '/title', 'Day one, revised');
    await press(page, 'command:start-afresh');
    await type_into(page, '/title', 'Day two');
    await press(page, 'plans:add');
    await reload(page);
    assert.deepEqual(await offered(page, 'plans:list'), ['Day one, revised', 'Day two']);
    assert.equal((await control(page, 'plans:list')).value_text, 'Day two');
    await pick(page, 'plans:list', '1');
    assert.equal((await control(page, '/title')).value_text, 'Day one, revised');
    await reveal(page, 'plans:delete');
    await keep_screenshot(page, 'plans_phone');
    await press(page, 'plans:delete');
    assert.ok(!(await offered(page, 'plans:list')).includes('Day one, revised'));
    await press(page, 'plans:restore');
    assert.ok((await offered(page, 'plans:list')).includes('Day one, revised'));
    await close_clean(opened);
  });

  test('two tabs with one plan never overwrite each other', async () => {
    const opened = await open_site(site);
    const { page } = opened;
    await at_rest(page);
    await type_into(page, '/title', 'Shared');
    await press(page, 'plans:add');
    const second = await opened.context.newPage();
    await second.goto(site.address);
    await ready(second);
    assert.equal((await control(second, 'plans:list')).value_text, 'Shared');
    await pick(second, '/format/camera', 'birch');
    await page.bringToFront();
    await pick(page, '/format/camera', 'cedar');
    await until_said(page, /another tab/);
    await at_rest(page);
    assert.deepEqual(await offered(page, 'plans:list'), ['Shared', 'Shared (2)']);
    await pick(page, 'plans:list', '1');
    assert.equal((await control(page, '/format/camera')).edit_text, 'birch');
    await close_clean(opened);
  });
});
