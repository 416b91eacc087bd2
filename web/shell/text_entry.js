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
    this.done = null;
    this.listen();
  }

  listen() {
    this.field.addEventListener('input', () => this.send(this.field.value));
    this.field.addEventListener('blur', () => this.close(true));
    this.field.addEventListener('keydown', (event) => {
      if (event.key === 'Enter') this.enter();
      else if (event.key === 'Escape') this.close(false);
      else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') this.step(event);
      else return;
      event.preventDefault();
    });
  }

  get open() { return this.request !== null; }

  /** Follows the program after a frame: `typing` says whether it wants the field. */
  update(typing) {
    if (!typing) {
      if (this.open) this.hide();
      return;
    }
    const request = this.program.entry();
    if (!request) return;
    if (request.id !== this.request?.id) this.show(request);
    this.place(request);
  }

  /**
   * Opens the field from the page itself for a control of the mirror; `typed` replaces the text, as when a digit was
   * pressed; `done()` gets the focus back.
   */
  open_for(control, { typed = null, done }) {
    this.program.begin_entry(control.id);
    const request = this.program.entry();
    if (!request) return;
    this.show(request);
    this.place(request);
    this.done = done;
    if (typed === null) return;
    this.field.value = typed;
    this.send(typed);
  }

  show(request) {
    this.request = request;
    const { field } = this;
    // A number pad has no ':' and no '/'.
    field.inputMode = request.numeric && !request.signs ? 'decimal' : 'text';
    field.classList.toggle('number', request.numeric);
    field.enterKeyHint = request.next ? 'next' : 'done';
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

  /** On to the next field of a form, without the keyboard going; elsewhere the end. */
  enter() {
    const { next } = this.request;
    if (!next) {
      this.close(true);
      return;
    }
    this.program.end_entry(true);
    this.program.begin_entry(next);
    this.program.focus(next);
    const request = this.program.entry();
    this.done = null;
    if (request) this.show(request);
    else this.hide();
    this.wake();
  }

  /** Ends the typing; `keep` false puts the old value back. */
  close(keep) {
    if (!this.open) return;
    const { done } = this;
    this.hide();
    this.program.end_entry(keep);
    this.program.focus('');
    this.wake();
    done?.();
  }

  hide() {
    this.request = null;
    this.done = null;
    this.field.hidden = true;
  }
}
