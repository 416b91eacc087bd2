// Keys that are not meant for a text field or a native control go to the program.

const NAMES = {
  ArrowLeft: 'LeftArrow', ArrowRight: 'RightArrow', ArrowUp: 'UpArrow', ArrowDown: 'DownArrow',
  PageUp: 'PageUp', PageDown: 'PageDown', Home: 'Home', End: 'End', Escape: 'Escape', Enter: 'Enter',
  ' ': 'Space', Delete: 'Delete', '/': 'Slash', '?': 'Slash', '+': 'Equal', '-': 'Minus', '[': 'LeftBracket',
  ']': 'RightBracket', ',': 'Comma', '.': 'Period',
};

// Keys a focused native control needs itself.
const NATIVE = new Set(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'Home', 'End', ' ', 'Enter']);

function key_name(key) {
  if (NAMES[key]) return NAMES[key];
  if (/^[a-z]$/i.test(key)) return key.toUpperCase();
  if (/^\d$/.test(key) || /^F\d+$/.test(key)) return key;
  return null;
}

const modifiers = (event) => (event.ctrlKey ? 1 : 0) | (event.shiftKey ? 2 : 0) | (event.altKey ? 4 : 0) | (event.metaKey ? 8 : 0);

/** Text fields and lists keep all their keys, other native controls those that work them. */
function is_taken(event) {
  const { target } = event;
  if (!(target instanceof Element)) return false;
  if (target.matches('select, textarea, input[type=text], [contenteditable]')) return true;
  return target.matches('input, button, a, summary') && NATIVE.has(event.key);
}

const SCROLLS = { PageDown: 0.8, PageUp: -0.8, ' ': 0.8, ArrowDown: 0.1, ArrowUp: -0.1, Home: -1000, End: 1000 };
const LESSON = { PageDown: 'command:lesson-next', PageUp: 'command:lesson-back', ArrowRight: 'command:lesson-next', ArrowLeft: 'command:lesson-back' };

/** The program's own command for a key, or null. The browser's undo would change a text field that is not in sight. */
function command_of(event) {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return null;
  if (/^z$/i.test(event.key)) return event.shiftKey ? 'command:redo' : 'command:undo';
  return /^y$/i.test(event.key) ? 'command:redo' : null;
}

/** Keys that do something when no control has the focus. True when this one did. */
function act_alone(event, program, surface) {
  if (event.ctrlKey || event.metaKey || event.altKey || event.target !== document.body) return false;
  if (event.key in LESSON && program.mirror().lesson.title) {
    program.activate(LESSON[event.key]);
    return true;
  }
  if (!(event.key in SCROLLS)) return false;
  // A place that is in the column of questions in every layout.
  const { width, height } = surface.size;
  program.wheel({ x: width * 0.75, y: height * 0.6, dx: 0, dy: SCROLLS[event.key] * height * 0.6, zoom: false });
  return true;
}

function act(event, program, surface) {
  if (is_taken(event)) return false;
  const command = command_of(event);
  if (command) program.activate(command);
  else if (event.key === 'Escape') program.dismiss();
  else if (event.key === '?') document.getElementById('keys').showModal();
  else return act_alone(event, program, surface);
  return true;
}

export function watch_keys(program, frames, surface) {
  const send = (event, down) => {
    const name = key_name(event.key);
    if (!name || (down && is_taken(event)) || event.isComposing) return;
    program.key(name, down, modifiers(event));
    frames.wake();
  };
  window.addEventListener('keydown', (event) => {
    if (document.querySelector('dialog[open]') || document.documentElement.dataset.view === 'text' && !command_of(event)) return;
    if (!act(event, program, surface)) {
      send(event, true);
      return;
    }
    event.preventDefault();
    frames.wake();
  });
  window.addEventListener('keyup', (event) => send(event, false));
  window.addEventListener('blur', () => {
    program.blur();
    frames.wake();
  });
}
