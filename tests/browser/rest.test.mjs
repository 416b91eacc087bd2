// What the app costs when nobody touches it, and what it survives: reload, a second tab, a lost drawing context, a
// browser without WebGL 2.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { DEVICES, decode_png, open_site, policy_violations, start, watch } from './support/harness.mjs';
import { at_rest, control, frame_count, headline, lose_context, mirror, ready, reload, restore_context, settled_address, until_page } from './support/gestures.mjs';

const FOCAL = '/lens/focal_mm';

let site;
before(async () => { site = await start(); });
after(() => site.stop());

/** Sets a slider as the keyboard would. */
async function set_focal(page, text) {
  await page.locator(`[data-id="${FOCAL}"]`).focus();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await at_rest(page);
}

async function close_clean({ page, context, trouble }) {
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
  await context.close();
}

describe('at rest', () => {
  // Both wait at the same time: here it is time itself that must pass.
  describe('nothing is drawn', { concurrency: true }, () => {
    for (const name of ['phone', 'desktop']) test(`no frame in ten seconds on a ${name}`, async (t) => {
      const opened = await open_site(site, { device: DEVICES[name] });
      await at_rest(opened.page);
      await set_focal(opened.page, '40');
      const before = await frame_count(opened.page);
      await opened.page.waitForTimeout(10000);
      const drawn = await frame_count(opened.page) - before;
      t.diagnostic(`frames drawn in 10 s at rest: ${drawn}; until then: ${before}`);
      assert.equal(drawn, 0);
      await close_clean(opened);
    });
  });

  test('time to the first frame', async (t) => {
    const opened = await open_site(site, { device: DEVICES.phone });
    const times = await opened.page.evaluate(() => {
      const [navigation] = performance.getEntriesByType('navigation');
      const [mark] = performance.getEntriesByName('first-frame');
      return { loaded: navigation.domContentLoadedEventEnd, first: mark.startTime };
    });
    t.diagnostic(`first frame ${times.first.toFixed(0)} ms after navigation (page ready at ${times.loaded.toFixed(0)} ms)`);
    assert.ok(times.first > 0);
    await close_clean(opened);
  });
});

describe('the plan survives', () => {
  test('a reload', async () => {
    const opened = await open_site(site);
    await set_focal(opened.page, '77');
    const before = await headline(opened.page);
    await reload(opened.page);
    assert.equal((await control(opened.page, FOCAL)).value_text, '77');
    assert.deepEqual(await headline(opened.page), before);
    await close_clean(opened);
  });

  // The address is written a little after the last change; until then it holds the plan before.
  test('a reload right after a change, while the address still waits', async () => {
    const opened = await open_site(site);
    const { page } = opened;
    await set_focal(page, '77');
    await settled_address(page);
    const behind = await page.evaluate(() => location.hash);
    await set_focal(page, '78');
    await reload(page);
    assert.equal((await control(page, FOCAL)).value_text, '78');
    // Again before the address has caught up.
    await reload(page);
    assert.equal((await control(page, FOCAL)).value_text, '78');
    await until_page(page, 'another address', (old) => location.hash.length > 1 && location.hash !== old, behind);
    await close_clean(opened);
  });

  test('a killed tab whose address was never written', async () => {
    const opened = await open_site(site);
    const { page } = opened;
    await set_focal(page, '77');
    await settled_address(page);
    // Nothing more reaches the address, as when the browser ends the tab.
    await page.evaluate(() => { history.replaceState = () => { throw new Error('no more'); }; });
    const behind = await page.evaluate(() => location.hash);
    await set_focal(page, '79');
    assert.equal(await page.evaluate(() => location.hash), behind);
    await reload(page);
    assert.equal((await control(page, FOCAL)).value_text, '79');
    await close_clean(opened);
  });

  test('another plan’s link in the same tab, and the way back in history', async () => {
    const opened = await open_site(site);
    const { page } = opened;
    const focal = async () => {
      await ready(page);
      return (await control(page, FOCAL)).value_text;
    };
    await set_focal(page, '77');
    const first = await settled_address(page);
    await set_focal(page, '50');
    const second = await settled_address(page);
    await page.evaluate(() => {
      const key = 'widegate/1/address';
      const earlier = JSON.parse(sessionStorage.getItem(key)).map(({ text, time }) => ({ text, time: time - 60000 }));
      sessionStorage.setItem(key, JSON.stringify(earlier));
    });
    // A minute later, a page elsewhere with a link to the first plan, as a message or a call sheet has one.
    await page.goto('about:blank');
    await page.goto(first);
    assert.equal(await focal(), '77', 'a link is opened, whatever the tab held');
    await page.goto('about:blank');
    await page.goto(second);
    assert.equal(await focal(), '50');
    await page.goBack();
    await page.goBack();
    assert.equal(await focal(), '77', 'the earlier plan comes back with its address');
    await close_clean(opened);
  });

  test('a second tab: each keeps its own, a third starts from the newest', async () => {
    const opened = await open_site(site);
    const open_tab = async () => {
      const page = await opened.context.newPage();
      const trouble = watch(page, site.address);
      await page.goto(site.address);
      await ready(page);
      return { page, trouble };
    };
    const focal = async (page) => (await control(page, FOCAL)).value_text;
    await set_focal(opened.page, '60');
    const second = await open_tab();
    assert.equal(await focal(second.page), '60', 'a new tab starts from the newest plan');
    await reload(second.page);
    assert.equal(await focal(second.page), '60', 'and finds it again before its first change');
    await set_focal(second.page, '90');
    assert.equal(await focal(opened.page), '60', 'the first tab keeps its own');
    await opened.page.bringToFront();
    await set_focal(opened.page, '61');
    await reload(second.page);
    assert.equal(await focal(second.page), '90');
    await reload(opened.page);
    assert.equal(await focal(opened.page), '61');
    await second.page.bringToFront();
    await set_focal(second.page, '91');
    const third = await open_tab();
    assert.equal(await focal(third.page), '91');
    assert.deepEqual([...second.trouble, ...third.trouble], []);
    await close_clean(opened);
  });

  test('a store full of rubbish', async () => {
    const opened = await open_site(site);
    await set_focal(opened.page, '60');
    await opened.page.evaluate(() => {
      for (const key of Object.keys(localStorage)) localStorage.setItem(key, '{"format":{"camera":12}');
    });
    await reload(opened.page);
    assert.equal((await mirror(opened.page)).headline.length, 3);
    await close_clean(opened);
  });
});

