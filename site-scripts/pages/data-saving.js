// Where the browser asks to save data, the calculator, most of what a visit fetches, waits until a box is touched.

import { runtime } from "./runtime.js";

export const WAITING =
  "Your browser asks to save data, so the calculator is not fetched yet. Touch a box and it comes; all that is " +
  "written here can be read without it.";

/** Whether the reader's browser asks for little data. From disk nothing is fetched. */
export function savesData() {
  if (location.protocol === "file:") return false;
  const { connection } = /** @type {{ connection?: { saveData?: boolean } }} */ (navigator);
  return connection?.saveData === true || matchMedia("(prefers-reduced-data: reduce)").matches;
}

/**
 * Starts the calculator: at once, or when something in one of the nodes is touched. Resolves when it was asked to start.
 * @param {Element[]} nodes
 * @param {(words: string) => void} say what the reader is told meanwhile; "" when the waiting is over
 * @returns {Promise<void>}
 */
export function startRuntime(nodes, say) {
  if (!savesData() || runtime.state !== "idle") {
    runtime.start();
    if (!savesData()) startNextAtOnce();
    return Promise.resolve();
  }
  say(WAITING);
  return new Promise((resolve) => {
    const touched = () => {
      for (const node of nodes) for (const kind of KINDS) node.removeEventListener(kind, touched);
      say("");
      runtime.start();
      resolve();
    };
    for (const node of nodes) for (const kind of KINDS) node.addEventListener(kind, touched);
  });
}

/** The loader of the next page of this tab starts while the page is still being read. */
function startNextAtOnce() {
  try {
    sessionStorage.setItem("booklet-start", "at once");
  } catch {
    // The next page starts when its scripts run.
  }
}

const KINDS = ["focusin", "pointerdown", "input"];
