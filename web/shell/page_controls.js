// The page's own controls and tables, carrying the same state as the picture, both ways: for screen readers, keyboard,
// search, copying, printing and tests. Over the canvas they are invisible and lie where their control is drawn; as a
// text page they are the app.

/** Makes `parent` hold one element for each item, reusing by key and moving only what is out of place. */
function keyed(parent, items, key_of, make, patch) {
  const old = new Map([...parent.children].filter((e) => e.dataset.key !== undefined).map((e) => [e.dataset.key, e]));
  let before = [...parent.children].find((e) => e.dataset.key !== undefined) || null;
  for (const item of items) {
    const key = key_of(item);
    let element = old.get(key);
    old.delete(key);
    if (!element) {
      element = make(item);
      element.dataset.key = key;
      parent.insertBefore(element, before);
    } else if (element === before) {
      before = next_keyed(before);
    } else {
      parent.insertBefore(element, before);
    }
    patch(element, item);
  }
  for (const element of old.values()) element.remove();
}

function next_keyed(element) {
  let next = element.nextElementSibling;
  while (next && next.dataset.key === undefined) next = next.nextElementSibling;
  return next;
}

function make_element(tag, properties = {}, ...children) {
  const element = document.createElement(tag);
  Object.assign(element, properties);
  element.append(...children);
  return element;
}

