// The frame-line chart as PNG, from the command line and from the app, read back by the browser's own image decoder:
// exactly the recorded raster, and lines on exactly the pixels that the report names.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { DEVICES, open_site, start } from './support/harness.mjs';
import { at_rest, until_said } from './support/gestures.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const widegate = path.join(root, 'build/native/widegate');
const example = (name) => path.join(root, `docs/examples/${name}.plan.json`);
const run = (...args) => execFileSync(widegate, args, { encoding: 'utf8' });

let site;
let folder;
let page;
before(async () => {
  site = await start();
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'widegate-chart-'));
  ({ page } = await open_site(site, { device: DEVICES.desktop, acceptDownloads: true }));
});
after(async () => {
  await site.stop();
  fs.rmSync(folder, { recursive: true, force: true });
});

/** Grey levels along one row and one column of a PNG, and its size, as the browser decodes it. */
const decode = (file, row, column) => page.evaluate(async ([text, y, x]) => {
  const bytes = Uint8Array.from(atob(text), (c) => c.charCodeAt(0));
  const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
  const canvas = new OffscreenCanvas(picture.width, picture.height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context.drawImage(picture, 0, 0);
  const reds = ({ data }) => Array.from({ length: data.length / 4 }, (unused, i) => data[4 * i]);
  return {
    width: picture.width, height: picture.height,
    row: reds(context.getImageData(0, y, picture.width, 1)), column: reds(context.getImageData(x, 0, 1, picture.height)),
  };
}, [fs.readFileSync(file).toString('base64'), row, column]);

/** First pixels of lit runs. */
const rising = (levels) => levels.flatMap((level, i) => (level > 0 && !(levels[i - 1] > 0) ? [i] : []));
/** Pixels after the last ones of lit runs. */
const falling = (levels) => levels.flatMap((level, i) => (level > 0 && !(levels[i + 1] > 0) ? [i + 1] : []));

for (const name of ['salt-ferry', 'anamorphic', 'large-format-squeeze', 'three-frame-lines']) {
  test(`${name}: size and lines to the pixel`, { skip: !fs.existsSync(widegate) && 'the command line is not built' }, async () => {
    const file = path.join(folder, `${name}.png`);
    run('chart', example(name), '-o', file);
    const { frame_lines: lines, resolve } = JSON.parse(run('evaluate', '--json', example(name)));
    for (const line of lines) {
      const [left, top, width, height] = ['left', 'top', 'width', 'height'].map((side) => line[`${side}_even_pixels`]);
      // Off the middle, where marks and labels are.
      const picture = await decode(file, top + Math.round(height * 0.81), left + Math.round(width * 0.03));
      assert.equal(picture.width, resolve.recorded_width_pixels);
      assert.equal(picture.height, resolve.recorded_height_pixels);
      assert.ok(rising(picture.row).includes(left), `left ${left} in ${rising(picture.row)}`);
      assert.ok(falling(picture.row).includes(left + width), `right ${left + width} in ${falling(picture.row)}`);
      assert.ok(rising(picture.column).includes(top), `top ${top} in ${rising(picture.column)}`);
      assert.ok(falling(picture.column).includes(top + height), `low ${top + height} in ${falling(picture.column)}`);
      const whole = [picture.row[left], picture.row[left + width - 1], picture.column[top], picture.column[top + height - 1]];
      assert.deepEqual(whole, [255, 255, 255, 255], 'sharp, without soft edges');
    }
  });
}

test('the app saves the same picture', { skip: !fs.existsSync(widegate) && 'the command line is not built' }, async () => {
  const plan = example('three-frame-lines');
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.locator('[data-id="command:open-plan"]').evaluate((element) => element.click())]);
  await chooser.setFiles(plan);
  await until_said(page, /^Opened/);
  await at_rest(page);
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator('[data-id="command:save-chart-png"]').evaluate((element) => element.click())]);
  const file = path.join(folder, download.suggestedFilename());
  await download.saveAs(file);
  assert.match(file, /-chart\.png$/);
  const other = path.join(folder, 'cli.png');
  run('chart', plan, '-o', other);
  assert.ok(fs.readFileSync(file).equals(fs.readFileSync(other)), 'byte for byte');
});
