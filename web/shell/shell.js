// Starts the program on the page and ties its parts together. The compiled script (widegate_web.js) follows this one
// and finds window.Module prepared.
import { make_back_way } from './back_button.js';
import { Entry } from './text_entry.js';
import { Frames } from './frames.js';
import { watch_keys } from './keys.js';
import { hide_message, show_message } from './message.js';
import { keep_offline } from './offline.js';
import { Parts } from './parts.js';
import { make_outside } from './platform_calls.js';
import { watch_pointers } from './pointers.js';
import { watch_preferences } from './preferences.js';
import { Program } from './program.js';
import { Storage, kept_by_all } from './storage.js';
import { Surface } from './canvas_size.js';
import { Twin } from './page_controls.js';
import { start_views } from './view_switch.js';

const MIRROR_PAUSE_MS = 120;
const CURSORS = ['default', 'text', 'move', 'ns-resize', 'ew-resize', 'nesw-resize', 'nwse-resize', 'pointer', 'wait', 'progress', 'not-allowed'];

const element = (id) => document.getElementById(id);
const hex = (colour) => `#${colour.toString(16).padStart(6, '0')}`;

/** Follows the program's state after frames: colours, cursor, text field, twin. */
class Follower {
  constructor({ program, canvas, entry, twin, back }) {
    Object.assign(this, { program, canvas, entry, twin, back });
    this.shown = {};
    this.mirrored_at = 0;
    this.timer = 0;
    this.frames = 0;
  }

  after_frame() {
    const status = this.program.status();
    this.frames = status.frame_count;
    if (status.cursor !== this.shown.cursor) this.canvas.style.cursor = CURSORS[status.cursor] || 'default';
    if (status.background !== this.shown.background || status.is_dark !== this.shown.is_dark) this.colour(status);
    this.stale = status.state_version !== this.shown.state_version || status.rect_version !== this.shown.rect_version;
    this.shown.cursor = status.cursor;
    this.entry.update(status.typing === 1);
    this.back.follow(status.layers);
    if (this.stale) this.mirror_soon();
  }

  colour({ background, is_dark }) {
    Object.assign(this.shown, { background, is_dark });
    const root = document.documentElement;
    root.style.setProperty('--page', hex(background));
    root.dataset.theme = is_dark ? 'dark' : 'light';
    document.querySelector('meta[name=theme-color]').content = hex(background);
  }

  // During a drag a few times a second is enough for the page; the last state always arrives.
  mirror_soon() {
    if (this.timer) return;
    const due = this.mirrored_at + MIRROR_PAUSE_MS - performance.now();
    if (due <= 0) this.mirror();
    else this.timer = setTimeout(() => this.mirror(), due);
  }

  mirror() {
    this.timer = 0;
    this.mirrored_at = performance.now();
    const { state_version, rect_version } = this.program.status();
    if (state_version !== this.shown.state_version) this.twin.update(this.program.mirror());
    this.twin.place(this.program.rects(this.twin.controls.length));
    Object.assign(this.shown, { state_version, rect_version });
  }
}

function watch_context(canvas, program, frames) {
  canvas.addEventListener('webglcontextlost', (event) => {
    event.preventDefault();
    program.context_lost();
    frames.draw(false);
    show_message('no_drawing');
  });
  canvas.addEventListener('webglcontextrestored', () => {
    program.context_restored();
    frames.draw(true);
    hide_message();
  });
}

/** The rest of the program, then the whole site for working without a network: nothing waits for them. */
function after_first_frame(parts) {
  performance.mark('first-frame');
  setTimeout(async () => {
    await parts.fetch_rest();
    keep_offline();
  });
}

/** Whoever waits for the first part sees how much of it is here. */
function show_progress(response_bytes, bytes) {
  const share = Math.min(bytes / PACK_FIRST_BYTES, 1);
  element('loaded').value = share;
  const whole = response_bytes ? ` of ${Math.round(response_bytes / 1000)} KB` : '';
  element('loaded_words').textContent = `${Math.round(share * 100)} %${whole}`;
}

