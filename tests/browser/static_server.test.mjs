// The local server: types, ready-made compression, the security policy header, and nothing outside its folder.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import http from 'node:http';
import { after, before, test } from 'node:test';
import { serve_folder } from '../../tools/lib/static_server.mjs';
import { DIST } from './support/harness.mjs';

let site;
before(async () => { site = await serve_folder({ root: DIST, prefix: '/sub/' }); });
after(() => { site.server.closeAllConnections(); site.server.close(); });

/** One request with the path sent exactly as written (no client-side clean-up of ".."). */
function ask(path, headers = {}, method = 'GET') {
  return new Promise((resolve, reject) => {
    const request = http.request({ host: '127.0.0.1', port: site.port, path, method, headers }, (response) => {
      const parts = [];
      response.on('data', (part) => parts.push(part));
      response.on('end', () => resolve({ status: response.statusCode, headers: response.headers, body: Buffer.concat(parts) }));
    });
    request.on('error', reject);
    request.end();
  });
}

const wasm = fs.readdirSync(DIST).find((name) => name.endsWith('.wasm'));

test('gives WASM its own type and the compression that was asked for', async () => {
  const plain = await ask(`/sub/${wasm}`);
  assert.equal(plain.headers['content-type'], 'application/wasm');
  assert.equal(plain.headers['content-encoding'], undefined);
  assert.equal(plain.body.length, fs.statSync(`${DIST}/${wasm}`).size);
  for (const [accepted, encoding, ending] of [['gzip, deflate, br', 'br', '.br'], ['gzip', 'gzip', '.gz'], ['br;q=0, gzip', 'gzip', '.gz']]) {
    const answer = await ask(`/sub/${wasm}`, { 'Accept-Encoding': accepted });
    assert.equal(answer.headers['content-encoding'], encoding, accepted);
    assert.equal(answer.body.length, fs.statSync(`${DIST}/${wasm}${ending}`).size);
  }
});

test('sends the security policy, and lets only hashed names be kept', async () => {
  const page = await ask('/sub/');
  assert.match(page.headers['content-security-policy'], /default-src 'none'.*frame-ancestors 'none'/);
  assert.equal(page.headers['cache-control'], 'no-cache');
  assert.match((await ask(`/sub/${wasm}`)).headers['cache-control'], /immutable/);
});

test('answers 404 outside its folder and 405 to anything but reading', async () => {
  for (const path of ['/', '/sub/../harness.mjs', '/sub/..%2f..%2fCMakeCache.txt', '/sub/%2e%2e/dist.json', '/sub/none', '/sub/%ff', '/sub/%00']) {
    assert.equal((await ask(path)).status, 404, path);
  }
  assert.equal((await ask('/sub/', {}, 'POST')).status, 405);
});
