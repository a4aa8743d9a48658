// The classic worker. In: { start: { source, engine, files } } once, then { id, operation, data };
// { file, content } for each file wanted: the compiled core, and from disk every other file in
// base64. Out: { ready }, { failed }, { want }, { id, reply | broken }.
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

  async function fromSite(address) {
    const response = await fetch(address);
    if (!response.ok) throw new Error(`${address} answered ${response.status}`);
    return response;
  }

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
      const get = withHeadStart(source === "disk" ? fromPage : (name) => fromSite(files[name]));
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
      if (message.content) resolve(message.content);
      else reject(new Error(`${message.file} could not be read`));
    } else queue = queue.then(() => answer(message));
  };
})();
