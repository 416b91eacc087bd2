// Back puts away what lies over the screen, one layer at a time, before it leaves the app: by the browser's own requests
// to close where it has them, elsewhere by an entry in the history for each layer.

/** Requests to close (a phone's Back, Escape), where the browser tells of them. */
class Watchers {
  constructor(close) {
    this.close = close;
    this.open = [];
    this.within = false;
  }

  follow(layers) {
    while (this.open.length < layers) {
      const watcher = new window.CloseWatcher();
      watcher.onclose = () => {
        this.open = this.open.filter((each) => each !== watcher);
        this.close();
      };
      this.open.push(watcher);
    }
    while (this.open.length > layers) this.open.pop().destroy();
  }
}

/** Entries in the history. Each knows how many layers are open at it, and which stack of layers it belongs to: an
 *  entry that a link made, or one from before it, is of another. */
class Entries {
  constructor(close, settle_address) {
    this.close = close;
    this.settle_address = settle_address;
    this.travelling = false;
    this.wanted = 0;
    this.stack = history.state?.stack ?? Date.now();
    /** Whether the last move in the history stayed among the layers, so that it brought no plan. */
    this.within = false;
    window.addEventListener('popstate', () => this.arrived());
  }

  get here() { return history.state?.layers ?? 0; }

  get is_own() { return history.state?.stack === this.stack; }

  mark(layers, write) { history[write]({ layers, stack: this.stack }, ''); }

  follow(layers) {
    // Dialogues of the page close by themselves only where there are requests to close.
    this.wanted = layers + document.querySelectorAll('dialog[open]').length;
    if (this.travelling) return;
    if (this.here < this.wanted && !this.is_own) this.mark(this.here, 'replaceState');
    while (this.here < this.wanted) this.mark(this.here + 1, 'pushState');
    if (this.here === this.wanted) return;
    // Put away on the page: its entry goes too.
    this.travelling = true;
    history.go(this.wanted - this.here);
  }

  arrived() {
    this.within = this.is_own;
    if (!this.within) {
      this.stack = history.state?.stack ?? Date.now();
      this.travelling = false;
      return;
    }
    // The address of an older entry is from before what was changed since.
    this.settle_address();
    if (this.travelling) {
      this.travelling = false;
      this.follow_dialogues(this.wanted);
      return;
    }
    const back = this.wanted - this.here;
    for (let i = 0; i < back; i += 1) {
      const dialogue = document.querySelector('dialog[open]');
      if (dialogue) dialogue.close();
      else this.close();
    }
  }

  follow_dialogues(all) {
    this.follow(all - document.querySelectorAll('dialog[open]').length);
  }
}

/**
 * @param close           puts away the top layer
 * @param settle_address  writes the plan's address into the entry that was come to
 */
export function make_back_way(close, settle_address) {
  return window.CloseWatcher ? new Watchers(close) : new Entries(close, settle_address);
}
