// What the person told the system: dark or light, contrast, motion, finger or mouse, forced colours.

const QUERIES = {
  dark: '(prefers-color-scheme: dark)',
  contrast: '(prefers-contrast: more)',
  reduced_motion: '(prefers-reduced-motion: reduce)',
  coarse: '(pointer: coarse)',
  forced: '(forced-colors: active)',
};

// In the order of SystemColours (web/ui/ui.h).
const SYSTEM_COLOURS = ['Canvas', 'CanvasText', 'ButtonFace', 'ButtonText', 'Highlight', 'HighlightText', 'GrayText'];

/** A CSS system colour as 0xRRGGBB, through the computed style of a probe element. */
function system_colour(probe, name) {
  probe.style.color = name;
  const [red, green, blue] = getComputedStyle(probe).color.match(/\d+/g).map(Number);
  probe.style.color = '';
  return red * 65536 + green * 256 + blue;
}

/** Tells the program now and at each change. */
export function watch_preferences(program, probe, changed) {
  const lists = Object.fromEntries(Object.entries(QUERIES).map(([name, query]) => [name, window.matchMedia(query)]));
  const tell = () => {
    program.preferences({
      dark: lists.dark.matches,
      contrast: lists.contrast.matches,
      reduced_motion: lists.reduced_motion.matches,
      coarse: lists.coarse.matches,
    });
    const forced = lists.forced.matches;
    program.forced_colours(forced ? SYSTEM_COLOURS.map((name) => system_colour(probe, name)) : null);
    changed();
  };
  for (const list of Object.values(lists)) list.addEventListener('change', tell);
  tell();
}
