// Stands in for the runtime where its loader did not arrive, or another page came in its place (a network's
// sign-in page, for one): the same door (see runtime/loader.js), behind which one sentence answers everything.
(function () {
  "use strict";
  if (window.bookletRuntime) return;

  const message =
    "The calculator did not arrive with this page, so it cannot work out answers. Everything written on this page " +
    "can be read without it; check the connection, sign in if this network asks for it, then reload the page.";
  const listeners = new Set();
  let told = false;
  const runtime = { state: "idle", how: null, message: "", kept: null, ask, start, onchange };

  function start() {
    if (told) return;
    told = true;
    queueMicrotask(() => {
      Object.assign(runtime, { state: "failed", message });
      for (const listener of listeners) listener("failed");
    });
  }

  async function ask() {
    start();
    return { ok: false, errors: [{ field: null, message }] };
  }

  function onchange(listener) {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }

  window.bookletRuntime = runtime;
})();
