// One thumb on one page: finds what it wants where it is drawn, taps it, counts, and complains when what was tapped
// moved away from under it or when an answer is not in sight.
import assert from 'node:assert/strict';
import { Fingers, at_rest, box_of, control, mirror, until } from './gestures.mjs';

/** CSS pixels that rounding may move something by. */
const STILL_PX = 2;
/** Controls that never scroll. */
const BAR = new Set(['command:undo', 'command:redo', 'view:go-to']);

export class Thumb {
  static async on(page) { return new Thumb(page, await Fingers.on(page)); }

  constructor(page, fingers) {
    this.page = page;
    this.fingers = fingers;
    this.taps = 0;
    this.swipes = 0;
  }

  get screen() { return this.page.viewportSize(); }

  /** Where something is drawn that is no control: "rail:run", "entry:wye", "verdict:see"; null when not in sight. */
  async place(id) {
    const places = (await mirror(this.page)).places.filter((each) => each.id === id);
    return places.find((each) => this.is_in_sight(each)) || places[0] || null;
  }

  is_in_sight({ x, y, width, height }) {
    return x >= -1 && y >= -1 && x + width <= this.screen.width + 1 && y + height <= this.screen.height + 1;
  }

  /** Taps the middle of a box, and nothing else. */
  async press(box) {
    this.taps += 1;
    await this.fingers.tap(box.x + box.width / 2, box.y + box.height / 2);
    await at_rest(this.page);
  }

  /** Taps such a place; in a list that is longer than the screen after swiping it up. */
  async tap_place(id) {
    for (let i = 0; i < 8; i += 1) {
      const box = await this.place(id);
      const middle = box && { ...box, height: 0, y: box.y + box.height / 2 };
      if (box && this.is_in_sight(middle) && box.y + box.height / 2 < this.screen.height - 8) {
        await this.press(box);
        return;
      }
      const { right } = await this.column();
      const { height } = this.screen;
      this.swipes += 1;
      await this.fingers.drag([right - 40, height * 0.85], [right - 40, height * 0.5], { steps: 8, rest_ms: 200 });
      await at_rest(this.page);
    }
    throw new Error(`${id} did not come into sight`);
  }

  /** To a section by the rail. */
  async go(section) { await this.tap_place(`rail:${section}`); }

  /** A control's box, after scrolling as far as needed by swipes of the thumb. */
  async find(id) {
    for (let i = 0; i < 40; i += 1) {
      const box = await box_of(this.page, id);
      const column = await this.column();
      if (BAR.has(id)) return box;
      if (box && box.y >= column.top && box.y + box.height <= column.low) return box;
      // What is not drawn at all may be above as well.
      const up = box ? box.y < column.top : id.startsWith('start:') || i > 14;
      await this.swipe(up ? 0.6 : -0.6, column);
    }
    throw new Error(`${id} did not come into sight by swiping`);
  }

  /** The part of the screen where the questions are, as far as nothing lies over it. */
  async column() {
    const { x, y, width, height } = await this.place('column:questions');
    return { right: x + width, top: y, low: y + height };
  }

  async swipe(share, column) {
    this.swipes += 1;
    const height = column.low - column.top;
    const by = height * share;
    // A message may lie over the lower end.
    const from = by < 0 ? column.low - height * 0.3 : column.top + height * 0.1;
    // At the very edge of the column, where no slider is.
    const x = column.right - 6;
    await this.fingers.drag([x, from], [x, from + by], { steps: 8, rest_ms: 200 });
    await at_rest(this.page);
  }

  /** Taps a control; it must be where it was afterwards, unless the tap made it go. */
  async tap(id) {
    const box = await this.find(id);
    await this.press(box);
    await this.stayed(id, box);
  }

  async stayed(id, before) {
    // A phone that is typed on has another layout.
    if (await this.page.locator('#entry').isVisible()) return;
    const after = await this.page.evaluate((wanted) => {
      const element = document.querySelector(`[data-id="${CSS.escape(wanted)}"]`)?.closest('.control');
      if (!element || element.classList.contains('away')) return null;
      const { x, y } = element.getBoundingClientRect();
      return { x, y };
    }, id);
    if (!after) return;
    const by = Math.hypot(after.x - before.x, after.y - before.y);
    assert.ok(by <= STILL_PX, `${id} moved by ${by.toFixed(1)} px under the thumb`);
  }

  /** Taps the value of a slider, which stands above its track at the right, and types. */
  async type(id, text) {
    const box = await this.find(id);
    this.taps += 1;
    await this.fingers.tap(box.x + box.width, box.y - box.height / 2);
    await at_rest(this.page);
    await this.write(text);
  }

  /** Into the field that is open, Enter at the end. */
  async write(text) {
    await until('the field is open', () => this.page.locator('#entry').isVisible());
    if (text) await this.page.keyboard.press('Control+a');
    if (text) await this.page.keyboard.type(text);
    await this.page.keyboard.press('Enter');
    await at_rest(this.page);
  }

  /** Chooses from a list: its control, then the entry. */
  async choose(id, value) {
    await this.tap(id);
    await this.tap_place(`entry:${value}`);
  }

  /** The answer to a section's question must be in sight, whole. */
  async sees_answer(section, place = 0) {
    const id = `answer:${section}:${place}`;
    const box = await box_of(this.page, id);
    const { label } = await control(this.page, id);
    const column = await this.column();
    assert.ok(box, `“${label}” is not on the screen`);
    assert.ok(this.is_in_sight(box) && box.y + box.height <= column.low + 1, `“${label}” lies outside at ${JSON.stringify(box)}`);
    return label;
  }

  /** The verdict of a section, as words; it must be in sight, whole. */
  async sees_verdict(section) {
    const box = await this.place(`verdict:${section}`);
    assert.ok(box && this.is_in_sight(box), `the verdict of ${section} is not in sight: ${JSON.stringify(box)}`);
    return (await mirror(this.page)).sections.find((each) => each.id === section);
  }
}
