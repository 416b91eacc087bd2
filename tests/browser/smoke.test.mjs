// The built site opens in a real browser: at the root and under a sub-path, on a phone and on a desktop, with
// nothing in the console, nothing against the content security policy, and no request to any other host.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { DEVICES, keep_screenshot, open_site, policy_violations, start } from './support/harness.mjs';

for (const prefix of ['/', '/some/where/deep/']) describe(`served at ${prefix}`, () => {
  let site;
  before(async () => { site = await start({ prefix }); });
  after(() => site.stop());

  for (const [name, device] of Object.entries(DEVICES)) {
    test(`opens on ${name} and draws`, async () => {
      const { page, context, trouble } = await open_site(site, { device });
      await keep_screenshot(page, `smoke_${name}`);
      assert.deepEqual(trouble, []);
      assert.deepEqual(await policy_violations(page), []);
      const sharp = await page.evaluate(() => {
        const canvas = document.getElementById('canvas');
        return canvas.width / canvas.clientWidth;
      });
      assert.ok(Math.abs(sharp - device.deviceScaleFactor) < 0.01, `${sharp} device pixels per CSS pixel`);
      await context.close();
    });
  }
});
