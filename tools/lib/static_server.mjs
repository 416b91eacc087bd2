// A small static server for the built site: correct types, ready-made .br and .gz, the site's content security
// policy as a header. Listens on this machine only. Used by tools/serve and by the browser tests.
import fs from 'node:fs';
import http from 'node:http';
import path from 'node:path';

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.wasm': 'application/wasm',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.txt': 'text/plain; charset=utf-8',
};

export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'", "script-src 'self' 'wasm-unsafe-eval'", "style-src 'self'", "img-src 'self' blob: data:",
  "connect-src 'self'", "manifest-src 'self'", "worker-src 'self'", "base-uri 'none'", "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const ENCODINGS = [['br', '.br'], ['gzip', '.gz']];

/** The file a request path names, or null when it is outside the root or not there. */
function file_for(root, prefix, address) {
  let name;
  try {
    name = decodeURIComponent(new URL(address, 'http://localhost').pathname);
  } catch {
    return null;
  }
  if (!name.startsWith(prefix) || name.includes('\0')) return null;
  let file = path.resolve(root, `./${name.slice(prefix.length)}`);
  if (file !== root && !file.startsWith(root + path.sep)) return null;
  if (fs.statSync(file, { throwIfNoEntry: false })?.isDirectory()) file = path.join(file, 'index.html');
  return fs.statSync(file, { throwIfNoEntry: false })?.isFile() ? file : null;
}

/** The accepted ready-made compression of a file, as [encoding, path]. */
function best_encoding(file, accepted) {
  for (const [encoding, ending] of ENCODINGS) {
    if (new RegExp(`\\b${encoding}\\b(?!;q=0(?:\\.0*)?(?:,|$))`).test(accepted) && fs.existsSync(file + ending)) {
      return [encoding, file + ending];
    }
  }
  return [null, file];
}

function headers_for(file) {
  const hashed = /\.[0-9a-f]{10}\.\w+$/.test(file);
  return {
    'Content-Type': TYPES[path.extname(file)] ?? 'application/octet-stream',
    'Content-Security-Policy': CONTENT_SECURITY_POLICY,
    'Cache-Control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    Vary: 'Accept-Encoding',
  };
}

/**
 * Starts serving a folder. Resolves to {server, port, address}; rejects when the port is taken.
 * prefix is the path the site appears under, with a slash at both ends.
 */
export function serve_folder({ root, port = 0, prefix = '/' }) {
  const folder = path.resolve(root);
  const server = http.createServer((request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
      return;
    }
    const file = file_for(folder, prefix, request.url);
    if (!file) {
      response.writeHead(404, { 'Content-Type': 'text/plain' }).end('not found\n');
      return;
    }
    const [encoding, actual] = best_encoding(file, request.headers['accept-encoding'] ?? '');
    const body = fs.readFileSync(actual);
    const headers = { ...headers_for(file), 'Content-Length': body.length };
    if (encoding) headers['Content-Encoding'] = encoding;
    response.writeHead(200, headers).end(request.method === 'HEAD' ? undefined : body);
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      const actual = server.address().port;
      resolve({ server, port: actual, address: `http://localhost:${actual}${prefix}` });
    });
  });
}
