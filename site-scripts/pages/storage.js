// Where the browser denies storage (some private windows and school profiles), asking for localStorage throws, and the
// theme's scripts, the search among them, would stop at it. They then get a stand-in that is forgotten with the page,
// and the pages say so.

export function standIn() {
  for (const name of /** @type {const} */ (["localStorage", "sessionStorage"])) {
    try {
      window[name].getItem("");
    } catch {
      /** @type {Map<string, string>} */
      const kept = new Map();
      /** @type {Storage} */
      const standIn = {
        getItem: (key) => kept.get(String(key)) ?? null,
        setItem: (key, value) => { kept.set(String(key), String(value)); },
        removeItem: (key) => { kept.delete(String(key)); },
        clear: () => kept.clear(),
        key: (index) => [...kept.keys()][index] ?? null,
        get length() { return kept.size; },
      };
      try {
        Object.defineProperty(window, name, { value: standIn, configurable: true });
      } catch {
        // then each script finds out for itself
      }
    }
  }
}

// Whether what is stored goes with the page.
export function forgets() {
  try {
    return !(window.localStorage instanceof Storage);
  } catch {
    return true;
  }
}
