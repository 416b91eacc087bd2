// Fingers and look-ups for the browser tests: touches with exact times, the app's state as its page twin has it.

/** Software drawing on a busy machine takes its time; a wait ends with what it waits for, so this costs nothing. */
export const PATIENCE_MS = 60000;
const APART_MS = 30;

/**
 * Reads again and again until what was read is as wanted (by default: anything true), and resolves to it. For all that
 * follows an action later than the action itself ends. A page that is just being left has no answer.
 */
export async function until(what, read, wanted = Boolean) {
  const limit = Date.now() + PATIENCE_MS;
  let last;
  do {
    try {
      last = await read();
      if (wanted(last)) return last;
    } catch (error) {
      last = String(error);
    }
    await new Promise((done) => { setTimeout(done, APART_MS); });
  } while (Date.now() < limit);
  throw new Error(`waited in vain: ${what}; the last seen was ${String(JSON.stringify(last)).slice(0, 400)}`);
}

/** Until a question to the page itself is answered with yes. */
export const until_page = (page, what, asked, argument) => until(what, () => page.evaluate(asked, argument));

/** Until the app says something that matches. */
export const until_said = (page, words) => until(`the message ${words}`, async () => (await mirror(page)).message, (text) => words.test(text));

/** Puts a damaged link into the address, until the app has seen it, and it and the page both say something of a link;
 *  `said` reads what stands on the page. */
export async function open_damaged(page, hash, said) {
  const wanted = (text) => /link/i.test(text);
  await until_page(page, 'no change of the address waits', () => !window.widegate.address_waits());
  await page.evaluate((text) => new Promise((done) => {
    window.addEventListener('hashchange', () => done(), { once: true });
    location.hash = text;
  }), hash);
  await at_rest(page);
  await until(`a word on the link ${hash.slice(0, 20)}`, async () => (await mirror(page)).message, wanted);
  await until('the same on the page', said, wanted);
}

/** The whole mirror of the app's state. */
export const mirror = (page) => page.evaluate(() => window.widegate.mirror());

export const frame_count = (page) => page.evaluate(() => window.widegate.frame_count());

/** One control of the mirror. */
export async function control(page, id) {
  const found = (await mirror(page)).controls.find((each) => each.id === id);
  if (!found) throw new Error(`no control ${id}`);
  return found;
}

/** The three numbers in sight, as texts. */
export const headline = async (page) => (await mirror(page)).headline.map((row) => row.value_text);

/** Waits until what was just done has arrived, nothing is drawn any more, and the page's twin has caught up. */
export async function at_rest(page) {
  await page.evaluate(() => new Promise((done) => {
    let frames = 0;
    const check = () => {
      frames += 1;
      if (frames > 3 && window.widegate?.resting()) done();
      else requestAnimationFrame(check);
    };
    check();
  }));
}

/** Until the app runs and has nothing to draw. */
export async function ready(page) {
  await until_page(page, 'the app runs', () => Boolean(window.widegate));
  await at_rest(page);
}

export async function reload(page) {
  await page.reload();
  await ready(page);
}

/** The page's address once it has caught up with the plan: it is written a little after the last change. */
export async function settled_address(page) {
  await at_rest(page);
  await until_page(page, 'the address is the plan', () => !window.widegate.address_waits() && location.hash.length > 1);
  return page.evaluate(() => location.href);
}

/** Takes the drawing context away, until the app has been told. */
export const lose_context = (page) => page.evaluate(() => new Promise((done) => {
  const canvas = document.getElementById('canvas');
  window.loss = canvas.getContext('webgl2').getExtension('WEBGL_lose_context');
  canvas.addEventListener('webglcontextlost', done, { once: true });
  window.loss.loseContext();
}).then(() => {}));

/** Gives it back, until the app has drawn anew. */
export async function restore_context(page) {
  await page.evaluate(() => new Promise((done) => {
    document.getElementById('canvas').addEventListener('webglcontextrestored', done, { once: true });
    window.loss.restoreContext();
  }).then(() => {}));
  await at_rest(page);
}

/** Where a control is drawn, in CSS pixels; null when it is not on the screen. */
export function box_of(page, id) {
  return page.evaluate((wanted) => {
    const box = document.querySelector(`[data-id="${CSS.escape(wanted)}"]`).closest('.control');
    if (box.classList.contains('away')) return null;
    const { x, y, width, height } = box.getBoundingClientRect();
    return { x, y, width, height };
  }, id);
}

/** Scrolls the drawn page until the control is in sight, as moving the keyboard's focus there does. */
export async function reveal(page, id) {
  await page.locator(`[data-id="${id}"]`).evaluate((element) => element.focus({ preventScroll: true }));
  await at_rest(page);
  await page.locator(`[data-id="${id}"]`).evaluate((element) => element.blur());
  await at_rest(page);
  const box = await box_of(page, id);
  if (!box) throw new Error(`${id} did not come into sight`);
  return box;
}

/** Fingers on the screen of one page. */
export class Fingers {
  static async on(page) {
    return new Fingers(page, await page.context().newCDPSession(page));
  }

  constructor(page, session) {
    this.page = page;
    this.session = session;
    this.time = Date.now() / 1000;
  }

  /** Sends the points that are down now; `pause_ms` passes before, for the page as for the timestamps. */
  async send(type, points, pause_ms = 16) {
    this.time += pause_ms / 1000;
    const touchPoints = points.map(([x, y], id) => ({ x, y, id }));
    await this.session.send('Input.dispatchTouchEvent', { type, touchPoints, timestamp: this.time });
  }

  async tap(x, y) {
    await this.send('touchStart', [[x, y]], 200);
    await this.send('touchEnd', [], 40);
  }

  /** One finger from a point to another. `rest_ms` is how long it stands still before it lifts. */
  async drag([x0, y0], [x1, y1], { steps = 10, rest_ms = 16, lift = true } = {}) {
    await this.send('touchStart', [[x0, y0]], 200);
    for (let i = 1; i <= steps; i += 1) {
      await this.send('touchMove', [[x0 + (x1 - x0) * i / steps, y0 + (y1 - y0) * i / steps]]);
    }
    if (lift) await this.send('touchEnd', [], rest_ms);
  }

  /** Two fingers beside one another around a point, from one distance to another. */
  async pinch([x, y], from, to, steps = 10) {
    const points = (distance) => [[x - distance / 2, y], [x + distance / 2, y]];
    await this.send('touchStart', points(from).slice(0, 1), 200);
    await this.send('touchStart', points(from));
    for (let i = 1; i <= steps; i += 1) await this.send('touchMove', points(from + (to - from) * i / steps));
    await this.send('touchEnd', []);
  }
}
