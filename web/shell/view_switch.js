// Two ways to see the same state: drawn on the canvas, or as a text page. Also the skip links, the list of keys, and
// words for a focus that lies on nothing drawn.

/** @param drawing  false when there is nothing to draw with: the text page is all there is. */
export function start_views({ drawing, changed }) {
  const root = document.documentElement;
  const toggle = document.getElementById('toggle_view');
  const show = (view) => {
    root.dataset.view = view;
    toggle.textContent = view === 'text' ? 'Show the drawn page' : 'Show as a text page';
    changed();
  };
  toggle.hidden = !drawing;
  toggle.addEventListener('click', () => {
    show(root.dataset.view === 'text' ? 'drawn' : 'text');
    toggle.focus();
  });
  for (const button of document.querySelectorAll('[data-skip_to]')) {
    button.addEventListener('click', () => {
      const target = document.querySelector(button.dataset.skip_to);
      target?.scrollIntoView({ block: 'start' });
      target?.focus();
    });
  }
  document.getElementById('show_keys').addEventListener('click', () => document.getElementById('keys').showModal());
  show_focus_words(root);
  show(drawing ? 'drawn' : 'text');
}

// Figures have no outline of their own on the canvas: while one has the focus, its words stand in a corner.
function show_focus_words(root) {
  const place = document.getElementById('focus_words');
  document.addEventListener('focusin', ({ target }) => {
    const row = root.dataset.view === 'drawn' && target.matches('.why') ? target.closest('tr') : null;
    place.hidden = !row;
    if (row) place.textContent = `${[...row.children].map((cell) => cell.textContent).join(': ')}. Enter: how it comes about.`;
  });
  document.addEventListener('focusout', () => { place.hidden = true; });
}
