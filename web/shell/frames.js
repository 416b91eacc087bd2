// When frames happen: only when something asked for one. At rest nothing is scheduled at all.

const SETTLE_FRAMES = 10;

export class Frames {
  /**
   * @param program   the compiled program
   * @param prepare   called before each drawn frame (the canvas gets its size)
   * @param finished  called after each frame, drawn or not
   */
  constructor(program, prepare, finished) {
    this.program = program;
    this.prepare = prepare;
    this.finished = finished;
    this.request = 0;
    this.timer = 0;
    this.drawing = true;
  }

  /** True when no frame is coming by itself. */
  get resting() { return !this.request && !this.timer; }

  /** Asks for a frame at the next chance. */
  wake() {
    if (this.request) return;
    clearTimeout(this.timer);
    this.timer = 0;
    this.request = requestAnimationFrame(() => {
      this.request = 0;
      this.run(true);
    });
  }

  /** Runs undrawn frames until the program has taken in all that happened: inside an event, where a browser lets a
   *  script move the focus into a text field. */
  settle() {
    for (let i = 0; i < SETTLE_FRAMES; i += 1) {
      if (this.run(false) !== 0) break;
    }
    this.wake();
  }

  run(visible) {
    if (visible && this.drawing) this.prepare();
    const wait_s = this.program.frame(performance.now() / 1000, visible && this.drawing);
    this.finished(visible);
    if (!visible) return wait_s;
    if (wait_s === 0) this.wake();
    if (wait_s > 0) {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.wake(), wait_s * 1000);
    }
    return wait_s;
  }

  /** Whether frames reach the canvas. Without its drawing context all else goes on: fingers, keys, the plan. */
  draw(drawing) {
    this.drawing = drawing;
    this.wake();
  }
}
