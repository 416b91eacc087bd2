// Evaluates a line of working as it is shown to people, with its units, knowing nothing of how the core computed it:
// arithmetic, roots, angles in degrees, and the turns of phrase a line may hold. Areas are found by brute force.

const degrees = 180 / Math.PI;
// Shown numbers have 12 digits, so a whole number may arrive a trace below or above itself.
const nearly = 1e-6;

/** What is counted has no dimension of its own: three cards for two cameras are six cards. */
const COUNTED = ['days', 'day', 'units', 'unit', 'cameras', 'camera', 'copies', 'copy', 'channels', 'channel', 'cards', 'card', 'drives',
  'drive', 'tapes', 'tape', 'passes', 'pass', 'frames', 'frame', 'rows', 'row', 'pulses', 'pulse', 'bands', 'band', 'magazines',
  'magazine', 'cycles', 'samples', 'sample', '×', '∶1'];
const PLURALS = { bytes: 'byte', bits: 'bit', photosites: 'photosite' };
const NAMES = { fps: { s: -1 }, Hz: { s: -1 }, 'mm²': { mm: 2 } };
const PLAIN = ['mm', 'm', 'µm', 'px', 's', 'min', 'h', '°', '%', 'MP', 'byte', 'bit', 'Mbit', 'GiB', 'TB', 'ft', 'photosite', 'stops'];

/** The dimension of a unit as {mm: 1, s: -1}; null for a word that is none. */
export function dimension(unit) {
  const whole = {};
  for (const [i, part] of unit.split('/').entries()) {
    const name = PLURALS[part] ?? part;
    let one = NAMES[name];
    if (!one && COUNTED.includes(name)) one = {};
    if (!one && (PLAIN.includes(name) || /^[A-Z]{3}$/.test(name))) one = { [name]: 1 };
    if (!one) return null;
    for (const [base, power] of Object.entries(one)) whole[base] = (whole[base] ?? 0) + (i === 0 ? power : -power);
  }
  return tidy(whole);
}

/** So many across times so many down are so many: a raster is counted in the word of its sides. */
function tidy(powers) {
  const kept = {};
  for (const [base, power] of Object.entries(powers)) {
    const capped = base === 'px' || base === 'photosite' ? Math.min(power, 1) : power;
    if (capped !== 0) kept[base] = capped;
  }
  return kept;
}

export const same = (a, b) => a === null || b === null || JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());
export const told = (powers) => Object.entries(powers ?? {}).map(([base, power]) => `${base}^${power}`).join(' ') || 'a plain number';

const times = (a, b, sign = 1) => {
  const powers = { ...(a ?? {}) };
  for (const [base, power] of Object.entries(b ?? {})) powers[base] = (powers[base] ?? 0) + sign * power;
  return tidy(powers);
};

/** Area of [0,x] x [0,y] inside the circle of radius r about 0,0, by slices; signed. */
function quarter(x, y, r) {
  const right = Math.min(Math.abs(x), r);
  const top = Math.abs(y);
  // The integrand is smooth in the angle, so slices of equal angle converge fast.
  const slices = 20000;
  const end = Math.asin(Math.min(1, right / r));
  let area = 0;
  for (let i = 0; i < slices; ++i) {
    const from = r * Math.sin((end * i) / slices);
    const to = r * Math.sin((end * (i + 1)) / slices);
    const height = (at) => Math.min(top, Math.sqrt(Math.max(0, r * r - at * at)));
    area += ((to - from) * (height(from) + 4 * height((from + to) / 2) + height(to))) / 6;
  }
  return Math.sign(x) * Math.sign(y) * area;
}

const ROUNDED = [
  [', rounded up)', (x) => Math.ceil(x - nearly)],
  [', rounded down)', (x) => Math.floor(x + nearly)],
  [', to the nearest whole number)', (x) => Math.floor(x + 0.5)],
  [', up to the next even number)', (x) => 2 * Math.ceil(x / 2 - nearly)],
  [', down to an even number)', (x) => 2 * Math.floor(x / 2 + nearly)],
];
const EXTREMES = [['(the smaller of ', Math.min], ['(the smallest of ', Math.min], ['(the larger of ', Math.max], ['(the largest of ', Math.max]];
const FUNCTIONS = {
  '√(': ({ value, unit }) => ({ value: Math.sqrt(value), unit: Object.fromEntries(Object.entries(unit ?? {}).map(([base, power]) => [base, power / 2])) }),
  'arctan(': (x) => angle(Math.atan(x.value) * degrees, x),
  'arccos(': (x) => angle(Math.acos(Math.max(-1, Math.min(1, x.value))) * degrees, x),
  'sin(': ({ value, unit }) => {
    if (!same(unit, { '°': 1 })) throw new Error(`the sine of ${told(unit)}`);
    return { value: Math.sin(value / degrees), unit: {} };
  },
  'log₂(': (x) => {
    if (!same(x.unit, {})) throw new Error(`the logarithm of ${told(x.unit)}`);
    return { value: Math.log2(x.value), unit: { stops: 1 } };
  },
};

