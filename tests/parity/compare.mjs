// The same reports natively and as WebAssembly: compare.mjs NATIVE_BINARY WASM_SCRIPT COUNT SEED
import { execFileSync } from 'node:child_process';
import { closeSync, existsSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const [native, wasm, count, seed] = process.argv.slice(2);
if (!existsSync(native)) {
  console.error(`no ${native}: run tools/build native first`);
  process.exit(1);
}

// Into a file: Node may end before a pipe has taken all of a long output.
function lines(command, args) {
  const folder = mkdtempSync(join(tmpdir(), 'parity-'));
  const path = join(folder, 'reports.json');
  const file = openSync(path, 'w');
  execFileSync(command, [...args, count, seed], { stdio: ['ignore', file, 'inherit'] });
  closeSync(file);
  const text = readFileSync(path, 'utf8');
  rmSync(folder, { recursive: true });
  return text.split('\n');
}

const here = lines(native, []);
const there = lines(process.execPath, [wasm]);
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
