// Every question and every lesson on every screen: reached, changed by finger, mouse, keyboard and the page's own
// controls, and the answer follows. One table of screens, one of questions.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { after, before, describe, test } from 'node:test';
import { open_site, policy_violations, start } from './support/harness.mjs';
import { Fingers, at_rest, box_of, control, mirror, reveal } from './support/gestures.mjs';

const SCREENS = [
  { width: 360, height: 640, ratio: 1, finger: true, other: 'keyboard' },
  { width: 390, height: 844, ratio: 1, finger: true, other: 'page' },
  { width: 844, height: 390, ratio: 1, finger: true, other: 'keyboard' },
  { width: 768, height: 1024, ratio: 1, finger: true, other: 'page' },
  { width: 1440, height: 900, ratio: 1, finger: false, other: 'keyboard' },
  { width: 1920, height: 1080, ratio: 1, finger: false, other: 'page' },
];
/** Where lessons are walked through, and by what. */
const LESSON_SCREENS = [
  { width: 390, height: 844, ratio: 1, finger: true },
  { width: 844, height: 390, ratio: 1, finger: true },
  { width: 1440, height: 900, ratio: 1, finger: false },
];
/** A slider of each question, and a value of it that changes the answer. */
const QUESTIONS = {
  frame: ['/deliverable/frame_lines/0/aspect', '1.5'],
  cover: ['/lens/focal_mm', '14'],
  see: ['/lens/f_number', '11'],
  resolve: ['/mandate/photosites', '30000000'],
  run: ['/run/sensor_rate', '50'],
  store: ['/shooting/recorded_hours_per_day', '5'],
  choose: ['/choose/min_minutes_per_card', '40'],
};

let site;
before(async () => { site = await start(); });
after(() => site.stop());

async function open({ width, height, ratio, finger }) {
  const device = { viewport: { width, height }, deviceScaleFactor: ratio, hasTouch: finger, isMobile: finger };
  const opened = await open_site(site, { device });
  await at_rest(opened.page);
  return opened;
}

async function close_clean({ page, context, trouble }) {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await context.close();
}

/** Everything the page says about the plan: figures of all questions, verdicts, the ranking. */
async function answer(page) {
  const { results, sections, controls } = await mirror(page);
  const ranking = controls.find((each) => each.id === 'command:choose-format').choices;
  const text = JSON.stringify([results.map((row) => row.value_text), sections.map((each) => each.verdict), ranking]);
  // Short, so that a difference does not fill the test's report.
  return createHash('sha256').update(text).digest('hex');
}

/** From the middle of a slider's track to nearly its end. */
const drag_path = (box) => [[box.x + box.width * 0.5, box.y + box.height / 2], [box.x + box.width * 0.92, box.y + box.height / 2]];

const INPUTS = {
  async finger(page, id, _value, fingers) { await fingers.drag(...drag_path(await reveal(page, id)), { steps: 6 }); },
  async mouse(page, id) {
    const [from, to] = drag_path(await reveal(page, id));
    await page.mouse.move(...from);
    await page.mouse.down();
    await page.mouse.move(...to, { steps: 6 });
    await page.mouse.up();
  },
  async keyboard(page, id) {
    await page.locator(`[data-id="${id}"]`).focus();
    await page.keyboard.press('End');
  },
  async page(page, id, value) {
    await page.locator(`[data-id="${id}"]`).evaluate((element, text) => {
      const field = element.closest('.control').querySelector('.exact');
      field.value = text;
      field.dispatchEvent(new Event('change'));
    }, value);
  },
};

async function undo(page) {
  await page.locator('[data-id="command:undo"]').evaluate((button) => button.click());
  await at_rest(page);
}

describe('every question on every screen', () => {
  for (const screen of SCREENS) {
    const pointer = screen.finger ? 'finger' : 'mouse';
    test(`${screen.width} x ${screen.height} by ${pointer} and ${screen.other}`, async () => {
      const opened = await open(screen);
      const { page } = opened;
      const fingers = screen.finger ? await Fingers.on(page) : null;
      const at_first = await answer(page);
      for (const [section, [id, value]] of Object.entries(QUESTIONS)) {
        for (const kind of [pointer, screen.other]) {
          const before = (await control(page, id)).value_text;
          await INPUTS[kind](page, id, value, fingers);
          await at_rest(page);
          const now = (await control(page, id)).value_text;
          assert.notEqual(now, before, `${section} by ${kind}: the value changes`);
          assert.notEqual(await answer(page), at_first, `${section} by ${kind}: the answer follows`);
          await undo(page);
          assert.equal(await answer(page), at_first, `${section} by ${kind}: undo`);
        }
        const said = (await mirror(page)).sections.find((each) => each.id === section);
        assert.ok(said.has_verdict && said.verdict, `${section} has a verdict`);
        await reveal(page, id);
        assert.ok(await box_of(page, id), `${section} is in sight`);
      }
      await close_clean(opened);
    });
  }

  test('the marks along the edge lead to their question', async () => {
    const opened = await open(SCREENS[1]);
    const { page } = opened;
    const fingers = await Fingers.on(page);
    const sections = Object.entries(QUESTIONS);
    for (const [i, [section, [id]]] of [...sections.entries()].reverse()) {
      await fingers.tap((i + 0.5) * 390 / sections.length, 844 - 30);
      await at_rest(page);
      // The question's first control stands below its verdict.
      const first = (await mirror(page)).controls.find((each) => each.section === section && !each.further);
      const box = await box_of(page, first.id) || await box_of(page, id);
      assert.ok(box && box.y < 844 * 0.85, `${section} came up`);
    }
    await close_clean(opened);
  });
});

/** One step on, as the screen's people do it. */
async function next_step(page, screen, fingers) {
  if (!screen.finger) {
    await page.mouse.click(screen.width / 2, screen.height - 40);
    await page.keyboard.press('PageDown');
  } else {
    const box = await reveal(page, 'command:lesson-next');
    await fingers.tap(box.x + box.width / 2, box.y + box.height / 2);
  }
  await at_rest(page);
}

describe('every lesson', () => {
  for (const screen of LESSON_SCREENS) {
    test(`${screen.width} x ${screen.height}`, async () => {
      const opened = await open(screen);
      const { page } = opened;
      const fingers = screen.finger ? await Fingers.on(page) : null;
      const { choices } = await control(page, 'view:lesson');
      assert.ok(choices.length > 6, 'at least six lessons');
      for (const { value, label } of choices.slice(1)) {
        await page.locator('[data-id="view:lesson"]').selectOption(value);
        await at_rest(page);
        const count = Number((await mirror(page)).lesson.step.match(/^1 of (\d+)/)[1]);
        for (let step = 1; step <= count; step += 1) {
          const { lesson, headline } = await mirror(page);
          assert.ok(lesson.step.startsWith(`${step} of ${count}`), `${label}: ${lesson.step}`);
          assert.ok(lesson.words && lesson.working.result, `${label}: words and a working`);
          assert.ok(headline.every((row) => row.value_text), `${label}: the three numbers`);
          const [box] = (await Promise.all(['view:lesson', 'command:lesson-next', 'command:lesson-leave', 'command:lesson-back']
            .map((id) => box_of(page, id)))).filter(Boolean);
          assert.ok(box || screen.height < 500, `${label}, step ${step}: the lesson is in sight`);
          if (step < count) await next_step(page, screen, fingers);
        }
        assert.equal((await control(page, 'command:lesson-next')).enabled, false, `${label} ends`);
      }
      await close_clean(opened);
    });
  }
});