function angle(value, { unit }) {
  if (!same(unit, {})) throw new Error(`the angle of ${told(unit)}`);
  return { value, unit: { '°': 1 } };
}

class Line {
  constructor(text) {
    this.text = text;
    this.at = 0;
  }
  fail(what) {
    throw new Error(`${what} at "${this.text.slice(this.at, this.at + 30)}" in ${this.text}`);
  }
  take(sign) {
    if (!this.text.startsWith(sign, this.at)) return false;
    this.at += sign.length;
    return true;
  }
  need(sign) {
    if (!this.take(sign)) this.fail(`"${sign}" expected`);
  }
  whole() {
    const result = this.sum();
    if (this.at !== this.text.length) this.fail('something is left over');
    return result;
  }
  sum() {
    let left = this.product();
    for (;;) {
      const sign = this.take(' + ') ? 1 : this.take(' − ') ? -1 : 0;
      if (sign === 0) return left;
      const right = this.product();
      if (!same(left.unit, right.unit)) this.fail(`${told(left.unit)} and ${told(right.unit)} are added`);
      left = { value: left.value + sign * right.value, unit: left.unit ?? right.unit };
    }
  }
  product() {
    let left = this.factor();
    for (;;) {
      const sign = this.take(' · ') ? 1 : this.take(' / ') ? -1 : 0;
      if (sign === 0) return left;
      const right = this.factor();
      left = { value: sign > 0 ? left.value * right.value : left.value / right.value, unit: times(left.unit, right.unit, sign) };
    }
  }
  factor() {
    if (this.take('−') || this.take('-')) {
      const { value, unit } = this.factor();
      return { value: -value, unit };
    }
    let piece = this.atom();
    if (this.take('²')) piece = { value: piece.value ** 2, unit: times(piece.unit, piece.unit) };
    return piece;
  }
  list() {
    const items = [this.sum()];
    while (this.take(', ') || this.take(' and ')) items.push(this.sum());
    this.need(')');
    return items;
  }
  atom() {
    for (const [words, pick] of EXTREMES) {
      if (!this.take(words)) continue;
      const items = this.list();
      const unit = items.find((item) => item.unit !== null)?.unit ?? null;
      for (const item of items) if (!same(item.unit, unit)) this.fail(`${told(item.unit)} and ${told(unit)} are compared`);
      return { value: pick(...items.map((item) => item.value)), unit };
    }
    if (this.take('(the area shared by a circle ')) return this.shared();
    for (const [name, apply] of Object.entries(FUNCTIONS)) {
      if (!this.take(name)) continue;
      const inside = this.sum();
      this.need(')');
      return apply(inside);
    }
    if (this.take('|')) {
      const { value, unit } = this.sum();
      this.need('|');
      return { value: Math.abs(value), unit };
    }
    if (this.take('(')) {
      const inside = this.sum();
      for (const [words, round] of ROUNDED) if (this.take(words)) return { value: round(inside.value), unit: inside.unit };
      this.need(')');
      return inside;
    }
    if (this.take('π')) return { value: Math.PI, unit: {} };
    return this.number();
  }
  shared() {
    const circle = this.sum();
    this.need(' across and the rectangle from ');
    const corners = [this.sum()];
    for (const between of [', ', ' to ', ', ']) {
      this.need(between);
      corners.push(this.sum());
    }
    this.need(' around its middle)');
    for (const { unit } of [circle, ...corners]) if (!same(unit, { mm: 1 })) this.fail('an area not of millimetres');
    const [left, top, right, bottom] = corners.map(({ value }) => value);
    const r = circle.value / 2;
    return { value: quarter(right, bottom, r) - quarter(left, bottom, r) - quarter(right, top, r) + quarter(left, top, r), unit: { mm: 2 } };
  }
  number() {
    const match = this.text.slice(this.at).match(/^(\d{1,3}(?: \d{3})+(?!\d)|\d+(?:\.\d+)?(?:e[-+]?\d+)?)/);
    if (!match) this.fail('a number is expected');
    this.at += match[0].length;
    const value = Number(match[0].replaceAll(' ', ''));
    const unit = this.text.slice(this.at).match(/^(°|×|∶1|²| ?[%µA-Za-z][A-Za-zµ²]*(?:\/[A-Za-zµ]+)?)/);
    if (!unit || unit[0] === '²') return { value, unit: value === 0 ? null : {} };
    const dimensions = dimension(unit[0].trim());
    if (dimensions === null) return { value, unit: value === 0 ? null : {} };  // The next word of the sentence.
    this.at += unit[0].length;
    return { value, unit: dimensions, named: true };
  }
}

/** {value, unit} of a line; throws when it is no arithmetic, or adds what can not be added. */
export const evaluate = (line) => new Line(line).whole();
