// How the site's files are minified and compressed; one place, so that the size report compares like with like.
'use strict';
const zlib = require('node:zlib');
const terser = require('../node_modules/terser');

async function minified_script(code) {
  const result = await terser.minify(code, { ecma: 2020, compress: { passes: 2 } });
  return result.code;
}

/** The ready-made forms a server can hand out: {br, gz}. */
function compressed(data) {
  const params = {
    [zlib.constants.BROTLI_PARAM_QUALITY]: zlib.constants.BROTLI_MAX_QUALITY,
    [zlib.constants.BROTLI_PARAM_LGWIN]: 22,
    [zlib.constants.BROTLI_PARAM_SIZE_HINT]: data.length,
  };
  return { br: zlib.brotliCompressSync(data, { params }), gz: zlib.gzipSync(data, { level: 9 }) };
}

module.exports = { minified_script, compressed };
