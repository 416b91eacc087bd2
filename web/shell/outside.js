// What the program asks of the page (web/platform.h), except storage: clipboard, address, share sheet, files, print.

const FRAGMENT_DELAY_MS = 400;

/** Copies without the clipboard interface, where a page may not use it. */
function copy_by_selection(text) {
  const field = document.createElement('textarea');
  field.value = text;
  field.className = 'off_screen';
  document.body.append(field);
  field.select();
  const done = document.execCommand('copy');
  field.remove();
  return done;
}

function copy_text(text) {
  if (!navigator.clipboard?.writeText) return copy_by_selection(text);
  navigator.clipboard.writeText(text).catch(() => copy_by_selection(text));
  return true;
}

function save_file(name, mime, bytes) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes], { type: mime }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

function choose_file(accept, chosen) {
  const field = document.createElement('input');
  field.type = 'file';
  field.accept = accept;
  field.addEventListener('change', async () => {
    const file = field.files[0];
    if (file) chosen(file.name, await file.text());
  });
  field.click();
}

/** A whole document into a shadow tree of this page, where its styles reach nothing else, and to the printer. Its
 *  styles go in by script, because the page's policy forbids them in markup. */
export function print_document(html) {
  const document_there = new DOMParser().parseFromString(html, 'text/html');
  const holder = document.createElement('div');
  holder.id = 'sheet';
  const root = holder.attachShadow({ mode: 'open' });
  root.adoptedStyleSheets = [...document_there.querySelectorAll('style')].map((style) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(style.textContent);
    return sheet;
  });
  for (const unwanted of document_there.querySelectorAll('script, style, link, meta')) unwanted.remove();
  const tree = document.importNode(document_there.documentElement, true);
  for (const element of tree.querySelectorAll('[style]')) element.style.cssText = element.getAttribute('style');
  root.append(tree);
  document.getElementById('sheet')?.remove();
  document.body.append(holder);
  window.addEventListener('afterprint', () => holder.remove(), { once: true });
  window.print();
}

/** The object the program calls; `ask_frame`, `push`, `storage` and `opened` are given by the shell. */
export function make_outside({ ask_frame, push, storage, opened }) {
  let wanted_fragment = null;
  let timer = 0;
  const write_fragment = () => {
    timer = 0;
    if (wanted_fragment === null) return;
    try {
      history.replaceState(null, '', wanted_fragment ? `#${wanted_fragment}` : location.pathname + location.search);
      wanted_fragment = null;
    } catch {
      // Some browsers allow only so many changes in a while: the last one waits for its turn.
      timer = setTimeout(write_fragment, 10 * FRAGMENT_DELAY_MS);
    }
  };
  return {
    wake: ask_frame,
    push,
    copyText: copy_text,
    pageAddress: () => location.href.split('#')[0],
    fragment: () => location.hash.slice(1),
    replaceFragment(text) {
      wanted_fragment = text;
      if (!timer) timer = setTimeout(write_fragment, FRAGMENT_DELAY_MS);
    },
    stored: (key) => storage.stored(key),
    store: (key, text) => storage.store(key, text),
    canShare: () => typeof navigator.share === 'function',
    share: (title, url) => navigator.share({ title, url }).catch(() => {}),
    saveFile: save_file,
    openFile: (purpose, accept) => choose_file(accept, (name, text) => opened(purpose, name, text)),
    printDocument: print_document,
  };
}
