// The printed sheet, page by page: made by the app, compared with the command line's, printed by the browser on both
// papers, and read back by pdftotext and by a QR reader (zbar).
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { DEVICES, open_site, policy_violations, start } from './support/harness.mjs';
import { mirror, until } from './support/gestures.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const widegate = path.join(root, 'build/native/widegate');
const examples = path.join(root, 'docs/examples');
const run = (command, ...args) => execFileSync(command, args, { encoding: 'utf8' });

let site;
let folder;
let opened;
before(async () => {
  site = await start();
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'widegate-sheet-'));
  opened = await open_site(site, { device: DEVICES.desktop });
  await opened.page.evaluate(() => {
    window.print = () => {};
    // The sheet stays until both papers are printed.
    window.keep = true;
    window.addEventListener('afterprint', (event) => { if (window.keep) event.stopImmediatePropagation(); }, true);
    const print = window.Module.host.printDocument;
    window.Module.host.printDocument = (html) => { window.printed = html; print(html); };
  });
});
after(async () => {
  await site.stop();
  fs.rmSync(folder, { recursive: true, force: true });
});

/** Opens a plan by its file, as a person does, and presses a button of the page. */
async function print_plan(file, button) {
  const { page } = opened;
  await page.evaluate(() => { window.printed = ''; });
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.locator('[data-id="command:open-plan"]').evaluate((element) => element.click())]);
  await chooser.setFiles(file);
  await until(`${file} is open`, async () => (await mirror(page)).message, (text) => text === `Opened ${path.basename(file)}.`);
  await page.locator(`[data-id="${button}"]`).evaluate((element) => element.click());
  return until('the sheet is printed', () => page.evaluate(() => window.printed));
}

async function to_pdf(format, name) {
  const file = path.join(folder, `${name}_${format}.pdf`);
  fs.writeFileSync(file, await opened.page.pdf({ format }));
  return { file, pages: Number(run('pdfinfo', file).match(/Pages:\s+(\d+)/)[1]), text: run('pdftotext', '-raw', file, '-') };
}

/** What the QR code on the first page says, from its grey pixels at the resolution of an office printer. */
function qr_of(pdf) {
  run('pdftoppm', '-gray', '-r', '200', '-f', '1', '-l', '1', '-png', '-singlefile', pdf, pdf);
  return run('zbarimg', '--quiet', '--nodbus', '--raw', `${pdf}.png`).trimEnd();
}

/** The example with everything that makes a sheet long: eight frame lines, protected, off-centre lights, large camera. */
function longest_plan() {
  const plan = JSON.parse(fs.readFileSync(path.join(examples, 'own-camera.plan.json'), 'utf8'));
  const line = plan.deliverable.frame_lines[0];
  plan.deliverable.frame_lines = Array.from({ length: 8 }, (unused, i) => ({ ...line, name: `A frame line with a long name, number ${i + 1}`, protection: 0.01 * (i + 2) }));
  plan.title = 'The longest sheet: a title of many words, for a serial that nobody will ever shoot';
  const file = path.join(folder, 'longest.plan.json');
  fs.writeFileSync(file, JSON.stringify(plan));
  return file;
}

const files = ['salt-ferry', 'anamorphic', 'file-below-the-mandate', 'own-camera', 'three-frame-lines']
  .map((name) => path.join(examples, `${name}.plan.json`));

describe('one page on either paper', () => {
  for (const file of [...files, null]) {
    test(path.basename(file ?? 'longest'), async (t) => {
      const plan = file ?? longest_plan();
      const html = await print_plan(plan, 'command:print-sheet');
      assert.doesNotMatch(html, /(src|href)=|<script|https?:\/\/(?!www\.w3\.org\/2000\/svg|127\.0\.0\.1|localhost)/, 'the sheet stands alone');
      if (fs.existsSync(widegate)) {
        assert.equal(html, run(widegate, 'sheet', plan, '--address', site.address), 'the command line makes the same');
      } else {
        t.diagnostic('not compared with the command line: it is not built');
      }
      const link = html.match(/<p class="link">([^<]+)</)[1];
      for (const format of ['A4', 'Letter']) {
        const { file: pdf, pages, text } = await to_pdf(format, path.basename(plan));
        assert.equal(pages, 1, format);
        for (const words of ['The choice', 'View and pixels', 'Lens cover', 'Data and media', 'Cautions', 'Extraction, in recorded pixels', 'Never wipe a card']) {
          assert.ok(text.replace(/\s+/g, ' ').includes(words), `${format}: ${words}`);
        }
        assert.doesNotMatch(text, /Skip to|Loading/);
        assert.ok(text.replace(/\s+/g, '').includes(link), 'the link is on paper');
        assert.equal(qr_of(pdf), link, format);
      }
    });
  }
});

test('the numbers of the sheet are the report\'s', async () => {
  await print_plan(path.join(examples, 'salt-ferry.plan.json'), 'command:print-sheet');
  const { text } = await to_pdf('A4', 'numbers');
  for (const row of [/Recorded raster\s+4992 × 3744/, /2\.39\s+2\.39.1\s+126\s+880\s+4740\s+1984/, /14 mm\s+28\.9 mm\s+covers\s+too small\s+too small/,
    /Minutes per card\s+72\.0 min/, /Circle needed\s+27\.8 mm\s+29\.2 mm\s+33\.7 mm/]) assert.match(text, row);
});

test('workings follow on further pages', async () => {
  await print_plan(path.join(examples, 'salt-ferry.plan.json'), 'command:print-workings');
  for (const format of ['A4', 'Letter']) {
    const { file, pages, text } = await to_pdf(format, 'workings');
    assert.ok(pages >= 2, `${pages} pages`);
    assert.match(text, /With the numbers/);
    const first = run('pdftotext', '-layout', '-l', '1', file, '-');
    assert.match(first, /Data and media/);
    assert.doesNotMatch(first, /With the numbers/);
  }
});

test('after printing the page is as before, and nothing went wrong', async () => {
  await opened.page.evaluate(() => { window.keep = false; });
  await to_pdf('A4', 'last');
  await until('the sheet is gone', () => opened.page.locator('#sheet').count(), (count) => count === 0);
  await until('its styles are gone', () => opened.page.evaluate(() => document.adoptedStyleSheets.length), (count) => count === 0);
  assert.deepEqual(opened.trouble, []);
  assert.deepEqual(await policy_violations(opened.page), []);
});
