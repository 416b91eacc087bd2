// How a new version comes to a device, the same in every browser: it waits, is offered, and takes the plan over when it
// is wanted; both versions are whole.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { until_page } from './gestures.mjs';
import { kept_offline, ready, reload, set_slider, value_text } from './tabs.mjs';

const FOCAL = '/lens/focal_mm';

const NEW_VERSION = '0123456789';
const new_name_of = (name) => name.replace(/\.[0-9a-f]{10}\./, `.${NEW_VERSION}.`);
/** What must come from one version: the script and both parts of the program. */
const IS_OF_A_VERSION = /^(shell|widegate_web|widegate_rest)\.[0-9a-f]{10}\.(js|wasm)$/;

/** Puts the next version in a site's place: scripts and program by other names, so that a mixture would be seen. */
function publish_next_version(site_folder, old_version) {
  const old_names = fs.readdirSync(site_folder).filter((name) => IS_OF_A_VERSION.test(name)).sort();
  assert.equal(old_names.length, 4);
  for (const name of old_names) {
    for (const ending of ['', '.br', '.gz']) fs.renameSync(path.join(site_folder, name + ending), path.join(site_folder, new_name_of(name) + ending));
  }
  for (const name of ['index.html', 'sw.js', ...old_names.filter((each) => each.endsWith('.js')).map(new_name_of)]) {
    const file = path.join(site_folder, name);
    const before = fs.readFileSync(file, 'utf8');
    let text = before.replaceAll(old_version, NEW_VERSION);
    for (const old_name of old_names) text = text.replaceAll(old_name, new_name_of(old_name));
    assert.notEqual(text, before, `${name} names files of its version`);
    fs.writeFileSync(file, text);
    for (const ending of ['.br', '.gz']) fs.rmSync(file + ending, { force: true });
  }
  return { old_names, new_names: old_names.map(new_name_of).sort() };
}

const version_of = (page) => page.evaluate(async () => (await caches.keys())[0].split('-').pop());
/** The scripts and parts of the program that this page has loaded. */
const loaded_by = (page) => page.evaluate((pattern) => [...new Set(performance.getEntriesByType('resource').map((entry) => entry.name.split('/').pop()))]
  .filter((name) => new RegExp(pattern).test(name)).sort(), IS_OF_A_VERSION.source);
const offered = (page) => until_page(page, 'the new version is offered', () => !document.getElementById('update').hidden);

/** The whole story on a page that shows a site served from a folder of the test's own. */
export async function take_new_version(page, site_folder) {
  await kept_offline(page);
  await set_slider(page, FOCAL, '65');
  const { old_names, new_names } = publish_next_version(site_folder, await version_of(page));
  await reload(page);
  assert.deepEqual(await loaded_by(page), old_names, 'the old version is still whole, though it is on no server');
  await offered(page);
  await set_slider(page, FOCAL, '75');
  await page.click('#update_later');
  assert.equal(await page.$eval('#update', (element) => element.hidden), true);
  await reload(page);
  assert.deepEqual(await loaded_by(page), old_names);
  await offered(page);
  await page.evaluate(() => { window.old_page = true; });
  await page.click('#update_now');
  await until_page(page, 'the new version has loaded', () => !window.old_page && Boolean(window.widegate));
  await ready(page);
  assert.deepEqual(await loaded_by(page), new_names);
  assert.equal(await value_text(page, FOCAL), '75');
  await until_page(page, 'only one version is kept', async () => (await caches.keys()).length === 1);
  assert.equal(await version_of(page), NEW_VERSION);
}
