// The finished site as files: what may be kept for ever is named by its content, the ready-made compressions are the
// same bytes, every reference is relative and leads somewhere, and the page's policy is the one that the server sends.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { CONTENT_SECURITY_POLICY } from '../../tools/lib/static_server.mjs';
import { DIST } from './support/harness.mjs';

const names = fs.readdirSync(DIST);
const plain = names.filter((name) => !/\.(br|gz)$/.test(name));
const read = (name) => fs.readFileSync(path.join(DIST, name));
const KEPT_NAMES = /^(index\.html|sw\.js|licences\.txt|[\w-]+\.(webmanifest|png))$/;

test('names carry a hash of the content, but for the few that must stay', () => {
  const hashed = plain.filter((name) => !KEPT_NAMES.test(name));
  assert.ok(hashed.some((name) => name.endsWith('.wasm')) && hashed.some((name) => name.endsWith('.js')) && hashed.some((name) => name.endsWith('.css')));
  for (const name of hashed) assert.match(name, /^[\w-]+\.[0-9a-f]{10}\.(js|css|wasm|svg)$/);
});

test('every text and the program has .br and .gz beside it, of the same bytes', () => {
  for (const name of plain.filter((each) => !each.endsWith('.png'))) {
    assert.ok(brotliDecompressSync(read(`${name}.br`)).equals(read(name)), `${name}.br`);
    assert.ok(gunzipSync(read(`${name}.gz`)).equals(read(name)), `${name}.gz`);
  }
  for (const name of names.filter((each) => /\.(br|gz)$/.test(each))) assert.ok(plain.includes(name.replace(/\.\w+$/, '')), name);
});

test('every reference is relative and leads to a file', () => {
  const page = read('index.html').toString();
  const found = [...page.matchAll(/(?:src|href)="?([^"\s>]+)/g)].map((match) => match[1]);
  assert.ok(found.length >= 6);
  const icons = JSON.parse(read('app.webmanifest')).icons.map((icon) => icon.src);
  for (const reference of [...found, ...icons]) {
    assert.doesNotMatch(reference, /^(\/|\w+:)/);
    assert.ok(plain.includes(reference), reference);
  }
  const script = plain.find((name) => /^widegate_web\..*\.js$/.test(name));
  assert.ok(read(script).toString().includes(plain.find((name) => name.endsWith('.wasm'))));
});

test('the page forbids itself inline script and styles, other hosts and eval, as the header does', () => {
  const page = read('index.html').toString();
  const policy = page.match(/Content-Security-Policy"? content="([^"]+)"/)[1];
  assert.equal(`${policy}; frame-ancestors 'none'`, CONTENT_SECURITY_POLICY);
  assert.doesNotMatch(policy, /unsafe-inline|'unsafe-eval'|https?:|\*/);
  assert.doesNotMatch(page, /<script(?![^>]*src=)|<style|\sstyle=|\son\w+=/);
});

test('the documents on hosting name the same policy', () => {
  const text = fs.readFileSync(new URL('../../docs/hosting.md', import.meta.url), 'utf8');
  assert.ok(text.includes(CONTENT_SECURITY_POLICY));
});
