// The service worker: keeps one complete version of the site on the device and answers from it, so that everything
// works without a network. tools/pack puts in the list of files and their version. A new version is fetched whole,
// waits until a person agrees, and then replaces the old one whole: versions never mix.

const FILES = PACK_FILES;
const NAME_START = 'widegate-';
const CACHE = NAME_START + PACK_VERSION;

const scope = new URL(self.registration.scope);

/** Names with a hash never change, so the browser's own copy will do; the others are asked for afresh. */
const request_for = (name) => new Request(name, { cache: /\.[0-9a-f]{10}\./.test(name) ? 'default' : 'reload' });

async function keep_all() {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES.map(request_for));
}

async function drop_old() {
  for (const name of await caches.keys()) {
    if (name.startsWith(NAME_START) && name !== CACHE) await caches.delete(name);
  }
  await self.clients.claim();
}

/** The name of the file an address means, or null when it is none of ours. */
function file_name(address) {
  const url = new URL(address);
  if (url.origin !== scope.origin || !url.pathname.startsWith(scope.pathname)) return null;
  const name = url.pathname.slice(scope.pathname.length) || 'index.html';
  return FILES.includes(name) ? name : null;
}

async function answer(request, name) {
  const cache = await caches.open(CACHE);
  return await cache.match(name) || fetch(request);
}

self.addEventListener('install', (event) => event.waitUntil(keep_all()));
self.addEventListener('activate', (event) => event.waitUntil(drop_old()));
self.addEventListener('message', (event) => {
  if (event.data === 'take over') self.skipWaiting();
});
self.addEventListener('fetch', (event) => {
  const name = event.request.method === 'GET' ? file_name(event.request.url) : null;
  if (name) event.respondWith(answer(event.request, name));
});
