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

/** The program's own command for a key, or null. The browser's undo would change a text field that is not in sight. */
function command_of(event) {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return null;
  if (/^z$/i.test(event.key)) return event.shiftKey ? 'command:redo' : 'command:undo';
  return /^y$/i.test(event.key) ? 'command:redo' : null;
}

export function watch_keys(program, frames) {
  const send = (event, down) => {
    const name = key_name(event.key);
    if (!name || (down && is_taken(event)) || event.isComposing) return;
    program.key(name, down, modifiers(event));
    frames.wake();
  };
  window.addEventListener('keydown', (event) => {
    const command = is_taken(event) ? null : command_of(event);
    if (!command) {
      send(event, true);
      return;
    }
    event.preventDefault();
    program.activate(command);
    frames.wake();
  });
  window.addEventListener('keyup', (event) => send(event, false));
  window.addEventListener('blur', () => {
    program.blur();
    frames.wake();
  });
}
