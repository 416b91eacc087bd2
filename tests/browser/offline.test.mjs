// Aeroplane mode, restart, updates: the site keeps itself on the device, whole versions only, and never loses a plan.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import http from 'node:http';
import os from 'node:os';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { serve_folder } from '../../tools/lib/static_server.mjs';
import { DIST, chromium, launch_options, policy_violations, start, watch } from './support/harness.mjs';
import { at_rest, control, ready, settled_address, until_page } from './support/gestures.mjs';
import { load_puppeteer, open_tab, serve } from './support/tabs.mjs';
import { take_new_version } from './support/update_story.mjs';

const FOCAL = '/lens/focal_mm';
let folder;
before(() => { folder = fs.mkdtempSync(path.join(os.tmpdir(), 'widegate-offline-')); });
after(() => fs.rmSync(folder, { recursive: true, force: true }));

/** A copy of the site that a test may change. */
function copy_of_site(name) {
  const copy = path.join(folder, name);
  fs.cpSync(DIST, copy, { recursive: true });
  return copy;
}

async function kept_offline(page) {
  await page.evaluate(() => navigator.serviceWorker.ready);
  await until_page(page, 'the site is kept on the device', () => navigator.serviceWorker.controller !== null);
}

async function set_focal(page, text) {
  await page.locator(`[data-id="${FOCAL}"]`).focus();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await at_rest(page);
}

const focal = async (page) => (await control(page, FOCAL)).value_text;

const stop_serving = (server) => new Promise((done) => {
  server.closeAllConnections();
  server.close(done);
});

test('after one visit everything works without the server, from a sub-path, with the plan', async (t) => {
  const site = await start({ prefix: '/some/where/' });
  const context = await site.browser.newContext();
  const page = await context.newPage();
  await page.goto(site.address);
  await ready(page);
  await kept_offline(page);
  await set_focal(page, '65');
  const link = await settled_address(page);
  await stop_serving(site.server);
  const began = Date.now();
  await page.goto(site.address);
  await ready(page);
  t.diagnostic(`reloaded without a server in ${Date.now() - began} ms`);
  assert.equal(await focal(page), '65');
  const second = await context.newPage();
  const trouble = watch(second, site.address);
  await second.goto(link);
  await ready(second);
  assert.equal(await focal(second), '65');
  await set_focal(second, '66');
  assert.deepEqual(trouble, []);
  assert.deepEqual(await second.evaluate(async () => {
    const cache = await caches.open((await caches.keys())[0]);
    return (await cache.keys()).map((request) => new URL(request.url).pathname.split('/').pop()).sort();
  }), fs.readdirSync(DIST).filter((name) => !/\.(br|gz)$/.test(name) && name !== 'sw.js').sort());
  await site.browser.close();
});

// By automation that lets go of workers: one that a debugger holds is now and then never idle, and then its successor
// waits for it without end.
test('a new version waits, is offered, and takes the plan over; both are whole', async (t) => {
  const copy = copy_of_site('update');
  const site = await serve({ folder: copy });
  t.after(site.stop);
  const browser = await (await load_puppeteer()).launch(launch_options());
  t.after(() => browser.close());
  const { page, trouble } = await open_tab(browser, site.address);
  await take_new_version(page, copy);
  assert.deepEqual(trouble, []);
  assert.deepEqual(await policy_violations(page), []);
});

test('the manifest can be installed: read by the browser without a complaint', async () => {
  const site = await start();
  const context = await site.browser.newContext();
  const page = await context.newPage();
  await page.goto(site.address);
  await ready(page);
  const session = await context.newCDPSession(page);
  const { errors, data } = await session.send('Page.getAppManifest');
  assert.deepEqual(errors, []);
  const manifest = JSON.parse(data);
  for (const { src, sizes } of manifest.icons) {
    const [status, width] = await page.evaluate(async (name) => {
      const response = await fetch(name);
      const picture = new Image();
      picture.src = name;
      await picture.decode();
      return [response.status, picture.naturalWidth];
    }, src);
    assert.equal(status, 200, src);
    if (sizes !== 'any') assert.equal(width, parseInt(sizes, 10), src);
  }
  await site.stop();
});

