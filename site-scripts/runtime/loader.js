// window.bookletRuntime: the page's only door to Python. FILES is put in by the build.
//
//   ask(operation, data, { channel }?) -> Promise<{ ok: true, data } | { ok: false, errors }>
//     Answers come in the order of asking. A later question in the same channel replaces an
//     earlier one, which then resolves to { ok: false, superseded: true, errors }.
//     Never rejects: a runtime that cannot start answers with one sentence in errors[0].message.
//   start()       begin loading in the background; ask() does so too
//   state         "idle" | "starting" | "ready" | "failed"
//   how           { place: "worker" | "page", start: "snapshot" | "plain", source: "http" | "disk" },
//                 null until ready
//   message       the sentence for the reader when state is "failed", else ""
//   onchange(fn)  call fn(state) at each change; returns a function that stops it
(() => {
  "use strict";
  const BASE = new URL(".", document.currentScript.src).href;
  const SOURCE = location.protocol === "file:" ? "disk" : "http";
  const FAILED =
    "The calculator could not start in this browser, so this page cannot work out answers; " +
    "everything written on it can be read without, and reloading the page may help.";
  const STOPPED =
    "The calculation stopped unexpectedly; what you typed is kept. Change a value or ask again.";
  const RESTARTS = 2;

  const listeners = new Set();
  const waiting = []; // questions not yet sent
  let current = null; // the question being answered
  let lastId = 0;
  let restarts = 0;
  let send = null; // (question) => void, once ready

  const runtime = { state: "idle", how: null, message: "", ask, start, onchange };
  window.bookletRuntime = runtime;

  function onchange(listener) {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }

  function change(state, how = null, message = "") {
    Object.assign(runtime, { state, how, message });
    for (const listener of listeners) listener(state);
  }

  // --- Questions -----------------------------------------------------------------------------

  const refusal = (message, more) => ({ ok: false, errors: [{ field: null, message }], ...more });
  const superseded = () => refusal("A later question took the place of this one.", { superseded: true });

  function ask(operation, data, { channel } = {}) {
    start();
    return new Promise((resolve) => {
      if (channel !== undefined) {
        if (current?.channel === channel) current.stale = true;
        for (let i = waiting.length - 1; i >= 0; i--) {
          if (waiting[i].channel === channel) waiting.splice(i, 1)[0].resolve(superseded());
        }
      }
      waiting.push({ id: ++lastId, operation, data, channel, resolve, stale: false });
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

  function settle(id, reply) {
    if (current?.id !== id) return;
    const question = current;
    current = null;
    question.resolve(question.stale ? superseded() : reply);
    next();
  }

  function broken(id, why, usable) {
    console.error(why);
    if (!usable) restart();
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
      const text = window.bookletDisk[name];
      delete window.bookletDisk[name];
      return text;
    }
    const response = await fetch(BASE + FILES[name]);
    if (!response.ok) throw new Error(`${FILES[name]} answered ${response.status}`);
    return response;
  }

  /** The core is compiled here while the worker is still reading the engine's code. */
  async function readCore() {
    return WebAssembly.compileStreaming(await unpacked(await read("core")));
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

  // --- Places to run: a worker, else the page itself ------------------------------------------

  async function newWorker() {
    if (SOURCE === "http") return new Worker(BASE + FILES.worker);
    if (!window.bookletEngine) await script(FILES.engine);
    const code = [`self.bookletEngine=(${bookletEngine});`, bookletWorkerSource];
    const address = URL.createObjectURL(new Blob(code, { type: "text/javascript" }));
    const worker = new Worker(address);
    ahead("memory");
    worker.addEventListener("message", () => URL.revokeObjectURL(address), { once: true });
    return worker;
  }

  async function startWorker() {
    const worker = await newWorker();
    const files = Object.fromEntries(
      ["core", "memory", "stdlib", "lock", "wheel"].map((name) => [name, BASE + FILES[name]]),
    );
    const mode = await new Promise((resolve, reject) => {
      worker.onerror = (event) => {
        event.preventDefault?.();
        reject(new Error(event.message || "the worker was refused"));
        if (current) broken(current.id, event.message, false);
      };
      worker.onmessage = ({ data: message }) => {
        if ("ready" in message) resolve(message.ready);
        else if ("failed" in message) reject(new Error(message.failed));
        else if ("reply" in message) settle(message.id, JSON.parse(message.reply));
        else if ("broken" in message) broken(message.id, message.broken, message.usable);
        else if ("want" in message) {
          const file = message.want;
          get(file).then(
            (content) => worker.postMessage({ file, content }),
            () => worker.postMessage({ file }),
          );
        }
      };
      worker.postMessage({ start: { source: SOURCE, engine: BASE + FILES.engine, files } });
    }).catch((error) => {
      worker.terminate();
      throw error;
    });
    send = ({ id, operation, data }) => worker.postMessage({ id, operation, data });
    stop = () => worker.terminate();
    return { place: "worker", start: mode, source: SOURCE };
  }

  async function startOnPage() {
    if (!window.bookletEngine) await script(FILES.engine);
    const engine = bookletEngine();
    const mode = await engine.start({ get });
    send = ({ id, operation, data }) =>
      engine.answer(JSON.stringify({ operation, data })).then(
        (reply) => settle(id, JSON.parse(reply)),
        (error) => broken(id, error, error?.name === "PythonError"),
      );
    stop = () => {};
    return { place: "page", start: mode, source: SOURCE };
  }

  let stop = () => {};

  async function start() {
    if (runtime.state !== "idle") return;
    change("starting");
    const found = (await attempt(startWorker)) ?? (await attempt(startOnPage));
    if (found) change("ready", found);
    else change("failed", null, FAILED);
    next();
  }

  async function attempt(way) {
    try {
      return await way();
    } catch (error) {
      console.info(`Python was not started (${error}).`);
      return null;
    }
  }

  function restart() {
    stop();
    send = null;
    if (restarts++ < RESTARTS) {
      change("idle");
      start();
    } else change("failed", null, STOPPED);
  }
})();
