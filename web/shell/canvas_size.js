// How large the canvas is, in CSS pixels and in device pixels, and what of it is free of notches and bars.

/** Reads sizes from the page; the canvas itself is resized only just before it is drawn, else it would flash. */
export class Surface {
  constructor(canvas, probe, changed) {
    this.canvas = canvas;
    this.probe = probe;
    this.changed = changed;
    this.device_box = null;
    this.size = this.measured();
    this.watch();
  }

  watch() {
    const observer = new ResizeObserver((entries) => {
      const box = entries.find((entry) => entry.target === this.canvas)?.devicePixelContentBoxSize?.[0];
      if (box) this.device_box = { width: box.inlineSize, height: box.blockSize };
      this.update();
    });
    try {
      observer.observe(this.canvas, { box: 'device-pixel-content-box' });
    } catch {
      observer.observe(this.canvas);
    }
    // The probe is one rem wide: it changes with the browser's text size.
    observer.observe(this.probe);
    window.addEventListener('resize', () => this.update());
    this.watch_ratio();
  }

  watch_ratio() {
    const query = window.matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`);
    query.addEventListener('change', () => {
      this.update();
      this.watch_ratio();
    }, { once: true });
  }

  update() {
    const size = this.measured();
    if (JSON.stringify(size) === JSON.stringify(this.size)) return;
    this.size = size;
    this.changed();
  }

  measured() {
    const ratio = window.devicePixelRatio || 1;
    const { width, height } = this.canvas.getBoundingClientRect();
    const style = getComputedStyle(this.probe);
    const side = (name) => parseFloat(style[`padding${name}`]) || 0;
    return {
      width, height, ratio,
      device_width: this.device_length('width', width, ratio),
      device_height: this.device_length('height', height, ratio),
      root_font_px: parseFloat(getComputedStyle(document.documentElement).fontSize) || 16,
      safe_area: { left: side('Left'), top: side('Top'), right: side('Right'), bottom: side('Bottom') },
    };
  }

  // The observer's figure is exact where the browser snaps boxes to device pixels, but some report CSS pixels there
  // while they emulate a device; it counts only when it is plausible.
  device_length(side, css, ratio) {
    const rounded = Math.round(css * ratio);
    const box = this.device_box?.[side];
    return box && Math.abs(box - rounded) <= 2 ? box : rounded;
  }

  /** Gives the canvas its device pixels; call in the task that draws. */
  apply() {
    const { device_width, device_height } = this.size;
    if (this.canvas.width !== device_width) this.canvas.width = device_width;
    if (this.canvas.height !== device_height) this.canvas.height = device_height;
  }
}
