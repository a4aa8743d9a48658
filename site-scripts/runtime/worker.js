// The classic worker. In: { start: { source, engine, files } } once, then { id, request };
// { file, content | error } for each file wanted: the compiled core, and every other file: a response
// over http cannot pass, so there only from disk, in base64. Out: { ready, worker }, { failed },
// { want }, { fetching } around a fetch that an answer waits for, { id, reply | broken }.
// WORKER_ID is put in by the build: a loader of another build refuses this worker.
// Only data passes in either direction, never source text.
(function bookletWorker() {
  "use strict";
  const wanted = new Map();
  let engine;
  let queue = Promise.resolve();

  const fromPage = (name) =>
    new Promise((resolve, reject) => {
      wanted.set(name, { resolve, reject });
      postMessage({ want: name });
    });

  /** The two big files are asked for at once, before the engine's own code has arrived. */
  function withHeadStart(getter) {
    const ahead = new Map([["core", fromPage("core")], ["memory", getter("memory")]]);
    for (const promise of ahead.values()) promise.catch(() => {}); // reported where it is used
    return (name) => {
      const promise = ahead.get(name) ?? (name === "core" ? fromPage(name) : getter(name));
      ahead.delete(name);
      return promise;
    };
  }

  async function start({ source, engine: address, files }) {
    try {
      const get = withHeadStart(source === "disk" ? fromPage : (name) => fetched(files[name]));
      if (source === "http") importScripts(address);
      engine = bookletEngine();
      postMessage({ ready: await engine.start({ get, fetching }), worker: WORKER_ID });
    } catch (error) {
      postMessage({ failed: String(error) });
    }
  }

  /** A wait for the network is not counted as calculating. */
  function fetching(begins) {
    postMessage({ fetching: begins });
  }

  async function answer({ id, request }) {
    try {
      postMessage({ id, reply: await engine.answer(request) });
    } catch (error) {
      // A mistake inside Python leaves Python usable; anything else does not.
      postMessage({ id, broken: String(error), usable: error?.name === "PythonError" });
    }
  }

  onmessage = ({ data: message }) => {
    if (message.start) start(message.start);
    else if (message.file) {
      const { resolve, reject } = wanted.get(message.file);
      wanted.delete(message.file);
      if (message.content) resolve(message.content);
      else reject(new Error(message.error));
    } else queue = queue.then(() => answer(message));
  };
})();
