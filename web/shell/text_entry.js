// A real text field laid exactly over the drawn one while a value is typed: number pad, selection, paste, input
// methods and every script come from the browser.

/** The field; opened by the program (a tap on a value) or by a key on a control's twin. */
export class Entry {
  /**
   * @param field    the page's input element
   * @param program  the compiled program
   * @param wake     asks for a frame
   */
  constructor(field, program, wake) {
    this.field = field;
    this.program = program;
    this.wake = wake;
    this.request = null;
    this.twin = null;
    this.sought = false;
    this.listen();
  }

  listen() {
    this.field.addEventListener('input', () => this.send(this.field.value));
    this.field.addEventListener('blur', () => this.close(true));
    this.field.addEventListener('keydown', (event) => {
      if (event.key === 'Enter') this.close(true);
      else if (event.key === 'Escape') this.close(false);
      else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') this.step(event);
      else return;
      event.preventDefault();
    });
  }

  get open() { return this.request !== null; }

  /** Follows the program after a frame: `typing` says whether it wants the field. */
  update(typing) {
    if (this.twin) {
      this.place(this.twin.rect());
      return;
    }
    if (!typing) {
      if (this.open) this.hide();
      return;
    }
    const request = this.program.entry();
    if (!request) return;
    if (request.id !== this.request?.id) this.show(request);
    this.keep_in_sight(request);
    this.place(request);
  }

  /** After a turn of the screen the value may have moved out of it: asks once to bring it back. */
  keep_in_sight({ id, y, height }) {
    const inside = y >= 0 && y + height <= window.innerHeight;
    if (!inside && !this.sought) this.program.focus(id);
    this.sought = !inside;
    if (!inside) this.wake();
  }

  /**
   * Opens the field from the page itself. `control` is the mirror's; `rect()` says where it is drawn, or null;
   * `typed` replaces the text, as when a digit was pressed; `done()` gets the focus back.
   */
  open_for(control, { rect, typed = null, done }) {
    const text = control.edit_text;
    this.twin = { rect, done, before: text };
    this.show({ id: control.id, label: control.label, text, numeric: control.kind === 'slider', font_px: 16 });
    this.place(rect());
    if (typed === null) return;
    this.field.value = typed;
    this.send(typed);
  }

  show(request) {
    this.request = request;
    const { field } = this;
    field.inputMode = request.numeric ? 'decimal' : 'text';
    field.setAttribute('aria-label', request.label);
    field.removeAttribute('aria-invalid');
    field.value = request.text;
    // Under 16 px some phones zoom the page to the field.
    field.style.fontSize = `${Math.max(request.font_px, 16)}px`;
    field.hidden = false;
    field.focus({ preventScroll: true });
    field.select();
  }

  place(rect) {
    const at = rect && rect.width > 0 ? rect : { x: 16, y: 16, width: 240, height: 48 };
    const { style } = this.field;
    style.left = `${at.x}px`;
    style.top = `${at.y}px`;
    style.width = `${at.width}px`;
    style.height = `${at.height}px`;
  }

  send(text) {
    const accepted = this.program.set(this.request.id, text);
    this.field.setAttribute('aria-invalid', String(!accepted));
    this.wake();
  }

  step(event) {
    if (!this.request.numeric) return;
    const direction = event.key === 'ArrowUp' ? 1 : -1;
    const { id } = this.request;
    this.program.step(id, direction * (event.shiftKey ? 10 : 1));
    this.wake();
    const control = this.program.mirror().controls.find((each) => each.id === id);
    if (!control) return;
    this.field.value = control.edit_text;
    this.field.select();
  }

  /** Ends the typing; `keep` false puts the old value back. */
  close(keep) {
    if (!this.open) return;
    const { twin, request } = this;
    this.hide();
    if (!twin) {
      this.program.end_entry(keep);
      this.program.focus('');
    }
    if (twin && !keep) this.program.set(request.id, twin.before);
    this.wake();
    twin?.done();
  }

  hide() {
    this.request = null;
    this.twin = null;
    this.sought = false;
    this.field.hidden = true;
  }
}
