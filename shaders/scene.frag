#version 300 es
// What the lens draws on the sensor mode: a test chart, or a ferry's deck at dusk. A point of the mode runs from -1 to
// 1 along each axis, y down. Metres are those of the plane in focus; far things go by the tangent of their angle.
precision highp float;

uniform vec4 u_box;      // on the canvas: left, top, width, height in device pixels; top from below
uniform vec4 u_window;   // of the mode: middle, reach to each side
uniform vec4 u_extent;   // half the mode: metres across, down; tangents across, down
uniform vec2 u_circle;   // radius of the image circle in the mode's halves; 0 for none
uniform vec4 u_grid;     // samples across the mode, down it, first one's offset; 0 across: as fine as it gets
uniform int u_scene;     // 0 the chart, 1 the deck
out vec4 colour;

// 1 where d is below 0, soft over the width of a sample.
float in_side(float d, float soft) { return clamp(0.5 - d / soft, 0.0, 1.0); }
// A line thinner than a sample grows faint, not broken.
float on_line(float d, float thick, float soft) {
  return in_side(abs(d) - max(thick, soft) * 0.5, soft) * min(1.0, thick / soft);
}
float in_box(vec2 p, vec2 middle, vec2 reach, float soft) {
  vec2 d = abs(p - middle) - reach;
  return in_side(max(d.x, d.y), soft);
}
float in_disc(vec2 p, vec2 middle, float radius, float soft) { return in_side(length(p - middle) - radius, soft); }
// Stripes that fade to grey where they are finer than a sample.
float stripes(float turns, float turns_per_sample) {
  float wave = sin(6.2831853 * turns);
  float crisp = clamp(wave / (6.2831853 * turns_per_sample + 1e-5) + 0.5, 0.0, 1.0);
  return mix(crisp, 0.5, smoothstep(0.35, 0.6, turns_per_sample));
}
float lines_every(float at, float step, float thick, float soft) {
  return on_line(at - step * round(at / step), thick, soft);
}
vec3 patch_colour(int i) {
  vec3 hue = clamp(abs(fract(float(i) / 6.0 + vec3(0.0, 0.667, 0.333)) * 6.0 - 3.0) - 1.0, 0.0, 1.0);
  return mix(vec3(0.17, 0.16, 0.18), vec3(0.74, 0.71, 0.66), hue);
}

vec3 chart(vec2 p, float soft) {
  vec3 c = vec3(0.36);
  c = mix(c, vec3(0.47), lines_every(p.x, 0.1, 0.003, soft));
  c = mix(c, vec3(0.47), lines_every(p.y, 0.1, 0.003, soft));
  c = mix(c, vec3(0.70), lines_every(p.x, 0.5, 0.006, soft));
  c = mix(c, vec3(0.70), lines_every(p.y, 0.5, 0.006, soft));
  float radius = length(p);
  for (int i = -1; i < 4; ++i) {
    if (i != 0) c = mix(c, vec3(0.92), on_line(radius - 0.5 * exp2(float(i)), 0.014, soft));
  }
  vec2 side = vec2(abs(p.x), p.y);
  if (abs(p.y) < 0.36 && side.x > 0.58 && side.x < 0.80) {
    float at = (p.y + 0.36) / 0.72;
    vec3 swatch = p.x < 0.0 ? patch_colour(int(at * 6.0)) : vec3(floor(at * 9.0) / 8.0);
    c = mix(c, swatch, in_box(side, vec2(0.69, 0.0), vec2(0.10, 0.35), soft));
  }
  if (abs(p.y) < 0.36 && side.x > 0.84 && side.x < 1.06) {
    float pairs = 12.0 * exp2(6.0 * (p.y + 0.35) / 0.7);
    float turns = p.x < 0.0 ? pairs * 0.1683 : (side.x - 0.95) * pairs;
    float wedge = stripes(turns, pairs * soft);
    c = mix(c, vec3(0.04 + 0.88 * wedge), in_box(side, vec2(0.95, 0.0), vec2(0.1, 0.35), soft));
  }
  float turns = atan(p.y, p.x) / 6.2831853 * 48.0;
  float star = stripes(turns, 48.0 * soft / (6.2831853 * max(radius, 1e-5)));
  c = mix(c, vec3(0.04 + 0.9 * star), in_disc(p, vec2(0.0), 0.21, soft));
  c = mix(c, vec3(1.0, 0.80, 0.05), on_line(radius - 0.5, 0.026, soft));
  return c;
}

