// window.bookletRuntime: the page's only door to Python. FILES and WORKER_ID are put in by the build.
//
//   ask(operation, data, { channel, limit }?) -> Promise<{ ok: true, data } | { ok: false, errors }>
//     Answers come in the order of asking. A later question in the same channel replaces an
//     earlier one, which then resolves to { ok: false, superseded: true, errors }.
//     A calculation that takes longer than `limit` milliseconds is stopped.
//     Never rejects and never throws: whatever is wrong is one sentence in errors[0].message.
//   start()       begin loading in the background; ask() does so too
//   state         "idle" | "starting" | "ready" | "failed"
//   how           { place: "shared" | "worker" | "page", start: "snapshot" | "plain", source: "http" | "disk" },
//                 null until ready; "shared" is a worker of all pages, which outlives each of them for a while
//   message       the sentence for the reader when state is "failed", else ""
//   onchange(fn)  call fn(state) at each change; returns a function that stops it
//   kept          what the scripts of this page kept before it reloaded itself, else null
//
// When the site was updated and the files of this page are gone, the page reloads itself, once.
// Before that the document gets the event "booklet:leaving"; what listeners put into its `detail`
// is `kept` in the page that follows. It travels in history.state, which needs no storage.
(() => {
  "use strict";
  const BASE = new URL(".", document.currentScript.src).href;
  const SOURCE = location.protocol === "file:" ? "disk" : "http";
  const READABLE = "Everything written on this page can be read without it";
  const FAILED =
    `The calculator could not start in this browser, so this page cannot work out answers. ${READABLE}; ` +
    "reloading the page may help.";
  const TOO_OLD =
    "This browser lacks WebAssembly, which the calculator needs, so this page cannot work out answers. " +
    `${READABLE}; a newer browser, or one with fewer restrictions, can do both.`;
  const NO_MEMORY =
    "The calculator could not get the memory it needs, so this page cannot work out answers. " +
    `${READABLE}; close other pages and programs, then reload this one.`;
  const NOT_FETCHED =
    "A file of the calculator is missing or could not be fetched, so this page cannot work out answers. " +
    `${READABLE}; check the connection, then reload the page.`;
  const REPLACED =
    "A file of the calculator arrived damaged, or another page came in its place, so this page cannot work out " +
    `answers. ${READABLE}; if this network asks you to sign in, do that first, then reload the page.`;
  const UPDATED =
    "This booklet was updated and the page still belongs to the earlier one, so it cannot work out answers. " +
    "Reload the page.";
  const STOPPED =
    "The calculation stopped unexpectedly; what you typed is kept. Change a value or ask again.";
  const TOO_LONG =
    "This calculation took too long and was stopped; what you typed is kept. Check the sizes and prefixes, " +
    "or give fewer or less extreme values.";
  const UNSENDABLE =
    "This page asked something that cannot be handed to the calculator. Reload the page and try again.";
  const RESTARTS = 2;
  const LIMIT = 3000; // milliseconds for one calculation
  const SILENCE = 20000; // milliseconds after which a worker that never spoke is given up
  // Milliseconds after which a shared worker that does not listen is left alone; a page may ask for others.
  const PATIENCE = Number(document.currentScript.dataset.patience ?? 4000);
  const SHARED = 3; // shared workers tried one after the other; then the page has one of its own

  const listeners = new Set();
  const waiting = []; // questions not yet sent
  let current = null; // the question being answered
  let lastId = 0;
  let restarts = 0;
  let send = null; // (question) => void, once ready
  let timer = 0; // of the current question

  const before = history.state?.bookletReloaded ?? null; // set by the page that reloaded itself
  const runtime = { state: "idle", how: null, message: "", kept: before?.kept ?? null, ask, start, onchange };
  window.bookletRuntime = runtime;

  function onchange(listener) {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }

  function change(state, how = null, message = "") {
    Object.assign(runtime, { state, how, message });
    for (const listener of listeners) {
      try {
        listener(state);
      } catch (error) {
        console.error(error);
      }
    }
  }

  // --- Questions -----------------------------------------------------------------------------

  const refusal = (message, more) => ({ ok: false, errors: [{ field: null, message }], ...more });
  const superseded = () => refusal("A later question took the place of this one.", { superseded: true });

  /** The text handed to Python. Throws for what JSON cannot hold; nothing is left out silently. */
  function written(operation, data) {
    if (typeof operation !== "string") throw new TypeError("an operation is named by a text");
    return JSON.stringify({ operation, data }, (_key, value) => {
      if (typeof value === "function" || typeof value === "symbol") throw new TypeError(`a ${typeof value} is no datum`);
      return value;
    });
  }

  async function ask(operation, data, options) {
    let request, channel, limit;
    try {
      ({ channel, limit = LIMIT } = options ?? {});
      request = written(operation, data);
    } catch (error) {
      console.error(error);
      return refusal(UNSENDABLE);
    }
    start();
    return new Promise((resolve) => {
      if (channel !== undefined) {
        if (current?.channel === channel) current.stale = true;
        for (let i = waiting.length - 1; i >= 0; i--) {
          if (waiting[i].channel === channel) waiting.splice(i, 1)[0].resolve(superseded());
        }
      }
      waiting.push({ id: ++lastId, request, channel, limit, resolve, stale: false });
      next();
    });
  }

  function next() {
    if (runtime.state === "failed") {
      while (waiting.length) waiting.shift().resolve(refusal(runtime.message));
    } else if (runtime.state === "ready" && !current && waiting.length) {
      current = waiting.shift();
      send(current);
    }
  }

  /** A worker's questions are timed here; one of all pages and a page stop by their own clock, the former if it can. */
  function time(question, grace = 0) {
    const begun = Date.now();
    clearTimeout(timer);
    timer = setTimeout(() => {
      if (current !== question) return;
      // A timer that is itself late says that the whole machine, or this page, stood still.
      if (Date.now() - begun > 2 * (question.limit + grace)) time(question, grace);
      else {
        restart({ counts: false });
        settle(question.id, refusal(TOO_LONG));
      }
    }, question.limit + grace);
  }

  function replied(id, text) {
    let reply = null;
    try {
      reply = JSON.parse(text);
    } catch (error) {
      console.error(error);
    }
    settle(id, typeof reply?.ok === "boolean" ? reply : refusal(STOPPED));
  }

  function settle(id, reply) {
    if (current?.id !== id) return;
    const question = current;
    current = null;
    clearTimeout(timer);
    question.resolve(question.stale ? superseded() : reply);
    next();
  }

  function broken(id, why, usable) {
    console.error(why);
    if (!usable) restart({ counts: true });
    settle(id, refusal(STOPPED));
  }

  // --- Files: fetched over http; from disk, classic scripts that each set one string ----------

  const arriving = new Map(); // files asked for ahead of their use

  function script(file) {
    return new Promise((resolve, reject) => {
      const element = document.createElement("script");
      element.src = BASE + file;
      element.onload = () => { element.remove(); resolve(); };
      element.onerror = () => { element.remove(); reject(new Error(`${file} could not be read`)); };
      document.head.append(element);
    });
  }

  async function read(name) {
    if (SOURCE === "disk") {
      await script(FILES.disk[name]);
      const text = window.bookletDisk?.[name];
      if (typeof text !== "string") throw new Error(`${FILES.disk[name]} is damaged`);
      delete window.bookletDisk[name];
      return text;
    }
    return fetched(BASE + FILES[name]);
  }

  async function readEngine() {
    if (!window.bookletEngine) await script(FILES.engine);
    if (!window.bookletEngine) throw new Error(`${FILES.engine} is damaged`);
  }

  /** The core is compiled here while the worker is still reading the engine's code. */
  async function readCore() {
    return compiled(await read("core"), FILES.core);
  }

  function obtain(name) {
    return name === "core" ? readCore() : read(name);
  }

  function ahead(name) {
    const promise = obtain(name);
    promise.catch(() => {}); // reported where it is used
    arriving.set(name, promise);
  }

  function get(name) {
    const promise = arriving.get(name) ?? obtain(name);
    arriving.delete(name);
    return promise;
  }

  // --- Places to run: a worker of all pages, else one of this page, else the page itself --------

  // A page cannot end a shared worker, so one that does not listen is left for another, of the next number. That
  // number is kept for the pages that follow in this tab.
  const NUMBER = `bookletWorker-${WORKER_ID}`;
  let number = 1;
  try {
    number = Number(sessionStorage.getItem(NUMBER)) || 1;
  } catch {
    // Without storage each page finds out for itself.
  }

  function moveOn() {
    number++;
    try {
      sessionStorage.setItem(NUMBER, number);
    } catch {
      // As above.
    }
  }

  /** Whether this browser keeps a shared worker from one page to the next: it then reads the option. */
  function keeps() {
    if (SOURCE === "disk" || typeof SharedWorker === "undefined") return false;
    let read = false;
    try {
      new SharedWorker("http://[", { get extendedLifetime() { return (read = true); } });
    } catch {
      // No address: nothing was started.
    }
    return read;
  }

  async function startShared() {
    if (number > SHARED) throw new Error("no shared worker listens");
    const file = BASE + FILES.worker;
    const worker = new SharedWorker(file, { name: `booklet-${WORKER_ID}-${number}`, extendedLifetime: true });
    const { port } = worker;
    const mode = await new Promise((resolve, reject) => {
      const fail = (why) => reject(new Error(`the shared worker ${why}`));
      const unheard = () => { moveOn(); resolve(null); };
      let here = false;
      let silence = 0;
      // A script that takes long to arrive is no silence; without a network the worker may run all the same.
      fetch(file, { cache: "force-cache" }).catch(() => {}).then(() => { if (!here) silence = setTimeout(unheard, PATIENCE); });
      worker.onerror = (event) => fail(event.message || "was refused");
      port.onmessage = ({ data: message }) => {
        here = true;
        clearTimeout(silence);
        if ("ready" in message) {
          if (message.worker === WORKER_ID) resolve(message.ready);
          else fail("belongs to another build");
        } else if ("failed" in message) reject(new Error(message.failed));
        else if ("gone" in message && !send) fail("has lost Python");
        else heard(message, PATIENCE);
      };
      port.postMessage({ start: order() });
    }).catch((error) => {
      port.close();
      throw error;
    });
    if (mode === null) {
      port.close();
      return startShared();
    }
    send = ({ id, request, limit }) => {
      listening(id);
      port.postMessage({ id, request, limit });
    };
    stop = () => { moveOn(); port.close(); };
    return { place: "shared", start: mode, source: SOURCE };
  }

  /** A question that does not get its turn goes to another worker: somebody's calculation never ends. */
  function listening(id) {
    const begun = Date.now();
    clearTimeout(timer);
    timer = setTimeout(() => {
      if (current?.id !== id) return;
      if (Date.now() - begun > 2 * PATIENCE) listening(id);
      else again();
    }, PATIENCE);
  }

  /** The current question once more, with another worker. */
  function again() {
    clearTimeout(timer);
    if (current) waiting.unshift(current);
    current = null;
    restart({ counts: false });
  }

  /** What a worker says of a question. A shared one stops itself, so it gets some time for that (`grace`). */
  function heard(message, grace = 0) {
    if ("reply" in message) replied(message.id, message.reply);
    else if ("stopped" in message) settle(message.id, refusal(TOO_LONG));
    else if ("broken" in message) broken(message.id, message.broken, message.usable);
    else if ("gone" in message) again();
    else if (message.fetching) clearTimeout(timer);
    else if ((message.begun === current?.id || message.fetching === false) && current) time(current, grace);
  }

  function order() {
    const names = ["core", "memory", "stdlib", "lock", "wheel"];
    const files = Object.fromEntries(names.map((name) => [name, BASE + FILES[name]]));
    return { source: SOURCE, engine: BASE + FILES.engine, files };
  }

  async function newWorker() {
    if (SOURCE === "http") return new Worker(BASE + FILES.worker);
    await readEngine();
    const code = [`self.bookletEngine=(${bookletEngine});`, bookletWorkerSource];
    const address = URL.createObjectURL(new Blob(code, { type: "text/javascript" }));
    const worker = new Worker(address);
    ahead("memory");
    worker.addEventListener("message", () => URL.revokeObjectURL(address), { once: true });
    return worker;
  }

  async function startWorker() {
    const worker = await newWorker();
    const mode = await new Promise((resolve, reject) => {
      const silence = setTimeout(() => reject(new Error("the worker never spoke")), SILENCE);
      worker.onerror = (event) => {
        event.preventDefault?.();
        reject(new Error(event.message || "the worker was refused"));
        if (current) broken(current.id, event.message, false);
      };
      worker.onmessage = ({ data: message }) => {
        clearTimeout(silence);
        if ("ready" in message) {
          if (message.worker === WORKER_ID) resolve(message.ready);
          else reject(new Error("the worker belongs to another build"));
        } else if ("failed" in message) reject(new Error(message.failed));
        else if ("want" in message) {
          const file = message.want;
          get(file).then(
            (content) => worker.postMessage({ file, content }),
            (error) => worker.postMessage({ file, error: String(error) }),
          );
        } else heard(message);
      };
      worker.postMessage({ start: order() });
    }).catch((error) => {
      worker.terminate();
      throw error;
    });
    send = (question) => {
      time(question);
      worker.postMessage({ id: question.id, request: question.request });
    };
    stop = () => worker.terminate();
    return { place: "worker", start: mode, source: SOURCE };
  }

  async function startOnPage() {
    await readEngine();
    const engine = bookletEngine();
    const mode = await engine.start({ get });
    send = ({ id, request, limit }) =>
      engine.answer(request, limit).then(
        (reply) => replied(id, reply),
        (error) => {
          if (error?.type === "KeyboardInterrupt") settle(id, refusal(TOO_LONG));
          else broken(id, error, error?.name === "PythonError");
        },
      );
    stop = () => {};
    return { place: "page", start: mode, source: SOURCE };
  }

  let stop = () => {};

  async function start() {
    if (runtime.state !== "idle") return;
    change("starting");
    const errors = [];
    let found = keeps() ? await attempt(startShared, errors) : null;
    found ??= await attempt(startWorker, errors);
    const old = !found && (await updated());
    if (old && leave()) return; // the page that follows answers
    found ??= await attempt(startOnPage, errors);
    if (found) {
      if (before) keepInHistory(null);
      change("ready", found);
    } else change("failed", null, old ? UPDATED : reason(errors.join(" ")));
    next();
  }

  async function attempt(way, errors) {
    try {
      return await way();
    } catch (error) {
      console.info(`Python was not started (${error}).`);
      errors.push(String(error));
      return null;
    }
  }

  /** The sentence that fits what went wrong; the errors of a worker arrive as text. */
  function reason(errors) {
    if (typeof WebAssembly === "undefined") return TOO_OLD;
    if (/RangeError|out of memory|allocat/i.test(errors)) return NO_MEMORY;
    if (/is damaged/.test(errors)) return REPLACED;
    if (/answered \d|could not be (read|fetched)/.test(errors)) return NOT_FETCHED;
    return FAILED;
  }

  // --- An update of the site while this page was open, or kept by the browser -------------------

  /** Whether the site's loader now names other files than this one. */
  async function updated() {
    if (SOURCE === "disk") return false;
    try {
      const response = await fetch(`${BASE}loader.js`, { cache: "no-store" });
      const text = response.ok ? await response.text() : "";
      return text.includes("bookletRuntime") && !text.includes(FILES.engine);
    } catch {
      return false;
    }
  }

  /** Reload the page with what was typed; false if that was done before, or cannot be noted. */
  function leave() {
    const kept = {};
    document.dispatchEvent(new CustomEvent("booklet:leaving", { detail: kept }));
    if (before || !keepInHistory({ kept })) return false;
    location.reload();
    return true;
  }

  function keepInHistory(note) {
    try {
      history.replaceState({ ...history.state, bookletReloaded: note }, "");
      return true;
    } catch (error) {
      console.info(`The page cannot reload itself (${error}).`);
      return false;
    }
  }

  // --- Ends ------------------------------------------------------------------------------------

  function restart({ counts }) {
    stop();
    send = null;
    if (counts) restarts++;
    if (restarts <= RESTARTS) {
      change("idle");
      start();
    } else change("failed", null, STOPPED);
  }

  // --- The page before -------------------------------------------------------------------------

  /** Whether a page of this tab started Python unasked: this one then joins it before its own scripts have come. */
  function goesOn() {
    try {
      return sessionStorage.getItem("booklet-start") === "at once";
    } catch {
      return false;
    }
  }

  if (goesOn() && keeps()) start();
})();