function start_program(module, storage, parts) {
  const program = new Program(module);
  const canvas = element('canvas');
  let frames = null;
  const wake = () => frames?.wake();
  module.host = make_outside({
    ask_frame: wake,
    push: (text) => program.push(text),
    storage,
    parts,
    opened(purpose, name, text) {
      program.file(purpose, name, text);
      wake();
    },
    refused(name, why) {
      program.file_refused(name, why);
      wake();
    },
  });
  const ability = program.start();
  if (ability === 0) {
    show_message('broken');
    return;
  }
  const acted = (act) => (...args) => {
    const answer = act(...args);
    wake();
    return answer;
  };
  const entry = new Entry(element('entry'), program, wake);
  const actions = {
    set: acted((id, text) => program.set(id, text)),
    step: acted((id, steps) => program.step(id, steps)),
    activate: acted((id) => program.activate(id)),
    focus: acted((id) => program.focus(id)),
    show_working: acted((key) => program.show_working(key)),
    type: (control, typed) => entry.open_for(control, {
      typed, done: () => document.querySelector(`[data-id="${CSS.escape(control.id)}"]`)?.focus(),
    }),
  };
  const twin = new Twin({ root: element('questions'), live: element('live'), said: element('said'), actions });
  const back = make_back_way(acted(() => program.dismiss()), () => module.host.settleAddress());
  document.addEventListener('close', wake, true);
  const follower = new Follower({ program, canvas, entry, twin, back });
  const surface = new Surface(canvas, element('probe'), () => {
    tell_size();
    wake();
  });
  const tell_size = () => {
    program.resize(surface.size);
    program.safe_area(surface.size.safe_area);
    program.keyboard(surface.size.keyboard);
  };
  frames = new Frames(program, () => surface.apply(), () => {
    const first = follower.frames === 0;
    follower.after_frame();
    if (first) after_first_frame(parts);
  });
  parts.changed = () => {
    program.rest_changed();
    wake();
  };
  tell_size();
  watch_preferences(program, element('probe'), wake);
  watch_pointers(canvas, program, frames, (event) => {
    // A finger may be about to scroll; where it taps, the program ends the typing itself and nothing has moved yet.
    if (event.pointerType === 'mouse') entry.close(true);
    if (entry.open) return;
    // A press on the drawing takes the keyboard's focus off the control it was on.
    if (document.activeElement !== document.body) document.activeElement.blur();
  });
  watch_keys(program, frames, surface);
  watch_context(canvas, program, frames);
  window.addEventListener('hashchange', (event) => {
    // An older entry under the same plan shows the address from before the last change: no link was opened.
    if (back.within) return;
    // The address may be the plan's own again by the time this is told.
    program.fragment(new URL(event.newURL).hash.slice(1));
    wake();
  });
  storage.watch((key) => {
    program.stored_changed(key);
    wake();
  });
  start_views({ drawing: ability === 2, changed: wake });
  if (ability === 1) show_message('no_webgl');
  element('version').textContent = `Widegate ${program.version()}`;
  wake();
  // For the tests and the curious: reads only.
  window.widegate = {
    mirror: () => program.mirror(),
    frame_count: () => follower.frames,
    resting: () => frames.resting && !follower.timer && parts.state !== 'coming',
    rest: () => ({ state: parts.state, called_early: parts.called_early }),
    address_waits: () => window.Module.host.addressWaits(),
  };
}

/** The colours that somebody chose here; without a choice the style sheet goes by the device. */
function colour_at_once() {
  const theme = kept_by_all('theme');
  if (theme && theme !== 'system') document.documentElement.dataset.theme = theme === 'dark' ? 'dark' : 'light';
}

colour_at_once();
const parts = new Parts({ first: 'widegate_web.wasm', rest: 'widegate_rest.wasm', loaded: show_progress });

window.Module = {
  canvas: element('canvas'),
  instantiateWasm(imports, receive) {
    parts.start(imports, receive).catch(() => show_message('lost'));
    return {};
  },
  async onRuntimeInitialized() {
    start_program(window.Module, await Storage.open(), parts);
    element('loading')?.remove();
  },
  onAbort() { show_message('stopped'); },
};

if (typeof WebAssembly !== 'object') show_message('no_wasm');