vec3 sky_and_sea(vec2 t, float soft) {
  float up = -t.y + 0.01;
  vec3 sky = mix(vec3(0.93, 0.55, 0.30), vec3(0.55, 0.30, 0.42), smoothstep(0.0, 0.13, up));
  sky = mix(sky, vec3(0.09, 0.12, 0.28), smoothstep(0.08, 0.38, up));
  sky += vec3(0.35, 0.22, 0.08) * exp(-14.0 * length(t - vec2(-0.2, 0.0)));
  float down = max(-up, 1e-4);
  vec3 sea = mix(vec3(0.42, 0.28, 0.28), vec3(0.03, 0.09, 0.14), smoothstep(0.0, 0.10, down));
  float waves = stripes(1.3 / (down + 0.012) + 2.0 * sin(t.x * 21.0), 1.3 * soft / ((down + 0.012) * (down + 0.012)));
  sea += vec3(0.16, 0.10, 0.06) * waves * exp(-9.0 * down) * exp(-9.0 * abs(t.x + 0.2));
  return mix(sea, sky, in_side(-up, soft));
}

// The other ferry, a kilometre away.
vec3 far_ferry(vec3 c, vec2 t, float soft) {
  vec2 q = t - vec2(0.13, 0.012);
  float shape = in_box(q, vec2(0.0, -0.008), vec2(0.066, 0.008), soft);
  shape = max(shape, in_box(q, vec2(-0.006, -0.021), vec2(0.046, 0.006), soft));
  shape = max(shape, in_box(q, vec2(-0.026, -0.032), vec2(0.016, 0.006), soft));
  shape = max(shape, in_box(q, vec2(0.012, -0.036), vec2(0.007, 0.010), soft));
  c = mix(c, vec3(0.07, 0.07, 0.11), shape);
  vec2 window = vec2(q.x - 0.006 * round(q.x / 0.006), q.y + 0.021);
  float lit = in_box(window, vec2(0.0), vec2(0.0016, 0.002), soft) * in_box(q, vec2(-0.006, -0.021), vec2(0.042, 0.004), soft);
  return mix(c, vec3(1.0, 0.86, 0.55), lit);
}

vec3 railing_and_deck(vec3 c, vec2 p, float soft) {
  vec3 paint = vec3(0.80, 0.78, 0.74);
  float bars = on_line(p.y - 0.74, 0.016, soft) + on_line(p.y - 0.98, 0.016, soft);
  bars += lines_every(p.x, 0.5, 0.03, soft) * in_box(p, vec2(0.0, 0.90), vec2(1e4, 0.40), soft);
  c = mix(c, paint * 0.62, min(bars, 1.0));
  c = mix(c, vec3(0.46, 0.27, 0.16), on_line(p.y - 0.5, 0.055, soft));
  float planks = lines_every(p.x / (1.0 + 1.6 * max(p.y - 1.3, 0.0)), 0.14, 0.012, soft);
  vec3 deck = mix(vec3(0.30, 0.21, 0.16), vec3(0.13, 0.09, 0.07), planks);
  c = mix(c, deck, in_side(1.3 - p.y, soft));
  vec2 buoy = p - vec2(-0.74, 0.84);
  float quarter = step(0.0, sin(atan(buoy.y, buoy.x) * 4.0));
  return mix(c, mix(vec3(0.88, 0.86, 0.80), vec3(0.80, 0.16, 0.12), quarter),
             in_side(abs(length(buoy) - 0.21) - 0.06, soft));
}

vec3 lamp(vec3 c, vec2 p, vec2 at, float soft) {
  c = mix(c, vec3(0.10, 0.11, 0.13), in_box(p, vec2(at.x, at.y + 0.95), vec2(0.022, 0.95), soft));
  c += vec3(0.55, 0.36, 0.14) * exp(-7.0 * length(p - at));
  return mix(c, vec3(1.0, 0.93, 0.74), in_disc(p, at, 0.085, soft));
}

