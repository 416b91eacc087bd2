// Evaluates a line of working as it is shown to people, knowing nothing of how the core computed it:
// the four operations and functions of the notation, angles in degrees, with areas and rolls found by brute force.

const degrees = 180 / Math.PI;

/** Area of [0,x] x [0,y] inside the circle of radius r about 0,0, by slices; signed. */
function quarter(x, y, r) {
  const sign = Math.sign(x) * Math.sign(y);
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
  return sign * area;
}

/** Roll in degrees at which the corner (a, b) first reaches the distance x, by halving. */
function turn(a, b, x) {
  const reach = (angle) => a * Math.cos(angle / degrees) + b * Math.sin(angle / degrees);
  const furthest = Math.atan2(b, a) * degrees;
  if (reach(furthest) <= x) return 90;
  let low = 0;
  let high = furthest;
  if (reach(0) >= x) return 0;
  for (let i = 0; i < 200; ++i) {
    const middle = (low + high) / 2;
    if (reach(middle) < x) low = middle;
    else high = middle;
  }
  return low;
}

const nearly = 1e-6;
const functions = {
  sqrt: Math.sqrt,
  log2: Math.log2,
  min: Math.min,
  max: Math.max,
  abs: Math.abs,
  // Shown numbers have 12 digits, so a whole number may arrive a trace below or above itself.
  floor: (x) => Math.floor(x + nearly),
  ceil: (x) => Math.ceil(x - nearly),
  even_up: (x) => 2 * Math.ceil(x / 2 - nearly),
  even_down: (x) => 2 * Math.floor(x / 2 + nearly),
  sin: (x) => Math.sin(x / degrees),
  pi: Math.PI,
  atan: (x) => Math.atan(x) * degrees,
  if_less: (a, b, x, y) => (a < b ? x : y),
  quarter,
  turn,
};

/** The value of a substituted line; throws when it is not arithmetic. */
export function evaluate(line) {
  const code = line
    .replaceAll('·', '*')
    .replaceAll('−', '-')
    .replaceAll('²', '**2');
  const names = code.match(/[a-z_][a-z_0-9]*/gi) ?? [];
  for (const name of names) {
    if (!(name in functions) && !/^e$/i.test(name)) throw new Error(`unknown name ${name} in ${line}`);
  }
  if (!/^[\w\s.,()*/+-]+$/.test(code)) throw new Error(`not arithmetic: ${line}`);
  // A minus before a power is not JavaScript without brackets: (-a)**2 is what brackets give.
  return Function(...Object.keys(functions), `"use strict"; return (${code});`)(
    ...Object.values(functions),
  );
}
