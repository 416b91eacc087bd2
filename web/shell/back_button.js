// Back puts away what lies over the screen, one layer at a time, before it leaves the app: by the browser's own requests
// to close where it has them, elsewhere by an entry in the history for each layer.

/** Requests to close (a phone's Back, Escape), where the browser tells of them. */
class Watchers {
  constructor(close) {
    this.close = close;
    this.open = [];
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

/** Entries in the history. Each knows how many layers are open at it. */
class Entries {
  constructor(close, settle_address) {
    this.close = close;
    this.settle_address = settle_address;
    this.travelling = false;
    this.wanted = 0;
    window.addEventListener('popstate', () => this.arrived());
  }

  get here() { return history.state?.layers ?? 0; }

  follow(layers) {
    // Dialogues of the page close by themselves only where there are requests to close.
    this.wanted = layers + document.querySelectorAll('dialog[open]').length;
    if (this.travelling) return;
    while (this.here < this.wanted) history.pushState({ layers: this.here + 1 }, '');
    if (this.here === this.wanted) return;
    // Put away on the page: its entry goes too.
    this.travelling = true;
    history.go(this.wanted - this.here);
  }

  arrived() {
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
