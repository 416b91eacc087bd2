// The page's own controls behind the canvas: complete, correct both ways, enough to set a whole plan by keyboard, and
// nothing for axe to find; drawn and as a text page.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import { createRequire } from 'node:module';
import { after, afterEach, before, beforeEach, test } from 'node:test';
import { DEVICES, keep_screenshot, open_site, policy_violations, start } from './support/harness.mjs';
import { at_rest, box_of, control, headline, mirror, until } from './support/gestures.mjs';

const require = createRequire(new URL('../../tools/package.json', import.meta.url));

let site;
let page;
let trouble;
before(async () => { site = await start(); });
after(() => site.stop());
beforeEach(async () => {
  ({ page, trouble } = await open_site(site, { device: DEVICES.desktop }));
  await at_rest(page);
});
afterEach(async () => {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await page.context().close();
});

const show_text_page = () => page.locator('#toggle_view').evaluate((button) => button.click());

/** Violations axe finds, as "rule: elements". It goes in past the page's policy, which forbids foreign script. */
async function axe_violations() {
  const session = await page.context().newCDPSession(page);
  const source = fs.readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
  await session.send('Runtime.evaluate', { expression: source });
  const { result } = await session.send('Runtime.evaluate', {
    expression: 'axe.run().then((r) => JSON.stringify({ passes: r.passes.length, found: r.violations.map((v) => v.id + ": " + v.nodes.map((n) => n.target).join(" | ")) }))',
    awaitPromise: true, returnByValue: true,
  });
  return JSON.parse(result.value);
}

test('axe finds nothing, drawn', async () => {
  const { found, passes } = await axe_violations();
  assert.deepEqual(found, []);
  assert.ok(passes > 20, `${passes} rules passed`);
});

test('axe finds nothing on the text page, dark and light', async () => {
  await show_text_page();
  for (const colorScheme of ['dark', 'light']) {
    await page.emulateMedia({ colorScheme });
    await at_rest(page);
    await keep_screenshot(page, `text_page_${colorScheme}`);
    assert.deepEqual((await axe_violations()).found, [], colorScheme);
  }
});

test('there is one element for each control, result and question', async () => {
  const state = await mirror(page);
  const ids = await page.locator('[data-id]').evaluateAll((all) => all.map((element) => element.dataset.id));
  assert.deepEqual([...ids].sort(), state.controls.map((each) => each.id).sort());
  const rows = await page.locator('[data-report]').evaluateAll((all) => all.map((element) => element.dataset.report));
  assert.deepEqual([...rows].sort(), [...state.headline, ...state.results].map((row) => row.key).sort());
  const headings = await page.locator('#questions h2').allTextContents();
  assert.deepEqual(headings, ['In sight', ...state.sections.map((section) => section.title)]);
  for (const title of ['Frame', 'Cover', 'See', 'Resolve', 'Run', 'Store', 'Choose']) assert.ok(headings.includes(title), title);
});

test('every control has a name, and a value as it is read', async () => {
  await page.locator('main').ariaSnapshot();
  for (const each of (await mirror(page)).controls) {
    const role = { slider: 'slider', choice: 'combobox', flag: 'checkbox', text: 'textbox', action: 'button' }[each.kind];
    const found = page.locator(`[data-id="${each.id}"]`);
    assert.equal(await page.getByRole(role, { name: each.label, exact: true }).and(found).count(), 1, `${role} ${each.label}`);
    if (each.kind !== 'slider') continue;
    const spoken = each.unit ? `${each.value_text} ${each.unit}` : each.value_text;
    assert.equal(await found.getAttribute('aria-valuetext'), spoken);
  }
});

/** Types the first letters of a choice. On a busy machine the browser takes letters for two words: then once more. */
const pick_by_typing = (id, letters, value) => until(`${letters} is picked`, async () => {
  await page.keyboard.type(letters);
  await at_rest(page);
  return (await control(page, id)).edit_text;
}, (now) => now === value);

test('a whole plan by keyboard alone', async () => {
  // Each control is reached by Tab, in reading order, and set by its own keys.
  const wanted = [
    ['/format/camera', () => pick_by_typing('/format/camera', 'Birch', 'birch'), 'birch'],
    ['/deliverable/frame_lines/0/aspect', async () => { await page.keyboard.type('1.85'); await page.keyboard.press('Enter'); }, '1.85'],
    ['/deliverable/frame_lines/0/protection', async () => { for (let i = 0; i < 5; i += 1) await page.keyboard.press('ArrowRight'); }, '5'],
    ['/lens/set', () => pick_by_typing('/lens/set', 'Severn', 'severn'), 'severn'],
    ['/run/sensor_rate', async () => { await page.keyboard.type('25'); await page.keyboard.press('Enter'); }, '25'],
    ['/store/card', async () => { await page.keyboard.press('ArrowDown'); }, null],
    ['/choose/must_meet_mandate', async () => { await page.keyboard.press('Space'); }, 'false'],
    ['/title', async () => { await page.keyboard.press('Control+a'); await page.keyboard.type('Night ferry'); await page.keyboard.press('Tab'); }, 'Night ferry'],
  ];
  const before = await headline(page);
  const first_card = (await control(page, '/store/card')).edit_text;
  for (const [id, act, text] of wanted) {
    for (let presses = 0; await page.evaluate(() => document.activeElement.dataset.id) !== id; presses += 1) {
      assert.ok(presses < 200, `Tab never reaches ${id}`);
      await page.keyboard.press('Tab');
    }
    await at_rest(page);
    assert.ok(await box_of(page, id), `${id} is drawn in sight when it has the focus`);
    await act();
    await at_rest(page);
    const { edit_text, value_text } = await control(page, id);
    if (text === null) assert.notEqual(edit_text, first_card);
    else assert.ok([edit_text, value_text].includes(text), `${id} is ${edit_text}, ${value_text}`);
  }
  const now = await headline(page);
  before.forEach((number, i) => assert.notEqual(now[i], number, `number ${i} followed`));
  assert.match(await page.title(), /Night ferry/);
});

test('what changes is said in the live region', async () => {
  await page.locator('[data-id="/lens/focal_mm"]').focus();
  await page.keyboard.press('ArrowRight');
  await at_rest(page);
  const [fov] = await headline(page);
  await until('the number is said', () => page.locator('#live').textContent(), (text) => text.includes(fov));
});

test('the text page sets the plan too, and its text can be found and copied', async () => {
  await show_text_page();
  await page.locator('.control:has([data-id="/lens/focal_mm"]) .exact').fill('50');
  await page.keyboard.press('Tab');
  await page.locator('[data-id="/format/camera"]').selectOption('cedar');
  await at_rest(page);
  assert.equal((await control(page, '/lens/focal_mm')).value_text, '50');
  assert.equal((await control(page, '/format/camera')).edit_text, 'cedar');
  const [fov] = await headline(page);
  const copied = await page.evaluate(() => {
    getSelection().selectAllChildren(document.getElementById('section_headline'));
    return getSelection().toString();
  });
  assert.ok(copied.includes(fov), copied);
});

test('skip links lead to the numbers and the questions', async () => {
  await page.keyboard.press('Tab');
  const skip = page.locator('#skips button').first();
  assert.equal(await skip.evaluate((button) => button === document.activeElement), true);
  await keep_screenshot(page, 'skip_link');
  await page.keyboard.press('Enter');
  assert.equal(await page.evaluate(() => document.activeElement.id), 'heading_headline');
});
