// Deliveries in the browser: each canvas template by touch on a phone and by the page's own controls on a desktop, its
// numbers against the command line's, documents out and in, damaged lists.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, afterEach, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { DEVICES, keep_screenshot, open_site, policy_violations, start } from './support/harness.mjs';
import { Fingers, at_rest, control, mirror, reload, reveal, until } from './support/gestures.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const program = path.join(root, 'build/native/widegate');
const TEMPLATES = ['UHD', 'SCOPE_4K', 'FLAT_4K', 'HD_PROXY', 'VFX_PULL'];
const ASPECT = '/deliverable/frame_lines/0/aspect';
const WITHOUT = { skip: !fs.existsSync(program) && 'needs the native command line: tools/build native widegate' };

let site;
let opened;
let folder;
before(async () => {
  site = await start();
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'widegate-delivery-'));
});
after(async () => {
  await site.stop();
  fs.rmSync(folder, { recursive: true, force: true });
});
afterEach(async () => {
  assert.deepEqual(opened.trouble, []);
  assert.deepEqual(await policy_violations(opened.page), []);
  await opened.context.close();
});

async function open(device) {
  opened = await open_site(site, { device, acceptDownloads: true });
  await at_rest(opened.page);
  return opened.page;
}

/** Sets one of the page's own controls. */
async function set(page, id, value) {
  const native = page.locator(`[data-id="${id}"]`);
  if ((await native.evaluate((element) => element.tagName)) === 'SELECT') await native.selectOption(value);
  else await native.evaluate((element, text) => {
    const field = element.closest('.control').querySelector('.exact') || element;
    field.value = text;
    field.dispatchEvent(new Event('change'));
  }, value);
  await at_rest(page);
}

async function download(page, id) {
  const [got] = await Promise.all([
    page.waitForEvent('download'), page.locator(`[data-id="${id}"]`).evaluate((button) => button.click())]);
  const file = path.join(folder, got.suggestedFilename());
  await got.saveAs(file);
  return { file, document: JSON.parse(fs.readFileSync(file, 'utf8')) };
}

async function open_file(page, file) {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.locator('[data-id="command:open-framing"]').evaluate((button) => button.click())]);
  await chooser.setFiles(file);
  const name = file.name || path.basename(file);
  await until(`the message about ${name}`, async () => (await mirror(page)).message, (text) => text.includes(name));
  await at_rest(page);
}

const figures = async (page) => Object.fromEntries((await mirror(page)).results
  .filter((row) => row.section === 'delivery').map((row) => [row.key, row.value_text]));
const notes = async (page) => (await mirror(page)).sections.find((section) => section.id === 'delivery').notes;

const rounded = (value) => String(Number(value.toFixed(4)));
const size = ({ width, height }) => `${rounded(width)} × ${rounded(height)}`;
const place = ({ x, y }) => `${rounded(x)}, ${rounded(y)}`;

/** What the command line makes of the plan on the screen. */
async function by_command_line(page, template) {
  const { file, document } = await download(page, 'command:save-plan')
    .then(({ file: plan }) => {
      const source = path.join(folder, 'source.fdl');
      execFileSync(program, ['fdl', 'export', plan, '-o', source]);
      return { file: source, document: JSON.parse(fs.readFileSync(source, 'utf8')) };
    });
  const canvas = document.contexts[0].canvases.at(document.contexts[0].canvases.length > 1 ? 1 : 0).id;
  const args = ['fdl', 'apply', file, '--delivery', template, '--canvas', canvas];
  return JSON.parse(execFileSync(program, args, { encoding: 'utf8' }));
}

function assert_same(shown, result) {
  const canvas = result.contexts[0].canvases.at(-1);
  const decision = canvas.framing_decisions[0];
  assert.equal(shown['delivery.canvas'], size(canvas.dimensions));
  assert.equal(shown['delivery.effective'], size(canvas.effective_dimensions));
  assert.equal(shown['delivery.effective.at'], place(canvas.effective_anchor_point));
  assert.equal(shown['delivery.framing'], size(decision.dimensions));
  assert.equal(shown['delivery.framing.at'], place(decision.anchor_point));
  assert.equal(shown['delivery.translation'], place(canvas._content_translation));
  assert.ok(Math.abs(Number(shown['delivery.scale']) - canvas._scale_factor) < 1e-6);
  if (decision.protection_dimensions) {
    assert.equal(shown['delivery.protection'], size(decision.protection_dimensions));
  } else {
    assert.equal(shown['delivery.protection'], undefined);
  }
}

/** Gives the plan a file that is smaller than the mode, a squeeze and a protection. */
async function squeeze_it(page) {
  await set(page, '/deliverable/frame_lines/0/protection', '5');
  await set(page, '/lens/squeeze', '2');
  const recordings = await control(page, '/format/recording');
  await set(page, '/format/recording', recordings.choices.at(1).value);
}

test('each template by the page on a desktop has the command line\'s numbers', WITHOUT, async () => {
  const page = await open(DEVICES.desktop);
  await squeeze_it(page);
  for (const template of TEMPLATES) {
    await set(page, 'delivery:template', template);
    assert_same(await figures(page), await by_command_line(page, template));
  }
});

