// Starts the program on the page and ties its parts together. The compiled script (widegate_web.js) follows this one
// and finds window.Module prepared.
import { BackWay } from './back_button.js';
import { Entry } from './text_entry.js';
import { Frames } from './frames.js';
import { watch_keys } from './keys.js';
import { show_message } from './message.js';
import { keep_offline } from './offline.js';
import { make_outside } from './platform_calls.js';
import { watch_pointers } from './pointers.js';
import { watch_preferences } from './preferences.js';
import { Program } from './program.js';
import { Storage } from './storage.js';
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
    this.back.follow(status.covered === 1);
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
    frames.pause();
    program.context_lost();
  });
  canvas.addEventListener('webglcontextrestored', () => {
    program.context_restored();
    frames.resume();
  });
}

function start_program(module, storage) {
  const program = new Program(module);
  const canvas = element('canvas');
  let frames = null;
  const wake = () => frames?.wake();
  module.host = make_outside({
    ask_frame: wake,
    push: (text) => program.push(text),
    storage,
    opened(purpose, name, text) {
      program.file(purpose, name, text);
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
      typed, rect: () => twin.rect_of(control.id), done: () => document.querySelector(`[data-id="${CSS.escape(control.id)}"]`)?.focus(),
    }),
  };
  const twin = new Twin({ root: element('questions'), live: element('live'), said: element('said'), actions });
  const back = new BackWay(acted(() => program.dismiss()));
  const follower = new Follower({ program, canvas, entry, twin, back });
  const surface = new Surface(canvas, element('probe'), () => {
    tell_size();
    wake();
  });
  const tell_size = () => {
    program.resize(surface.size);
    program.safe_area(surface.size.safe_area);
  };
  frames = new Frames(program, () => surface.apply(), () => {
    if (follower.frames === 0) performance.mark('first-frame');
    follower.after_frame();
  });
  tell_size();
  watch_preferences(program, element('probe'), wake);
  watch_pointers(canvas, program, frames, () => {
    entry.close(true);
    // A press on the drawing takes the keyboard's focus off the control it was on.
    if (document.activeElement !== document.body) document.activeElement.blur();
  });
  watch_keys(program, frames, surface);
  watch_context(canvas, program, frames);
  window.addEventListener('hashchange', () => {
    program.fragment(location.hash.slice(1));
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
    resting: () => frames.resting && !follower.timer,
    address_waits: () => window.Module.host.addressWaits(),
  };
}

window.Module = {
  canvas: element('canvas'),
  async onRuntimeInitialized() {
    start_program(window.Module, await Storage.open());
    element('loading')?.remove();
    keep_offline();
  },
  onAbort() { show_message('stopped'); },
};

if (typeof WebAssembly !== 'object') show_message('no_wasm');
