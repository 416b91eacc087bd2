// Two ways to see the same state: drawn on the canvas, or as a text page. Also the skip links.

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
  show(drawing ? 'drawn' : 'text');
}
