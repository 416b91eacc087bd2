// The compiled program as plain calls: strings in and out, numbers about the last frame. Nothing of the page here.

/** Order of the numbers behind wg_status(); StatusSlot in web/host/main.cpp. */
const STATUS = ['state_version', 'rect_version', 'background', 'is_dark', 'cursor', 'typing', 'frame_count', 'layers'];

const encoder = new TextEncoder();
const decoder = new TextDecoder();

export class Program {
  constructor(module) {
    this.module = module;
  }

  /** Hands a string to the program; taken by the next call that wants one. */
  push(text) {
    const bytes = encoder.encode(text);
    const at = this.module._wg_push(bytes.length);
    this.module.HEAPU8.set(bytes, at);
  }

  text_at(at) {
    const heap = this.module.HEAPU8;
    return decoder.decode(heap.subarray(at, heap.indexOf(0, at)));
  }

  /** 0: cannot run at all; 1: no drawing; 2: everything works. */
  start() { return this.module._wg_start(); }

  resize(size) {
    this.module._wg_resize(size.width, size.height, size.device_width, size.device_height, size.ratio, size.root_font_px);
  }

  safe_area({ left, top, right, bottom }) { this.module._wg_safe_area(left, top, right, bottom); }

  /** What a keyboard covers of the canvas, CSS pixels. */
  keyboard(height) { this.module._wg_keyboard(height); }

  preferences({ dark, contrast, reduced_motion, coarse }) {
    this.module._wg_preferences(+dark, +contrast, +reduced_motion, +coarse);
  }

  /** A list of seven colours 0xRRGGBB in the order of SystemColours (web/ui/ui.h), or null. */
  forced_colours(colours) {
    this.module._wg_forced_colours(colours ? 1 : 0, ...(colours || [0, 0, 0, 0, 0, 0, 0]));
  }

  pointer({ kind, phase, id, button, x, y, time_s }) {
    this.module._wg_pointer(kind, phase, id, button, x, y, time_s);
  }

  wheel({ x, y, dx, dy, zoom }) { this.module._wg_wheel(x, y, dx, dy, zoom ? 1 : 0); }

  key(name, down, modifiers) {
    this.push(name);
    this.module._wg_key(down ? 1 : 0, modifiers);
  }

  blur() { this.module._wg_blur(); }

  /** One frame at a time in seconds; seconds until the next wanted one: 0 at once, below 0 none. */
  frame(now_s, visible) { return this.module._wg_frame(now_s, visible ? 1 : 0); }

  status() {
    const at = this.module._wg_status() / 8;
    return Object.fromEntries(STATUS.map((name, i) => [name, this.module.HEAPF64[at + i]]));
  }

  /** "1.2.3" */
  version() { return this.text_at(this.module._wg_version()); }

  mirror() { return JSON.parse(this.text_at(this.module._wg_mirror())); }

  /** x, y, width, height of `count` controls, in the mirror's order. */
  rects(count) {
    const at = this.module._wg_rects() / 4;
    return this.module.HEAPF32.slice(at, at + 4 * count);
  }

  entry() { return JSON.parse(this.text_at(this.module._wg_entry())); }

  begin_entry(id) { this.push(id); this.module._wg_begin_entry(); }

  end_entry(keep) { this.module._wg_end_entry(keep ? 1 : 0); }

  /** True when the text was accepted. */
  set(id, text) {
    this.push(id);
    this.push(text);
    return this.module._wg_set() === 1;
  }

  activate(id) { this.push(id); this.module._wg_activate(); }

  step(id, steps) { this.push(id); this.module._wg_step(steps); }

  reset(id) { this.push(id); this.module._wg_reset(); }

  /** Shows how a figure came about; '' puts it away. */
  show_working(key) { this.push(key); this.module._wg_show_working(); }

  /** Closes what lies on top. */
  dismiss() { this.module._wg_dismiss(); }

  focus(id) { this.push(id); this.module._wg_focus(); }

  fragment(text) { this.push(text); this.module._wg_fragment(); }

  stored_changed(key) { this.push(key); this.module._wg_stored_changed(); }

  file(purpose, name, text) {
    this.push(purpose);
    this.push(name);
    this.push(text);
    this.module._wg_file();
  }

  /** A file was not even read. */
  file_refused(name, why) {
    this.push(name);
    this.push(why);
    this.module._wg_file_refused();
  }

  /** The rest of the program came, or did not: parts.js. */
  rest_changed() { this.module._wg_rest_changed(); }

  context_lost() { this.module._wg_context_lost(); }

  context_restored() { this.module._wg_context_restored(); }
}
