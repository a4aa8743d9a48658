// The classic worker, a page's own or shared by all pages of the site. Each page has a port (of its own worker: the
// worker itself). In: { start: { source, engine, files } } once, then { id, request, limit? }; { file, content | error }
// for each file wanted of the page: the compiled core, and every other file from disk, in base64. A shared worker gets
// all by itself, as no compiled core can pass to it. Out: { here } before Python runs, { ready, worker }, { failed },
// { want }, { begun: id } when a question's turn has come, { fetching } around a fetch that an answer waits for,
// { id, reply | stopped | broken }, and { gone } when Python is lost to the other pages too.
// WORKER_ID is put in by the build: a loader of another build refuses this worker.
// Only data passes in either direction, never source text.
(function bookletWorker() {
  "use strict";
  const shared = "onconnect" in self;
  const wanted = new Map();
  const ports = new Set();
  let engine;
  let started = null; // promise of how Python was started
  let mode = ""; // how it was started, once it is
  let asking = null; // the port whose question is being answered
  let queue = Promise.resolve();

  const fromPage = (name) =>
    new Promise((resolve, reject) => {
      wanted.set(name, { resolve, reject });
      postMessage({ want: name });
    });

  /** The two big files are asked for at once, before the engine's own code has arrived. */
  function withHeadStart(getter) {
    const ahead = new Map(["core", "memory"].map((name) => [name, getter(name)]));
    for (const promise of ahead.values()) promise.catch(() => {}); // reported where it is used
    return (name) => {
      const promise = ahead.get(name) ?? getter(name);
      ahead.delete(name);
      return promise;
    };
  }

  async function start({ source, engine: address, files }) {
    const get = withHeadStart(async (name) => {
      if (source === "disk" || (name === "core" && !shared)) return fromPage(name);
      const response = await fetched(files[name]);
      return name === "core" ? compiled(response, files.core) : response;
    });
    if (source === "http") importScripts(address);
    engine = bookletEngine();
    return engine.start({ get, fetching });
  }

  async function join(port, given) {
    // Where Python runs already all is said at once: a page that is still being read hears one message between its
    // own tasks, and the next one a frame later.
    if (!mode) port.postMessage({ here: true });
    try {
      started ??= start(given);
      mode ||= await started;
      port.postMessage({ ready: mode, worker: WORKER_ID });
    } catch (error) {
      port.postMessage({ failed: String(error) });
      if (shared) self.close(); // the next page tries anew
    }
  }

  /** A wait for the network is not counted as calculating. */
  function fetching(begins) {
    asking.postMessage({ fetching: begins });
  }

  async function answer(port, { id, request, limit }) {
    asking = port;
    port.postMessage({ begun: id });
    try {
      port.postMessage({ id, reply: await engine.answer(request, limit) });
    } catch (error) {
      // A mistake inside Python leaves Python usable; anything else does not.
      const usable = error?.name === "PythonError";
      if (error?.type === "KeyboardInterrupt") port.postMessage({ id, stopped: true });
      else port.postMessage({ id, broken: String(error), usable });
      if (shared && !usable) {
        for (const other of ports) if (other !== port) other.postMessage({ gone: true });
        self.close();
      }
    }
  }

  function serve(port) {
    ports.add(port);
    port.onmessage = ({ data: message }) => {
      if (message.start) join(port, message.start);
      else if (message.file) {
        const { resolve, reject } = wanted.get(message.file);
        wanted.delete(message.file);
        if (message.content) resolve(message.content);
        else reject(new Error(message.error));
      } else queue = queue.then(() => answer(port, message));
    };
  }

  if (shared) self.onconnect = ({ ports: [port] }) => serve(port);
  else serve(self);
})();
