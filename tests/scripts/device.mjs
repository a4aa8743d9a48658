// A browser's window without pages: a store, and events that tests send.

export class Store {
  constructor() {
    this.kept = new Map();
    this.full = false;
  }
  getItem(key) {
    return this.kept.get(key) ?? null;
  }
  setItem(key, value) {
    if (this.full) throw Object.assign(new Error("full"), { name: "QuotaExceededError" });
    this.kept.set(key, String(value));
  }
  removeItem(key) {
    this.kept.delete(key);
  }
}

export function device() {
  const store = new Store();
  const window = new EventTarget();
  Object.assign(window, { localStorage: store });
  Object.assign(globalThis, { Storage: Store, localStorage: store, window });
  return { store, window };
}