test('each template by a finger on a phone', async () => {
  const page = await open(DEVICES.phone);
  const fingers = await Fingers.on(page);
  const seen = new Set();
  for (let i = 0; i < TEMPLATES.length; i += 1) {
    const box = await reveal(page, 'delivery:template');
    await fingers.tap(box.x + box.width / 2, box.y + box.height / 2);
    await at_rest(page);
    if (i === 0) await keep_screenshot(page, 'delivery_choice');
    // The list lies at the lower edge: its entries are the last rows above it, own template lowest.
    const entry = 48;
    await fingers.tap(195, 844 - 36 + 16 - entry * (TEMPLATES.length + 1 - i) + entry / 2);
    await at_rest(page);
    seen.add((await control(page, 'delivery:template')).edit_text);
    assert.ok((await figures(page))['delivery.canvas']);
  }
  assert.ok(seen.size >= 4, [...seen].join());
  await reveal(page, 'delivery:source');
  await keep_screenshot(page, 'delivery_phone');
});

test('own template: made from another, changed, refused values explained, kept on the device', async () => {
  const page = await open(DEVICES.desktop);
  await set(page, 'delivery:template', 'SCOPE_4K');
  await page.locator('[data-id="command:own-from-this"]').evaluate((button) => button.click());
  await at_rest(page);
  await set(page, 'delivery:own/maximum_dimensions/width', '5000');
  await set(page, 'delivery:own/round/mode', 'down');
  assert.equal((await figures(page))['delivery.canvas'], '5000 × 1716');
  await set(page, 'delivery:own/target_dimensions/width', '-4');
  assert.match((await control(page, 'delivery:own/target_dimensions/width')).problem, /whole pixels from 1/);
  assert.equal((await figures(page))['delivery.canvas'], '5000 × 1716');
  await reload(page);
  assert.equal((await figures(page))['delivery.canvas'], '5000 × 1716');
});

/** The published schema, where the environment names it or a copy lies beside the checkout. */
function published_schema() {
  if (process.env.WIDEGATE_FDL_SCHEMA) return process.env.WIDEGATE_FDL_SCHEMA;
  const beside = path.dirname(root);
  return fs.readdirSync(beside).map((name) => path.join(beside, name, 'fdl/ascfdl.schema.v2.0.1.json')).find(fs.existsSync);
}

const SCHEMA_CHECK = `
import json, sys, jsonschema
schema = json.load(open(sys.argv[1]))
for name in sys.argv[2:]:
    jsonschema.validators.validator_for(schema)(schema).validate(json.load(open(name)))
`;

test('documents out keep the published schema; a list comes back in with the same frame line', async () => {
  const page = await open(DEVICES.desktop);
  await squeeze_it(page);
  await set(page, ASPECT, '1.85');
  const files = [];
  for (const id of ['command:save-delivery', 'command:save-delivery-source', 'command:save-template']) {
    files.push((await download(page, id)).file);
  }
  const schema = published_schema();
  if (schema) execFileSync('python3', ['-c', SCHEMA_CHECK, schema, ...files]);
  if (fs.existsSync(program)) execFileSync(program, ['check', ...files]);
  const frames = async () => (await mirror(page)).results.filter((row) => row.section === 'frame').map((row) => row.value_text);
  const before = await frames();
  await set(page, ASPECT, '2.39');
  await set(page, '/deliverable/frame_lines/0/protection', '0');
  assert.notDeepEqual(await frames(), before);
  await open_file(page, files[1]);
  assert.deepEqual(await frames(), before);
  assert.equal((await control(page, ASPECT)).value_text, '1.85');
  assert.ok((await notes(page)).some((note) => note.startsWith('Fine: taken')));
  await page.locator('[data-id="command:undo"]').evaluate((button) => button.click());
  await at_rest(page);
  assert.equal((await control(page, ASPECT)).value_text, '2.39');
});

test('a damaged list changes nothing and says where', async () => {
  const page = await open(DEVICES.phone);
  await set(page, ASPECT, '1.85');
  const { document } = await download(page, 'command:save-delivery-source');
  document.contexts[0].canvases[0].dimensions.width = -4;
  document.contexts[0].canvases[0].surprise = 1;
  for (const [name, text] of [['damaged.fdl', JSON.stringify(document)], ['cut.fdl', '{"uuid": "']]) {
    await open_file(page, { name, mimeType: 'application/json', buffer: Buffer.from(text) });
    assert.match((await mirror(page)).message, /plan is unchanged/);
    assert.equal((await control(page, ASPECT)).value_text, '1.85');
  }
  await open_file(page, { name: 'damaged.fdl', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(document)) });
  assert.ok((await notes(page)).some((note) => note.startsWith('Fails: /contexts/0/canvases/0/dimensions/width')));
  assert.ok((await notes(page)).some((note) => note.includes('/contexts/0/canvases/0/surprise')));
  await keep_screenshot(page, 'delivery_damaged');
});
