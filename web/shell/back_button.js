// The phone's Back puts away what lies over the screen instead of leaving the app, where the browser tells of it.
// Elsewhere Back leaves as on any page; the plan is kept.

export class BackWay {
  /** `close()` puts away what lies on top. */
  constructor(close) {
    this.close = close;
    this.watcher = null;
  }

  /** After a frame: whether something lies over the screen. */
  follow(covered) {
    if (!window.CloseWatcher || covered === (this.watcher !== null)) return;
    if (covered) {
      this.watcher = new window.CloseWatcher();
      this.watcher.onclose = () => {
        this.watcher = null;
        this.close();
      };
      return;
    }
    this.watcher.destroy();
    this.watcher = null;
  }
}