function set_text(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

function set_attribute(element, name, value) {
  if (value === null || value === '') element.removeAttribute(name);
  else if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

const dom_id = (id) => `control_${id.replace(/[^a-z0-9]+/gi, '_')}`;
const spoken = (row) => (row.unit ? `${row.value_text} ${row.unit}` : row.value_text);

const SEVERITY_WORDS = { ok: 'OK', caution: 'Caution', fail: 'Fails' };

export class Twin {
  /**
   * @param root     element the sections go into
   * @param live     polite live region
   * @param said     alert for the program's messages
   * @param actions  {set(id, text), step(id, n), activate(id), focus(id), type(control, typed), show_working(key)}
   */
  constructor({ root, live, said, actions }) {
    this.root = root;
    this.live = live;
    this.said = said;
    this.working = new WorkingView(root, actions);
    this.actions = actions;
    this.controls = [];
    this.boxes = [];
    this.announced = '';
    this.live_timer = 0;
  }

  update(mirror) {
    this.controls = mirror.controls;
    document.title = mirror.title ? `${mirror.title} – Widegate` : 'Widegate';
    const headline = { id: 'headline', title: 'In sight', question: '', has_verdict: false, notes: [], rows: mirror.headline };
    const sections = mirror.sections.map((section) => ({
      ...section,
      controls: mirror.controls.filter((control) => control.section === section.id),
      rows: mirror.results.filter((row) => row.section === section.id),
    }));
    keyed(this.root, [{ ...headline, controls: [] }, ...sections], (section) => section.id,
      (section) => this.make_section(section), (element, section) => this.patch_section(element, section));
    this.boxes = mirror.controls.map((control) => document.getElementById(dom_id(control.id))?.closest('.control'));
    this.working.update(mirror.working);
    this.patch_lesson(mirror.lesson);
    if (mirror.message !== this.said.textContent) this.said.textContent = mirror.message;
    this.announce(mirror.live);
  }

  patch_lesson(lesson) {
    const place = this.root.querySelector('#section_lesson .story');
    if (!place) return;
    place.hidden = !lesson.title;
    patch_lines(place, [['p', lesson.title], ['h3', lesson.step], ['p', lesson.words],
      ...lesson.figures.map(({ label, before, after }) => ['p', before && before !== after ? `${label}: ${before} → ${after}` : `${label}: ${after}`]),
      ...working_lines(lesson.working)]);
  }

  announce(text) {
    if (text === this.announced) return;
    this.announced = text;
    clearTimeout(this.live_timer);
    this.live_timer = setTimeout(() => set_text(this.live, text), 600);
  }

  /** Lays each control over its drawing; four numbers each, width 0 for what is not on the screen. */
  place(rects) {
    this.boxes.forEach((box, i) => {
      if (!box) return;
      const [x, y, width, height] = rects.subarray(4 * i, 4 * i + 4);
      box.classList.toggle('away', !(width > 0));
      if (!(width > 0)) return;
      const { style } = box;
      style.left = `${x}px`;
      style.top = `${y}px`;
      style.width = `${width}px`;
      style.height = `${height}px`;
    });
  }

  make_section(section) {
    const heading = make_element('h2', { id: `heading_${section.id}`, tabIndex: -1 });
    const element = make_element('section', { id: `section_${section.id}` }, heading,
      make_element('p', { className: 'question' }), make_element('p', { className: 'verdict' }),
      make_element('ul', { className: 'notes' }), make_element('div', { className: 'story', hidden: true }),
      make_element('div', { className: 'controls' }), make_table(this.actions));
    element.setAttribute('aria-labelledby', heading.id);
    return element;
  }

  patch_section(element, section) {
    const [heading, question, verdict, notes, , controls, table] = element.children;
    set_text(heading, section.title);
    set_text(question, section.question);
    question.hidden = !section.question;
    verdict.hidden = !section.has_verdict;
    verdict.dataset.severity = section.severity || '';
    set_text(verdict, section.has_verdict ? `${SEVERITY_WORDS[section.severity]}: ${section.verdict}` : '');
    notes.hidden = section.notes.length === 0;
    keyed(notes, section.notes.map((text, i) => ({ text, i })), (note) => String(note.i),
      () => make_element('li'), (item, note) => set_text(item, note.text));
    keyed(controls, section.controls, (control) => control.id,
      (control) => this.make_control(control), (box, control) => this.patch_control(box, control));
    table.hidden = section.rows.length === 0;
    set_text(table.caption, `${section.title}: figures`);
    keyed(table.tBodies[0], section.rows, (row) => row.key, make_row, patch_row);
    keep_one_stop(table);
  }

  make_control(control) {
    const id = dom_id(control.id);
    const box = make_element('div', { className: `control ${control.kind} away` });
    const help = make_element('span', { className: 'help', id: `${id}_help` });
    const problem = make_element('span', { className: 'problem', id: `${id}_problem` });
    const native = this.make_native(control);
    native.id = id;
    native.dataset.id = control.id;
    native.addEventListener('focus', () => this.actions.focus(control.id));
    native.addEventListener('blur', () => this.actions.focus(''));
    if (control.kind !== 'action') box.append(make_element('label', { htmlFor: id }));
    box.append(native);
    if (control.kind === 'slider') box.append(this.make_exact(control));
    box.append(help, problem);
    return box;
  }

  make_native(control) {
    switch (control.kind) {
      case 'slider': return this.make_range(control.id);
      case 'choice': return this.listening(make_element('select'), control.id, (element) => element.value);
      case 'flag': return this.listening(make_element('input', { type: 'checkbox' }), control.id, (element) => String(element.checked));
      case 'text': return this.listening(make_element('input', { type: 'text', autocomplete: 'off', inputMode: control.numeric ? 'decimal' : 'text' }), control.id, (element) => element.value);
      default: {
        const button = make_element('button', { type: 'button' });
        button.addEventListener('click', () => this.actions.activate(control.id));
        return button;
      }
    }
  }

  listening(element, id, value_of) {
    element.addEventListener('change', () => this.actions.set(id, value_of(element)));
    return element;
  }

  make_range(id) {
    const range = make_element('input', { type: 'range' });
    const steps = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 };
    range.addEventListener('keydown', (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const control = this.controls.find((each) => each.id === id);
      if (event.key in steps) this.actions.step(id, steps[event.key] * (event.shiftKey ? 10 : 1));
      else if (event.key === 'Home') this.actions.set(id, String(control.min));
      else if (event.key === 'End') this.actions.set(id, String(control.max));
      else if (event.key === 'Enter') this.actions.type(control, null);
      else if (/^[\d.,-]$/.test(event.key)) this.actions.type(control, event.key);
      else return;
      event.preventDefault();
    });
    range.addEventListener('input', () => {
      const control = this.controls.find((each) => each.id === id);
      const moved = Number(range.value) - control.value;
      // Assistive technology moves by one step of the element; it means one step of the control.
      if (Math.abs(moved) <= 1.5 * control.step) this.actions.step(id, Math.sign(moved));
      else this.actions.set(id, range.value);
    });
    return range;
  }

  // The exact value beside the range, on the text page.
  make_exact(control) {
    const field = make_element('input', { type: 'text', className: 'exact', autocomplete: 'off', inputMode: control.signs ? 'text' : 'decimal' });
    return this.listening(field, control.id, (element) => element.value);
  }

  patch_control(box, control) {
    const native = box.querySelector('[data-id]');
    const label = box.querySelector('label');
    if (label) set_text(label, control.label);
    native.disabled = !control.enabled;
    set_text(box.querySelector('.help'), control.help);
    set_text(box.querySelector('.problem'), control.problem);
    const described = [control.help && `${native.id}_help`, control.problem && `${native.id}_problem`];
    set_attribute(native, 'aria-describedby', described.filter(Boolean).join(' '));
    set_attribute(native, 'aria-invalid', control.problem ? 'true' : null);
    PATCH[control.kind](native, control, box);
  }
}

const PATCH = {
  slider(range, control, box) {
    const steps = (control.value - control.min) / control.step;
    const on_grid = Math.abs(steps - Math.round(steps)) < 1e-6;
    set_attribute(range, 'min', String(control.min));
    set_attribute(range, 'max', String(control.max));
    set_attribute(range, 'step', on_grid ? String(control.step) : 'any');
    if (Number(range.value) !== control.value) range.value = String(control.value);
    set_attribute(range, 'aria-valuetext', spoken(control));
    const exact = box.querySelector('.exact');
    set_attribute(exact, 'aria-label', `${control.label}, exact${control.unit ? `, ${control.unit}` : ''}`);
    exact.disabled = !control.enabled;
    if (document.activeElement !== exact || !control.problem) exact.value = control.edit_text;
  },
  choice(select, control) {
    const items = JSON.stringify(control.choices);
    if (select.items !== items) {
      select.items = items;
      select.replaceChildren(...control.choices.map((item) => new Option(
        item.detail ? `${item.label} – ${item.detail}` : item.label, item.value)));
    }
    if (select.value !== control.edit_text) select.value = control.edit_text;
  },
  flag(box, control) { box.checked = control.value !== 0; },
  text(field, control) {
    if (document.activeElement !== field && field.value !== control.edit_text) field.value = control.edit_text;
  },
  action(button, control) {
    set_text(button, control.label);
    if (control.pressed || button.hasAttribute('aria-pressed')) set_attribute(button, 'aria-pressed', String(control.pressed));
  },
};

// ---- Figures: a table whose rows explain themselves. It is one stop of the Tab key; arrows move inside.

function make_table(actions) {
  const table = make_element('table');
  table.createCaption();
  const head = table.createTHead().insertRow();
  for (const text of ['Figure', 'Value']) head.append(make_element('th', { scope: 'col', textContent: text }));
  const body = table.createTBody();
  body.addEventListener('click', (event) => {
    const row = event.target.closest('button') && event.target.closest('tr');
    if (row) actions.show_working(row.dataset.working);
  });
  body.addEventListener('keydown', (event) => {
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const buttons = [...body.querySelectorAll('button')];
    const next = by && buttons[buttons.indexOf(event.target) + by];
    if (!next) return;
    event.preventDefault();
    for (const button of buttons) button.tabIndex = button === next ? 0 : -1;
    next.focus({ preventScroll: document.documentElement.dataset.view === 'drawn' });
  });
  return table;
}

function keep_one_stop(table) {
  const buttons = [...table.querySelectorAll('button')];
  if (buttons.length > 0 && !buttons.some((button) => button.tabIndex === 0)) buttons[0].tabIndex = 0;
}

function make_row() {
  return make_element('tr', {}, make_element('th', { scope: 'row' }), make_element('td'));
}

function patch_row(element, row) {
  const [label, value] = element.children;
  element.dataset.report = row.key;
  element.dataset.working = row.working;
  set_text(value, spoken(row));
  if (!row.working) {
    set_text(label, row.label);
    return;
  }
  const button = label.querySelector('button')
    || label.appendChild(make_element('button', { type: 'button', className: 'why', tabIndex: -1 }));
  set_text(button, row.label);
  set_attribute(button, 'aria-description', 'Shows how it comes about');
}

// ---- Workings: how one figure came about.

/** A working as lines of [tag, text]. */
function working_lines({ title, formula, numbers, result, source }) {
  if (!title) return [];
  return [['h3', title], ['p', formula], ...numbers.map((text) => ['p', text]), ['p', result], ['p', source]];
}

function patch_lines(place, lines) {
  const shown = lines.filter(([, text]) => text);
  keyed(place, shown.map(([tag, text], i) => ({ tag, text, key: `${i} ${tag}` })), (line) => line.key,
    (line) => make_element(line.tag), (element, line) => set_text(element, line.text));
}

/** The working a person asked for: takes the focus when it opens and gives it back when it closes. */
class WorkingView {
  constructor(root, actions) {
    const close = make_element('button', { type: 'button', textContent: 'Close the working' });
    close.addEventListener('click', () => actions.show_working(''));
    this.lines = make_element('div', { className: 'story' });
    this.place = make_element('section', { id: 'working', hidden: true, tabIndex: -1 }, this.lines, close);
    this.place.setAttribute('aria-label', 'Working');
    root.after(this.place);
    this.key = '';
    this.asked_by = null;
  }

  update(working) {
    const opened = working.title && working.key !== this.key;
    const closed = !working.title && this.key;
    this.key = working.title ? working.key : '';
    patch_lines(this.lines, working_lines(working));
    this.place.hidden = !working.title;
    const from = document.activeElement;
    // Opened from the drawing nothing had the focus, and nothing shall take it.
    if (opened && from?.matches('.why')) {
      this.asked_by = from;
      this.place.focus();
    }
    if (!closed) return;
    this.asked_by?.focus();
    this.asked_by = null;
  }
}