test('the browser is closed and started again with the server gone: the app and the plan are there', async (t) => {
  const profile = path.join(folder, 'profile');
  const { server, address } = await serve_folder({ root: DIST, prefix: '/kept/' });
  const open = async () => {
    const context = await chromium.launchPersistentContext(profile, launch_options());
    t.after(() => context.close());
    const page = context.pages()[0] ?? await context.newPage();
    await page.goto(address);
    await ready(page);
    return { context, page };
  };
  const first = await open();
  await kept_offline(first.page);
  await set_focal(first.page, '85');
  await settled_address(first.page);
  await first.context.close();
  await stop_serving(server);
  const second = await open();
  assert.equal(await focal(second.page), '85');
  await set_focal(second.page, '86');
  await second.context.close();
  const third = await open();
  assert.equal(await focal(third.page), '86', 'what was changed without a server is kept too');
});

test('in a whole session nothing is asked of any other host, and of its own only the files of the site', async (t) => {
  // Whatever is not for this machine goes through a proxy that writes it down and refuses it.
  const elsewhere = [];
  const proxy = http.createServer((request, response) => {
    elsewhere.push(request.url);
    response.writeHead(403).end();
  });
  proxy.on('connect', (request, socket) => {
    elsewhere.push(request.url);
    socket.end('HTTP/1.1 403 Forbidden\r\n\r\n');
  });
  await new Promise((done) => { proxy.listen(0, '127.0.0.1', done); });
  t.after(() => stop_serving(proxy));
  // The browser itself would ask its maker about every field that could be filled in.
  const site = await start({ launch_arguments: ['--disable-features=AutofillServerCommunication'] });
  t.after(site.stop);
  const asked = new Set();
  site.server.on('request', (request) => asked.add(`${request.method} ${request.url}`));
  // A proxy of the context takes what page and worker ask for, not what the browser asks for itself.
  const context = await site.browser.newContext({ acceptDownloads: true, proxy: { server: `http://127.0.0.1:${proxy.address().port}`, bypass: new URL(site.address).host } });
  // The same from the other end: what page and worker ask for, as the browser tells it.
  const of_the_site = [];
  context.on('request', (request) => of_the_site.push(request.url()));
  const page = await context.newPage();
  await page.goto(site.address);
  await ready(page);
  await kept_offline(page);
  await set_focal(page, '65');
  await page.evaluate(() => { window.print = () => {}; });
  const ids = (await page.evaluate(() => window.widegate.mirror().controls)).filter((each) => each.kind === 'action' && each.enabled).map((each) => each.id);
  assert.ok(ids.includes('command:save-chart') && ids.includes('command:print-sheet'));
  for (const id of ids) {
    // One that was pressed before may have put this one away.
    await page.evaluate((place) => document.querySelector(place)?.click(), `[data-id="${id}"]`);
    await at_rest(page);
    await page.evaluate(() => document.querySelector('dialog[open]')?.close());
  }
  await page.reload();
  await ready(page);
  // The recorder works: a request that the policy does not govern, made on purpose, is seen.
  const seen = elsewhere.splice(0);
  assert.ok(of_the_site.length > 0);
  assert.deepEqual(of_the_site.filter((url) => /^https?:/.test(url) && !url.startsWith(site.address)), []);
  await page.goto('http://elsewhere.example/').catch(() => {});
  assert.ok(elsewhere.some((url) => url.includes('elsewhere.example')), 'the recorder records');
  // On a slow machine the browser was seen to look for its maker by itself; no file of the site names that host.
  const browsers_own = /^www\.google\.com:443$/;
  for (const name of fs.readdirSync(DIST).filter((each) => /\.(html|js|css|wasm|svg|webmanifest)$/.test(each))) {
    assert.ok(!fs.readFileSync(path.join(DIST, name)).includes('google'), name);
  }
  assert.deepEqual(seen.filter((host) => !browsers_own.test(host)), []);
  const files = new Set(['', ...fs.readdirSync(DIST).filter((name) => !/\.(br|gz)$/.test(name))]);
  for (const line of asked) {
    const [method, address] = line.split(' ');
    assert.equal(method, 'GET', line);
    assert.ok(files.has(address.slice(1)), `asked for ${line}`);
  }
});
