// What stays on this device, under a versioned prefix. The plan at hand belongs to one tab each, so two tabs never
// overwrite one another: a tab keeps its own slot through reloads, a new tab starts from the newest slot. Everything
// else is shared by all tabs.

const PREFIX = 'widegate/1/';
const TAB_NAME = `${PREFIX}tab`;
const TAB_ADDRESS = `${PREFIX}address`;
const OWN_KEYS = new Set(['plan', 'kept']);
const SLOT_NAME = /^[0-9a-f]{12}$/;
const KEPT_SLOTS = 8;
const KEPT_ADDRESSES = 8;
const LATE_MS = 15000;

/** Runs an access that a browser may forbid (private mode, full, policy); `otherwise` is its answer then. */
function allowed(access, otherwise) {
  try {
    return access();
  } catch {
    return otherwise;
  }
}

function new_name() {
  return Array.from(crypto.getRandomValues(new Uint8Array(6)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** True when no other living tab has this name; it is held as long as the tab lives. */
async function claim(name) {
  if (!navigator.locks) return true;
  return new Promise((answer) => {
    navigator.locks.request(`${PREFIX}${name}`, { ifAvailable: true }, (lock) => {
      answer(lock !== null);
      return lock === null ? undefined : new Promise(() => {});
    }).catch(() => answer(true));
  });
}

/** What all tabs keep under a key, or null. */
export const kept_by_all = (key) => allowed(() => localStorage.getItem(PREFIX + key), null);

export class Storage {
  /** Finds this tab's slot. A duplicated tab brings its original's name along and gets one of its own. */
  static async open() {
    const left = allowed(() => sessionStorage.getItem(TAB_NAME), null);
    const name = SLOT_NAME.test(left) ? left : null;
    if (name && await claim(name)) return new Storage(name);
    const fresh = new_name();
    await claim(fresh);
    allowed(() => sessionStorage.setItem(TAB_NAME, fresh), null);
    const storage = new Storage(fresh);
    storage.start_from(name || newest_slot());
    return storage;
  }

  constructor(name) {
    this.name = name;
    /** What is kept here is older than what is on the screen. */
    this.behind = false;
  }

  // A copy of its own, so that a reload before the first change finds the same.
  start_from(slot) {
    for (const key of slot ? OWN_KEYS : []) {
      const text = allowed(() => localStorage.getItem(slot_key(slot, key)), null);
      if (text !== null) this.store(key, text);
    }
  }

  stored(key) {
    return allowed(() => localStorage.getItem(OWN_KEYS.has(key) ? slot_key(this.name, key) : PREFIX + key), null);
  }

  /** False when the browser keeps nothing. Empty text removes. */
  store(key, text) {
    const own = OWN_KEYS.has(key);
    const name = own ? slot_key(this.name, key) : PREFIX + key;
    const put = () => {
      if (text === '') localStorage.removeItem(name);
      else localStorage.setItem(name, text);
      if (own) localStorage.setItem(slot_key(this.name, 'time'), String(Date.now()));
      return true;
    };
    drop_old_slots(this.name);
    const kept = allowed(put, false);
    if (key === 'plan') this.behind = !kept;
    return kept;
  }

  /** Remembers a fragment that this tab gave its address, unless the plan behind it could not be kept: then the address
   *  alone has it, and is opened as a link. */
  keep_address(text) {
    if (this.behind) return;
    const kept = [...own_addresses(), { text, time: Date.now() }].slice(-KEPT_ADDRESSES);
    allowed(() => sessionStorage.setItem(TAB_ADDRESS, JSON.stringify(kept)), null);
  }

  /** Another plan comes into this tab: going back in history opens the earlier ones as links. */
  forget_addresses() { allowed(() => sessionStorage.removeItem(TAB_ADDRESS), null); }

  /** True when the plan kept here is the address's or a newer one. */
  is_own_address(text) {
    // A page that is being loaded again may have been asked for by an address that was replaced meanwhile.
    const since = Date.now() - LATE_MS;
    const own = own_addresses().some((each, i, all) => each.text === text && (i === all.length - 1 || all[i + 1].time > since));
    return own && this.stored('plan') !== null;
  }

  /** Calls back with the key when another tab changed something shared. */
  watch(changed) {
    window.addEventListener('storage', (event) => {
      const key = event.key?.startsWith(PREFIX) ? event.key.slice(PREFIX.length) : null;
      if (key && !key.startsWith('slot/')) changed(key);
    });
  }
}

/** The last addresses that this tab gave itself, as {text, time}, oldest first. */
function own_addresses() {
  const kept = allowed(() => JSON.parse(sessionStorage.getItem(TAB_ADDRESS)), null);
  return Array.isArray(kept) ? kept.filter((each) => each && typeof each.text === 'string' && Number.isFinite(each.time)) : [];
}

const slot_key = (slot, key) => `${PREFIX}slot/${slot}/${key}`;

/** Names of all slots, newest first. */
function slots() {
  return allowed(() => {
    const found = [];
    for (let i = 0; i < localStorage.length; i += 1) {
      const match = localStorage.key(i).match(/^widegate\/1\/slot\/([0-9a-f]+)\/time$/);
      if (match) found.push({ name: match[1], time: Number(localStorage.getItem(match[0])) });
    }
    return found.sort((a, b) => b.time - a.time).map((slot) => slot.name);
  }, []);
}

const newest_slot = () => slots()[0] || null;

function drop_old_slots(own) {
  for (const name of slots().slice(KEPT_SLOTS)) {
    if (name === own) continue;
    for (const key of [...OWN_KEYS, 'time']) allowed(() => localStorage.removeItem(slot_key(name, key)), null);
  }
}
