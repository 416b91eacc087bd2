// The two parts of the program on a line that fails between them, the same in every browser.
import assert from 'node:assert/strict';
import { serve_folder } from '../../../tools/lib/static_server.mjs';
import { at_rest, control, mirror, until_page } from './gestures.mjs';
import { DIST } from './harness.mjs';
import { press, set_slider, value_text } from './tabs.mjs';

const FOCAL = '/lens/focal_mm';
const is_first = (name) => /widegate_web\.[0-9a-f]{10}\.wasm$/.test(name);
const is_rest = (name) => /widegate_rest\.[0-9a-f]{10}\.wasm$/.test(name);

/**
 * The site on a line of the test's own. `line.rest` false: requests for the rest of the program fail. `line.held`:
 * the first part stops half way until line.let_go() is called. stop() may be called twice.
 */
export async function serve_by_line({ folder = DIST } = {}) {
  const { server, address } = await serve_folder({ root: folder });
  const [usual] = server.listeners('request');
  const line = { rest: true, held: false, asked_for_rest: 0, waiting: [] };
  line.let_go = () => {
    line.held = false;
    for (const go_on of line.waiting.splice(0)) go_on();
  };
  server.removeAllListeners('request');
  server.on('request', (request, response) => {
    if (is_rest(request.url)) line.asked_for_rest += 1;
    if (is_rest(request.url) && !line.rest) {
      request.socket.destroy();
      return;
    }
    if (is_first(request.url) && line.held) send_half(line, response);
    usual(request, response);
  });
  const stop = () => new Promise((done) => {
    line.let_go();
    server.closeAllConnections();
    if (server.listening) server.close(done);
    else done();
  });
  return { address, line, stop };
}

function send_half(line, response) {
  const end = response.end.bind(response);
  response.end = (body) => {
    const half = Math.floor(body.length / 2);
    response.write(body.subarray(0, half));
    line.waiting.push(() => end(body.subarray(half)));
  };
}

export const rest_of = (page) => page.evaluate(() => window.widegate.rest());

/** Until the app runs with its first part alone: the rest was asked for in vain. */
export const first_part_runs = (page) => until_page(page, 'the rest is missed', () => window.widegate?.rest().state === 'missing');

/** The first part alone is a working app that says what is missing and tries again; then the rest makes it whole. */
export async function live_without_rest(page, line) {
  await first_part_runs(page);
  await at_rest(page);
  const { sections, controls } = await mirror(page);
  const missing = sections.filter((section) => /not reach/.test(section.notes.join()));
  assert.ok(missing.some((section) => section.id === 'choose') && missing.some((section) => section.id === 'handover'));
  assert.ok(!missing.some((section) => section.id === 'cover' || section.id === 'store'));
  assert.ok(controls.every((each) => !missing.some((section) => section.id === each.section)));
  await set_slider(page, FOCAL, '65');
  await press(page, 'command:undo');
  assert.equal(await value_text(page, FOCAL), '35');
  await press(page, 'command:redo');
  assert.equal(await value_text(page, FOCAL), '65');
  const asked = line.asked_for_rest;
  await press(page, 'plans:add');
  assert.match((await mirror(page)).message, /not reach/);
  await until_asked_again(line, asked);
  assert.deepEqual((await rest_of(page)).called_early, []);
  line.rest = true;
  await page.evaluate(() => { window.dispatchEvent(new Event('online')); });
  await until_page(page, 'the rest is here', () => window.widegate.rest().state === 'here');
  await at_rest(page);
  const whole = await mirror(page);
  assert.match(whole.message, /list of plans/, 'what was asked for is done');
  assert.ok(whole.sections.every((section) => !/not reach/.test(section.notes.join())));
  assert.ok((await control(page, 'command:choose-format')).choices.length > 3);
  assert.deepEqual((await rest_of(page)).called_early, []);
}

async function until_asked_again(line, before) {
  for (let waited = 0; line.asked_for_rest === before; waited += 50) {
    assert.ok(waited < 20000, 'asked for again at once when somebody waits for it');
    await new Promise((done) => { setTimeout(done, 50); });
  }
}
