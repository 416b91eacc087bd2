// The same reports natively and as WebAssembly: compare.mjs NATIVE_BINARY WASM_SCRIPT COUNT SEED
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const [native, wasm, count, seed] = process.argv.slice(2);
if (!existsSync(native)) {
  console.error(`no ${native}: run tools/build native first`);
  process.exit(1);
}
const most = { encoding: 'utf8', maxBuffer: 1 << 30 };
const here = execFileSync(native, [count, seed], most).split('\n');
const there = execFileSync(process.execPath, [wasm, count, seed], most).split('\n');

let reports = 0;
for (let line = 0; line < Math.max(here.length, there.length); ++line) {
  if (here[line] === '{') ++reports;
  if (here[line] === there[line]) continue;
  console.error(`report ${reports} of seed ${seed}, line ${line + 1}`);
  console.error(`  native: ${here[line]}\n  wasm:   ${there[line]}`);
  process.exit(1);
}
if (reports !== Number(count)) {
  console.error(`${reports} reports instead of ${count}`);
  process.exit(1);
}
console.log(`${reports} reports, ${here.length} lines: the same natively and as WebAssembly`);
