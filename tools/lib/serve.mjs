// usage: serve.mjs FOLDER [--port N]
// Serves a folder on this machine and prints the address; without --port, on the first free port from 8080.
import { serve_folder } from './static_server.mjs';

const FIRST_PORT = 8080;
const LAST_PORT = 8179;

function wanted_port(argv) {
  if (argv.length === 0) return null;
  const port = Number(argv[1]);
  if (argv[0] === '--port' && argv.length === 2 && Number.isInteger(port) && port > 0 && port < 65536) return port;
  console.error(`serve: cannot read "${argv.join(' ')}": use --port N, with N from 1 to 65535`);
  process.exit(2);
}

async function start(root, port) {
  for (let candidate = port ?? FIRST_PORT; ; candidate += 1) {
    try {
      return await serve_folder({ root, port: candidate });
    } catch (error) {
      if (port === null && error.code === 'EADDRINUSE' && candidate < LAST_PORT) continue;
      console.error(`serve: cannot listen on port ${candidate} (${error.code}): choose another with --port N`);
      process.exit(1);
    }
  }
}

const [root, ...rest] = process.argv.slice(2);
const { address } = await start(root, wanted_port(rest));
console.log(`Widegate is at ${address}  (Ctrl+C ends it)`);
