// The page's door to Python (see runtime/loader.js), and what stands in where its loader did not arrive, or another
// page came in its place (a network's sign-in page, for one): the same door, behind which one sentence answers
// everything.

const message =
  "The calculator did not arrive with this page, so it cannot work out answers. Everything written on this page " +
  "can be read without it; check the connection, sign in if this network asks for it, then reload the page.";
/** @type {Set<(state: RuntimeState) => void>} */
const listeners = new Set();
let told = false;
/** @type {Runtime} */
const missing = { state: "idle", how: null, message: "", kept: null, ask, start, onchange };

function start() {
  if (told) return;
  told = true;
  queueMicrotask(() => {
    Object.assign(missing, { state: "failed", message });
    for (const listener of listeners) listener("failed");
  });
}

/** @returns {Promise<{ ok: false, errors: Problem[] }>} */
async function ask() {
  start();
  return { ok: false, errors: [{ field: null, message }] };
}

/** @param {(state: RuntimeState) => void} listener */
function onchange(listener) {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

// The loader's script stands before this one in the page and leaves its door on the window.
/** @type {Runtime} */
export const runtime = (window.bookletRuntime ??= missing);
