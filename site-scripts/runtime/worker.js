// The classic worker. In: { start: { source, engine, files } } once, then { id, operation, data };
// from disk also { file, base64 }. Out: { ready }, { failed }, { want }, { id, reply | broken }.
// Only data passes in either direction, never code.
(function bookletWorker() {
  "use strict";
  const wanted = new Map();
  let engine;
  let queue = Promise.resolve();

  const fromDisk = (name) =>
    new Promise((resolve, reject) => {
      wanted.set(name, { resolve, reject });
      postMessage({ want: name });
    });

  async function fromSite(address) {
    const response = await fetch(address);
    if (!response.ok) throw new Error(`${address} answered ${response.status}`);
    return response;
  }

  function once(getter) {
    // The two big files are asked for before the engine's own code has arrived.
    const ahead = new Map(["core", "memory"].map((name) => [name, getter(name)]));
    for (const promise of ahead.values()) promise.catch(() => {});
    return (name) => {
      const promise = ahead.get(name) ?? getter(name);
      ahead.delete(name);
      return promise;
    };
  }

  async function start({ source, engine: address, files }) {
    try {
      const get = once(source === "disk" ? fromDisk : (name) => fromSite(files[name]));
      if (source === "http") importScripts(address);
      engine = bookletEngine();
      postMessage({ ready: await engine.start({ get }) });
    } catch (error) {
      postMessage({ failed: String(error) });
    }
  }

  async function answer({ id, operation, data }) {
    try {
      postMessage({ id, reply: await engine.answer(JSON.stringify({ operation, data })) });
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
      if (message.base64) resolve(message.base64);
      else reject(new Error(`${message.file} could not be read`));
    } else queue = queue.then(() => answer(message));
  };
})();
