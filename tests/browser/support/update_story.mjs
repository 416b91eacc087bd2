// How a new version comes to a device, the same in every browser: it waits, is offered, and takes the plan over when it
// is wanted; both versions are whole.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { until_page } from './gestures.mjs';
import { kept_offline, ready, reload, set_slider, value_text } from './tabs.mjs';

const FOCAL = '/lens/focal_mm';

/** Puts the next version in a site's place: a script by another name, so that a mixture would be seen. */
function publish_next_version(site_folder, old_version) {
  const old_name = fs.readdirSync(site_folder).find((name) => /^shell\.[0-9a-f]{10}\.js$/.test(name));
  const new_name = 'shell.0123456789.js';
  for (const ending of ['', '.br', '.gz']) fs.renameSync(path.join(site_folder, old_name + ending), path.join(site_folder, new_name + ending));
  for (const [name, changes] of [['index.html', [[old_name, new_name]]], ['sw.js', [[old_name, new_name], [old_version, '0123456789']]]]) {
    const file = path.join(site_folder, name);
    let text = fs.readFileSync(file, 'utf8');
    for (const [from, to] of changes) {
      assert.ok(text.includes(from), `${name} has ${from}`);
      text = text.replace(from, to);
    }
    fs.writeFileSync(file, text);
    for (const ending of ['.br', '.gz']) fs.rmSync(file + ending, { force: true });
  }
  return { old_name, new_name };
}

const version_of = (page) => page.evaluate(async () => (await caches.keys())[0].split('-').pop());
const shell_of = (page) => page.evaluate(() => [...document.scripts].map((script) => script.src.split('/').pop()).find((name) => name.startsWith('shell')));
const offered = (page) => until_page(page, 'the new version is offered', () => !document.getElementById('update').hidden);

/** The whole story on a page that shows a site served from a folder of the test's own. */
export async function take_new_version(page, site_folder) {
  await kept_offline(page);
  await set_slider(page, FOCAL, '65');
  const { old_name, new_name } = publish_next_version(site_folder, await version_of(page));
  await reload(page);
  assert.equal(await shell_of(page), old_name, 'the old version is still whole, though it is on no server');
  await offered(page);
  await set_slider(page, FOCAL, '75');
  await page.click('#update_later');
  assert.equal(await page.$eval('#update', (element) => element.hidden), true);
  await reload(page);
  assert.equal(await shell_of(page), old_name);
  await offered(page);
  await page.evaluate(() => { window.old_page = true; });
  await page.click('#update_now');
  await until_page(page, 'the new version has loaded', () => !window.old_page && Boolean(window.widegate));
  await ready(page);
  assert.equal(await shell_of(page), new_name);
  assert.equal(await value_text(page, FOCAL), '75');
  await until_page(page, 'only one version is kept', async () => (await caches.keys()).length === 1);
  assert.equal(await version_of(page), '0123456789');
}