vec3 figure(vec3 c, vec2 p, float soft) {
  vec2 q = p - vec2(0.1, 0.0);
  float coat = in_side(length(vec2(q.x, max(0.0, 0.44 - q.y) + max(0.0, q.y - 1.15)) ) - 0.15 - 0.12 * q.y, soft);
  coat = max(coat, in_disc(q * vec2(1.0, 1.25), vec2(0.0, 0.47), 0.28, soft));
  float weave = stripes((q.x + abs(fract(q.y * 25.0) - 0.5) * 0.04) * 70.0, 70.0 * soft);
  c = mix(c, mix(vec3(0.10, 0.16, 0.24), vec3(0.20, 0.27, 0.36), weave), coat);
  float legs = max(in_box(q, vec2(-0.09, 1.42), vec2(0.06, 0.18), soft), in_box(q, vec2(0.09, 1.42), vec2(0.06, 0.18), soft));
  c = mix(c, vec3(0.06, 0.07, 0.09), legs);
  c = mix(c, vec3(0.86, 0.62, 0.48), in_disc(q * vec2(1.0, 0.88), vec2(0.0, 0.02), 0.105, soft));
  c = mix(c, vec3(0.72, 0.13, 0.13), in_disc(q * vec2(1.0, 2.2), vec2(0.0, 0.35), 0.125, soft));
  c = mix(c, vec3(0.12, 0.14, 0.20), in_disc(q, vec2(0.0, -0.06), 0.118, soft) * in_side(q.y + 0.04, soft));
  for (int i = -1; i < 2; i += 2) {
    c = mix(c, vec3(0.08, 0.06, 0.06), in_disc(q, vec2(0.04 * float(i), 0.01), 0.012, soft));
  }
  return c;
}

vec3 seen(vec2 m, vec2 sample_size) {
  vec2 p = m * u_extent.xy;
  vec2 t = m * u_extent.zw;
  float near_soft = dot(sample_size, u_extent.xy) * 0.5;
  if (u_scene == 0) return chart(p, near_soft);
  float far_soft = dot(sample_size, u_extent.zw) * 0.5;
  vec3 c = far_ferry(sky_and_sea(t, far_soft), t, far_soft);
  c = railing_and_deck(c, p, near_soft);
  c = lamp(c, p, vec2(-0.92, -0.30), near_soft);
  c = lamp(c, p, vec2(0.84, -0.30), near_soft);
  return figure(c, p, near_soft);
}

// One sample is the mean over its cell.
vec3 sampled(vec2 m, vec2 pixel) {
  vec2 at = (m * 0.5 + 0.5) * u_grid.xy - u_grid.zw;
  vec2 corner = floor(at);
  vec3 sum = vec3(0.0);
  for (int i = 0; i < 9; ++i) {
    vec2 part = (vec2(float(i % 3), float(i / 3)) + 0.5) / 3.0;
    sum += seen((corner + part + u_grid.zw) / u_grid.xy * 2.0 - 1.0, 2.0 / (3.0 * u_grid.xy));
  }
  vec2 from_edge = min(at - corner, 1.0 - (at - corner)) / (pixel * 0.5 * u_grid.xy);
  return sum / 9.0 * (min(from_edge.x, from_edge.y) < 0.5 ? 0.82 : 1.0);
}

void main() {
  vec2 at = (gl_FragCoord.xy - u_box.xy) / u_box.zw;
  vec2 m = u_window.xy + vec2(at.x * 2.0 - 1.0, 1.0 - at.y * 2.0) * u_window.zw;
  vec2 pixel = 2.0 * u_window.zw / u_box.zw;
  vec3 c = u_grid.x > 0.0 ? sampled(m, pixel) : seen(m, pixel);
  float dark = u_circle.x > 0.0 ? smoothstep(0.97, 1.02, length(m / u_circle)) : 0.0;
  colour = vec4(min(c, 1.0) * mix(1.0, 0.05, dark), 1.0);
}
