// The jobs of a scout by one thumb, on a phone upright, on a small one, and sideways: how many taps each takes, that
// nothing that is tapped moves away, and that the answer is in sight where the thumb is.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { DEVICES, open_site, policy_violations, start } from './support/harness.mjs';
import { at_rest, control, headline, mirror, ready, settled_address, until } from './support/gestures.mjs';
import { Thumb } from './support/thumb.mjs';

const SCREENS = [
  { name: '390×844', width: 390, height: 844 },
  { name: '360×640', width: 360, height: 640 },
  { name: '844×390', width: 844, height: 390 },
];

const section = async (page, id) => (await mirror(page)).sections.find((each) => each.id === id);
const value = async (page, id) => (await control(page, id)).value_text;

/** What does not go on the small screens yet, and why; it runs, and is told apart from what fails. */
const UNREACHED = 'the thumb does not find the control by swiping';
const NOT_YET = {
  '360×640': { flicker: UNREACHED, 'a second frame line': UNREACHED },
  '844×390': {
    '100 frames a second, and what binds': 'the verdict ends above the column',
    flicker: UNREACHED,
    'a second frame line': UNREACHED,
  },
};

/** Each job: the most taps it may take, and what is done. */
const JOBS = [
  {
    name: 'does this lens cover, and what does', most: 4,
    async run({ page, thumb }) {
      await thumb.go('cover');
      await thumb.choose('/lens/set', 'dart');
      assert.equal((await thumb.sees_verdict('cover')).severity, 'fail');
      await thumb.sees_answer('cover');
      await thumb.tap('answer:cover:0');
      assert.equal((await section(page, 'cover')).severity, 'ok');
    },
  },
  {
    name: 'a 2× lens for 2.39 under a UHD commission', most: 4,
    async run({ page, thumb }) {
      await thumb.tap('start:example:anamorphic');
      await thumb.go('resolve');
      await thumb.choose('/commission/id', 'uhd');
      assert.notEqual((await thumb.sees_verdict('resolve')).severity, 'fail');
      assert.equal((await section(page, 'choose')).severity, 'ok');
    },
  },
  {
    name: '100 frames a second, and what binds', most: 3,
    async run({ page, thumb }) {
      await thumb.go('run');
      await thumb.type('/run/sensor_rate', '100');
      assert.equal((await thumb.sees_verdict('run')).severity, 'fail');
      assert.match(await thumb.sees_answer('run'), /Run at|Use /);
      await thumb.tap('answer:run:0');
      assert.notEqual((await section(page, 'run')).severity, 'fail');
    },
  },
  {
    name: 'a wall 6 m wide from 4 m', most: 4,
    async run({ page, thumb }) {
      await thumb.go('see');
      await thumb.type('/lens/focus_m', '4');
      await thumb.type('/lens/wanted_width_m', '6');
      assert.match(await thumb.sees_answer('see'), /^Use the 14 mm$/);
      await thumb.tap('answer:see:0');
      assert.equal(await value(page, '/lens/focal_mm'), '14');
    },
  },
  {
    name: 'flicker', most: 3,
    async run({ page, thumb }) {
      await thumb.go('run');
      await thumb.type('/run/shutter_angle_deg', '180');
      assert.notEqual((await thumb.sees_verdict('run')).severity, 'ok');
      assert.equal(await thumb.sees_answer('run'), 'Shutter 172.8°');
      await thumb.tap('answer:run:0');
      assert.equal((await section(page, 'run')).severity, 'ok');
    },
  },
  {
    name: 'the same view on another camera', most: 3,
    async run({ page, thumb }) {
      await thumb.go('see');
      await thumb.choose('view:same-view', 'birch');
      assert.ok((await mirror(page)).results.some((row) => row.key.startsWith('see.equivalent_focal_mm.')));
    },
  },
  {
    name: 'the camera on the truck', most: 11,
    async run({ page, thumb }) {
      const began = Date.now();
      await thumb.tap('start:own-camera');
      await thumb.tap('library:/name');
      // The keyboard's own key leads from field to field.
      for (const text of ['Hazel', '5760', '3240', '4.3', '', '', '60']) await thumb.write(text);
      if (await page.locator('#entry').isVisible()) await page.keyboard.press('Escape');
      await at_rest(page);
      await thumb.choose('library:/modes/0/recordings/0/codecs', 'bayer-12-3-1');
      await thumb.tap('library:keep');
      await thumb.tap('library:use');
      assert.equal(await value(page, '/format/camera'), 'Hazel');
      assert.ok(Date.now() - began < 120000, 'two minutes, machine and all');
    },
  },
  {
    name: 'share, and open', most: 3,
    async run({ page, thumb }) {
      await page.evaluate(() => {
        navigator.clipboard.writeText = (text) => { window.copied_text = text; return Promise.resolve(); };
      });
      await thumb.tap('view:go-to');
      await thumb.tap_place('entry:handover');
      await thumb.tap('command:copy-link');
      const link = await until('the link is copied', () => page.evaluate(() => window.copied_text));
      const numbers = await headline(page);
      const other = await page.context().newPage();
      await other.goto(link);
      await ready(other);
      assert.deepEqual(await headline(other), numbers);
      await other.close();
    },
  },
  {
    name: 'typing, a slip, and undo', most: 4,
    async run({ page, thumb }) {
      await thumb.go('cover');
      await thumb.type('/lens/focal_mm', '50');
      await thumb.type('/lens/focal_mm', '400000');
      assert.equal(await value(page, '/lens/focal_mm'), '50');
      assert.match((await control(page, '/lens/focal_mm')).problem, /xpected/);
      await thumb.tap('command:undo');
      assert.equal(await value(page, '/lens/focal_mm'), '35');
      assert.match((await mirror(page)).message, /^Undone\. Focal length: 35 mm/);
    },
  },
  {
    name: 'a second frame line', most: 3,
    async run({ page, thumb }) {
      await thumb.go('frame');
      await thumb.tap('command:add-frame-line');
      await thumb.type('/deliverable/frame_lines/1/aspect', '9:16');
      assert.equal((await control(page, '/deliverable/frame_lines/1/aspect')).edit_text, '9/16');
    },
  },
];

