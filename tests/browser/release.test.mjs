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
  const scripts = plain.filter((name) => name.endsWith('.js')).map((name) => read(name).toString());
  for (const part of plain.filter((name) => name.endsWith('.wasm'))) assert.ok(scripts.some((text) => text.includes(part)), part);
});

test('the rest of the program takes all it needs from the first part, and the first part can do without it', async () => {
  const [first, rest] = await Promise.all(['widegate_web', 'widegate_rest'].map((start) => {
    const name = plain.find((each) => each.startsWith(start) && each.endsWith('.wasm'));
    return WebAssembly.compile(read(name));
  }));
  const offered = new Map(WebAssembly.Module.exports(first).map(({ name, kind }) => [name, kind]));
  const needed = WebAssembly.Module.imports(rest);
  assert.ok(needed.length > 10);
  for (const { module, name, kind } of needed) {
    assert.equal(module, 'primary');
    assert.equal(offered.get(name), kind, name);
  }
  const stand_ins = WebAssembly.Module.imports(first).filter(({ module }) => module === 'placeholder');
  assert.ok(stand_ins.length > 10 && stand_ins.every(({ name, kind }) => kind === 'function' && /^\d+$/.test(name)));
  assert.deepEqual(WebAssembly.Module.exports(rest), []);
  for (const part of [first, rest]) assert.deepEqual(WebAssembly.Module.customSections(part, 'name'), []);
});

test('the page itself asks for the first part and not for the rest', () => {
  const page = read('index.html').toString();
  assert.match(page, /widegate_web\.[0-9a-f]{10}\.wasm/);
  assert.doesNotMatch(page, /widegate_rest/);
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