describe('a lost drawing context', () => {
  const pixels = async (page) => decode_png(await page.screenshot()).pixels;

  test('comes back with the same picture', async () => {
    const opened = await open_site(site, { device: DEVICES.phone });
    const { page } = opened;
    await at_rest(page);
    const before = await pixels(page);
    await lose_context(page);
    await restore_context(page);
    const now = await pixels(page);
    let different = 0;
    for (let i = 0; i < before.length; i += 1) different += before[i] !== now[i];
    assert.equal(different, 0);
    assert.equal(await page.evaluate(() => document.getElementById('canvas').getContext('webgl2').getError()), 0);
    await close_clean(opened);
  });

  test('in the middle of a drag stops the drawing and nothing else', async () => {
    const opened = await open_site(site, { device: DEVICES.desktop });
    const { page } = opened;
    await page.locator(`[data-id="${FOCAL}"]`).focus();
    await at_rest(page);
    const { x, y, width, height } = await page.locator(`[data-id="${FOCAL}"]`).boundingBox();
    await page.mouse.move(x + width / 2, y + height / 2);
    await page.mouse.down();
    await page.mouse.move(x + width / 2 + 30, y + height / 2);
    await at_rest(page);
    const dragged = (await control(page, FOCAL)).value_text;
    await lose_context(page);
    assert.match(await page.locator('#message').innerText(), /Nothing is lost/);
    await page.mouse.move(x + width / 2 + 120, y + height / 2);
    await at_rest(page);
    const farther = (await control(page, FOCAL)).value_text;
    assert.notEqual(farther, dragged, 'the finger is followed');
    await page.mouse.up();
    await page.locator('.control:has([data-id="/title"]) input').last().fill('Typed in the dark');
    await page.keyboard.press('Tab');
    await at_rest(page);
    await restore_context(page);
    assert.equal(await page.locator('#message').isHidden(), true);
    assert.equal((await control(page, FOCAL)).value_text, farther);
    await page.mouse.move(x + width / 2 - 60, y + height / 2);
    await at_rest(page);
    assert.equal((await control(page, FOCAL)).value_text, farther, 'nothing is held any more');
    await settled_address(page);
    await reload(page);
    assert.equal((await control(page, FOCAL)).value_text, farther);
    assert.equal((await control(page, '/title')).value_text, 'Typed in the dark');
    await close_clean(opened);
  });
});

test('without WebGL 2 the text page is the app, and says why', async (t) => {
  const bare = await start({ launch_arguments: ['--disable-3d-apis'] });
  t.after(bare.stop);
  const context = await bare.browser.newContext();
  const page = await context.newPage();
  await page.goto(bare.address);
  await ready(page);
  assert.match(await page.locator('#message').textContent(), /WebGL 2/);
  await page.locator('.control:has([data-id="/lens/focal_mm"]) .exact').fill('50');
  await page.keyboard.press('Tab');
  await at_rest(page);
  assert.equal((await control(page, FOCAL)).value_text, '50');
});