let site;
before(async () => { site = await start(); });
after(() => site.stop());

for (const { name, width, height } of SCREENS) {
  describe(`by one thumb at ${name}`, () => {
    let page;
    let trouble;
    let thumb;
    const taps = [];
    before(async () => {
      const device = { ...DEVICES.phone, viewport: { width, height }, deviceScaleFactor: 1 };
      ({ page, trouble } = await open_site(site, { device }));
      await settled_address(page).catch(() => {});
      thumb = await Thumb.on(page);
      await at_rest(page);
    });
    after(async () => {
      console.log(`taps at ${name}:\n${taps.join('\n')}`);
      assert.deepEqual(trouble, []);
      assert.deepEqual(await policy_violations(page), []);
      await page.context().close();
    });

    for (const job of JOBS) {
      test(job.name, { todo: NOT_YET[name]?.[job.name] }, async () => {
        // Whatever an earlier job left open.
        for (let i = 0; i < 3; i += 1) await page.keyboard.press('Escape');
        await page.evaluate(() => document.querySelector('[data-id="command:start-afresh"]').click());
        await at_rest(page);
        // Back to the top, where a person begins; what is above the questions may be pressed too.
        await page.evaluate(() => {
          const list = document.querySelector('[data-id="view:go-to"]');
          list.value = 'format';
          list.dispatchEvent(new Event('change', { bubbles: true }));
        });
        await at_rest(page);
        thumb.taps = 0;
        thumb.swipes = 0;
        await job.run({ page, thumb });
        taps.push(`  ${job.name}: ${thumb.taps} taps, ${thumb.swipes} swipes`);
        assert.ok(thumb.taps <= job.most, `${thumb.taps} taps, ${job.most} at most`);
      });
    }
  });
}
