// What the program asks of the page (web/door/platform.h), except storage: clipboard, address, share sheet, files, print.

const FRAGMENT_DELAY_MS = 400;
/** In the order of RestOfProgram (web/door/platform.h). */
const REST_STATES = ['coming', 'missing', 'here'];

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

/** As JsonLimits (core/encode/json_text.h): a longer file is not even read. */
const MOST_FILE_BYTES = 2 ** 25;

/** The field stands in the page: one that nothing holds may be gone before the choice is made. */
function choose_file(accept, chosen, refused) {
  const field = document.getElementById('file_choice');
  field.accept = accept;
  field.value = '';
  field.onchange = async () => {
    const file = field.files[0];
    if (file && file.size > MOST_FILE_BYTES) refused(file.name, `it has ${Math.ceil(file.size / 2 ** 20)} MiB, at most ${MOST_FILE_BYTES / 2 ** 20} are read`);
    else if (file) chosen(file.name, await file.text());
  };
  field.click();
}

/** Takes the style sheets out of a document's text: a page's policy forbids them in markup, not in script. */
function split_styles(html) {
  const styles = [];
  const markup = html.replace(/<style>([^]*?)<\/style>/g, (all, rules) => {
    styles.push(rules);
    return '';
  });
  return { markup, styles };
}

function constructed(rules) {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(rules);
  return sheet;
}

/** A whole document into a shadow tree of this page, where its styles reach nothing else, and to the printer. Rules
 *  for the paper itself count only in the page, so they are there as long as the document is. */
export function print_document(html) {
  const { markup, styles } = split_styles(html);
  const there = new DOMParser().parseFromString(markup, 'text/html');
  for (const unwanted of there.querySelectorAll('script, link, meta')) unwanted.remove();
  const holder = document.createElement('div');
  holder.id = 'sheet';
  const root = holder.attachShadow({ mode: 'open' });
  root.adoptedStyleSheets = styles.map(constructed);
  root.append(document.importNode(there.documentElement, true));
  const paper = constructed(styles.flatMap((rules) => rules.match(/@page[^{]*\{[^}]*\}/g) || []).join('\n'));
  const title = document.title;
  document.getElementById('sheet')?.remove();
  document.body.append(holder);
  document.adoptedStyleSheets = [paper];
  document.title = there.title;
  window.addEventListener('afterprint', () => {
    holder.remove();
    document.adoptedStyleSheets = [];
    document.title = title;
  }, { once: true });
  window.print();
}

/** The QR code as part of the page, so that it is as sharp as the screen, with its link to copy and to share; Escape,
 *  Back, the cross and a press beside it close. */
function show_picture(svg, words) {
  const dialog = document.getElementById('picture');
  const copy = dialog.querySelector('.copy');
  const share = dialog.querySelector('.share');
  const name = document.title.replace(/ – Widegate$/, '');
  dialog.querySelector('.holds').textContent = `“${name}”, the whole plan with the equipment it uses. It opens on any device, also without a network once the app is there; nothing is uploaded.`;
  copy.textContent = 'Copy the link';
  copy.onclick = () => { copy.textContent = copy_text(words) ? 'Copied' : 'The clipboard was refused'; };
  share.hidden = typeof navigator.share !== 'function';
  share.onclick = () => navigator.share({ title: name, url: words }).catch(() => {});
  dialog.querySelector('.close').onclick = () => dialog.close();
  const drawing = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  dialog.querySelector('.drawing').replaceChildren(document.importNode(drawing, true));
  dialog.querySelector('.words').textContent = words;
  dialog.onclick = (event) => { if (event.target === dialog) dialog.close(); };
  if (!dialog.open) dialog.showModal();
}

/** The object the program calls; what it needs is given by the shell. */
export function make_outside({ ask_frame, push, storage, parts, opened, refused }) {
  let wanted_fragment = null;
  let last_fragment = null;
  let timer = 0;
  const write_fragment = () => {
    clearTimeout(timer);
    timer = 0;
    if (wanted_fragment === null) return;
    try {
      history.replaceState(history.state, '', wanted_fragment ? `#${wanted_fragment}` : location.pathname + location.search);
      storage.keep_address(wanted_fragment);
      wanted_fragment = null;
    } catch {
      // Some browsers allow only so many changes in a while: the last one waits for its turn.
      timer = setTimeout(write_fragment, 10 * FRAGMENT_DELAY_MS);
    }
  };
  // A page that is left while the address still waits would come back with the plan before the last change.
  window.addEventListener('pagehide', write_fragment);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') write_fragment();
  });
  return {
    wake: ask_frame,
    push,
    rest: () => REST_STATES.indexOf(parts.state),
    wantRest: () => { queueMicrotask(() => parts.fetch_rest()); },
    copyText: copy_text,
    pageAddress: () => location.href.split('#')[0],
    fragment() {
      const text = location.hash.slice(1);
      // This tab wrote it itself, so what the tab keeps is at least as new: a killed tab's address may lag behind.
      if (storage.is_own_address(text)) return '';
      if (text) storage.forget_addresses();
      return text;
    },
    ownFragment: () => location.hash.slice(1),
    /** Whether the address is still the plan before. */
    addressWaits: () => wanted_fragment !== null,
    /** Into another entry of the history, the address of what is on the screen. */
    settleAddress() {
      if (last_fragment === null) return;
      wanted_fragment = last_fragment;
      write_fragment();
    },
    replaceFragment(text) {
      wanted_fragment = text;
      last_fragment = text;
      if (!timer) timer = setTimeout(write_fragment, FRAGMENT_DELAY_MS);
    },
    stored: (key) => storage.stored(key),
    store: (key, text) => storage.store(key, text),
    canShare: () => typeof navigator.share === 'function',
    share: (title, url) => navigator.share({ title, url }).catch(() => {}),
    saveFile: save_file,
    openFile: (purpose, accept) => choose_file(accept, (name, text) => opened(purpose, name, text), refused),
    printDocument: print_document,
    showPicture: show_picture,
  };
}
