// Messages of the page itself, above everything: what cannot work here, and what a person may do about it.

const WORDS = {
  no_wasm: 'This browser cannot run WebAssembly, which Widegate is made of. A current version of any browser can.',
  no_webgl: 'This browser draws no WebGL 2 picture (it may be switched off). Everything else is here as a text page.',
  no_drawing: 'The device took the drawing away for a moment. Nothing is lost, and the text page goes on.',
  lost: 'Widegate did not reach this device whole: the line may be down. Reload the page to try again.',
  broken: 'Widegate could not start: its library is damaged. Reloading the page may help.',
  stopped: 'Widegate has stopped because of an error of its own. The plan is kept on this device; reload the page.',
};

export function hide_message() { document.getElementById('message').hidden = true; }

/** Shows one of the messages; it stays until it is hidden. */
export function show_message(name) {
  const place = document.getElementById('message');
  place.textContent = WORDS[name];
  place.hidden = false;
}
