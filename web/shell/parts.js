// The two parts of the program: what the first picture needs, and the rest, which is fetched after that picture. Both
// are halves of one compiled program and of one version (their names carry their content); the rest shares the
// first's memory and table.

const PATIENCE_S = [2, 5, 15, 60];

/** A response that counts its bytes on the way. */
function counted(response, told) {
  if (!response.body) return response;
  const on_the_line = Number(response.headers.get('Content-Length'));
  const reader = response.body.getReader();
  let bytes = 0;
  const body = new ReadableStream({
    async pull(controller) {
      const { done, value } = await reader.read();
      if (done) {
        controller.close();
        return;
      }
      bytes += value.length;
      told(on_the_line, bytes);
      controller.enqueue(value);
    },
    cancel: (reason) => reader.cancel(reason),
  });
  return new Response(body, { headers: { 'Content-Type': response.headers.get('Content-Type') || '' } });
}

async function fetched(name) {
  const response = await fetch(name, { credentials: 'same-origin' });
  if (!response.ok) throw new Error(`${response.status} for ${name}`);
  return response;
}

/** Compiles while it arrives, where the browser can and the server names the type. */
async function compiled(response) {
  if (WebAssembly.compileStreaming && response.headers.get('Content-Type') === 'application/wasm') return WebAssembly.compileStreaming(response);
  return WebAssembly.compile(await response.arrayBuffer());
}

/** Bytes of a file of the site, without turning back to the browser; for what cannot wait. */
function fetched_at_once(name) {
  const request = new XMLHttpRequest();
  request.open('GET', name, false);
  request.overrideMimeType('text/plain; charset=x-user-defined');
  request.send();
  if (request.status !== 200) throw new Error(`${request.status} for ${name}`);
  return Uint8Array.from(request.responseText, (letter) => letter.charCodeAt(0) & 0xff);
}

export class Parts {
  /**
   * @param first    file of the first part
   * @param rest     file of the rest
   * @param loaded   called with the bytes that the first part has on the line (0: not known), and with how many are
   *                 here, unpacked
   */
  constructor({ first, rest, loaded }) {
    Object.assign(this, { first, rest, loaded });
    /** 'coming', 'missing' or 'here': RestOfProgram in web/door/platform.h. */
    this.state = 'coming';
    /** Places of the table that were called before the rest was here. */
    this.called_early = [];
    this.changed = () => {};
    this.failures = 0;
    this.fetching = null;
    this.timer = 0;
    window.addEventListener('online', () => this.fetch_rest());
  }

  /** What the compiled script calls instead of fetching the program itself. */
  async start(imports, receive) {
    const placeholders = new Proxy({}, { get: (_, place) => (...args) => this.call(Number(place), args) });
    const module = await compiled(counted(await fetched(this.first), this.loaded));
    const instance = await WebAssembly.instantiate(module, { ...imports, placeholder: placeholders });
    this.exports = instance.exports;
    this.table = Object.values(this.exports).find((each) => each instanceof WebAssembly.Table);
    receive(instance, module);
  }

  /** Stands for a function of the rest until that is here. */
  call(place, args) {
    this.called_early.push(place);
    if (this.state !== 'here') {
      new WebAssembly.Instance(new WebAssembly.Module(fetched_at_once(this.rest)), { primary: this.exports });
      this.turn('here');
    }
    return this.table.get(place)(...args);
  }

  turn(state) {
    if (state === this.state) return;
    this.state = state;
    // Never while the program runs, which may be what asked.
    queueMicrotask(() => this.changed());
  }

  /** Fetches the rest unless it is here or on its way; when that fails, again after a while. */
  fetch_rest() {
    if (this.state === 'here' || !this.exports) return Promise.resolve();
    this.fetching = this.fetching || this.try_rest();
    return this.fetching;
  }

  async try_rest() {
    clearTimeout(this.timer);
    try {
      const module = await compiled(await fetched(this.rest));
      await WebAssembly.instantiate(module, { primary: this.exports });
      this.turn('here');
    } catch {
      const wait_s = PATIENCE_S[Math.min(this.failures, PATIENCE_S.length - 1)];
      this.failures += 1;
      this.timer = setTimeout(() => this.fetch_rest(), wait_s * 1000);
      if (this.state === 'coming') this.turn('missing');
    }
    this.fetching = null;
  }
}
