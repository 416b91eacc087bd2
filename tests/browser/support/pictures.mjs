// Small pictures for comparing screens: a screenshot shrunk to thumbnails of few colours, written as PNG, and how
// much two of them differ in a way that a person would notice.
import { crc32_of } from './crc32.mjs';
import { deflateSync } from 'node:zlib';
import { decode_png } from './harness.mjs';

/** Steps of each colour channel that a thumbnail keeps; makes its PNG small. */
const STEP = 12;

/** A PNG's pixels averaged over squares of `by` pixels: {width, height, pixels}, RGB. */
export function thumbnail(png, by) {
  const { width: w, height: h, channels, pixels } = decode_png(png);
  const width = Math.floor(w / by);
  const height = Math.floor(h / by);
  const out = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      for (let c = 0; c < 3; c += 1) {
        let sum = 0;
        for (let j = 0; j < by; j += 1) {
          for (let i = 0; i < by; i += 1) sum += pixels[((y * by + j) * w + x * by + i) * channels + c];
        }
        out[(y * width + x) * 3 + c] = Math.min(255, Math.round(sum / (by * by) / STEP) * STEP);
      }
    }
  }
  return { width, height, pixels: out };
}

function chunk(kind, data) {
  const body = Buffer.concat([Buffer.from(kind, 'latin1'), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc32_of(body), body.length + 4);
  return out;
}

/** {width, height, pixels} as an 8-bit RGB PNG (ISO/IEC 15948). */
export function encode_png({ width, height, pixels }) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const rows = Buffer.alloc(height * (width * 3 + 1));
  for (let y = 0; y < height; y += 1) pixels.copy(rows, y * (width * 3 + 1) + 1, y * width * 3, (y + 1) * width * 3);
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), chunk('IHDR', head), chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0))]);
}

/** Side of a compared block, pixels of the thumbnail. */
const BLOCK = 4;
/** Mean difference of a block's channels that a person would see, of 255. */
const SEEN = 22;

function block_mean({ width, pixels }, x0, y0, x1, y1, c) {
  let sum = 0;
  for (let y = y0; y < y1; y += 1) for (let x = x0; x < x1; x += 1) sum += pixels[(y * width + x) * 3 + c];
  return sum / ((x1 - x0) * (y1 - y0));
}

/** Share of blocks, 0 to 1, that look different; 1 for pictures of different sizes. */
export function difference(a, b) {
  if (a.width !== b.width || a.height !== b.height) return 1;
  let different = 0;
  let count = 0;
  for (let y = 0; y < a.height; y += BLOCK) {
    for (let x = 0; x < a.width; x += BLOCK) {
      const x1 = Math.min(a.width, x + BLOCK);
      const y1 = Math.min(a.height, y + BLOCK);
      const off = [0, 1, 2].map((c) => Math.abs(block_mean(a, x, y, x1, y1, c) - block_mean(b, x, y, x1, y1, c)));
      different += Math.max(...off) > SEEN ? 1 : 0;
      count += 1;
    }
  }
  return different / count;
}
