// Keeps what was typed when the page reloads itself after an update of the site (see runtime/loader.js).
// Forms of questions hand over the text of their link (forms.js); any other box goes over by its name.

import { boxesIn, isTicked } from "./elements.js";
import { runtime } from "./runtime.js";

const BOXES = "input:not([type=button], [type=submit], [type=file], [type=hidden]), textarea, select";

/** @typedef {import("./elements.js").Box} Box */

function others() {
  return boxesIn(document, `main :is(${BOXES})`).filter((box) => !box.closest("form.numbers"));
}

// Boxes of one name (a group of radio buttons, the same box of two sheets) are told apart by their order.
/**
 * @param {Box[]} boxes
 * @returns {[key: string, box: Box][]}
 */
function keyed(boxes) {
  const counts = new Map();
  return boxes.map((box) => {
    const name = `${box.form?.className ?? ""} ${box.name || box.id}`;
    counts.set(name, (counts.get(name) ?? 0) + 1);
    return [`${name} ${counts.get(name)}`, box];
  });
}

/**
 * @param {Box} box
 * @returns {box is HTMLInputElement}
 */
const ticked = (box) => box instanceof HTMLInputElement && isTicked(box);

document.addEventListener("booklet:leaving", ({ detail }) => {
  detail.boxes = keyed(others()).map(([key, box]) => [key, ticked(box) ? box.checked : box.value]);
});

// A sheet of answers arrives later than the page. A box the reader has typed into meanwhile is theirs.
/** @param {[key: string, entry: string | boolean][]} kept */
function takeUp(kept) {
  const left = new Map(kept);
  function restore() {
    for (const [key, box] of keyed(others())) {
      const entry = left.get(key);
      if (entry === undefined) continue;
      if (ticked(box)) box.checked = entry === true;
      else box.value = String(entry);
      left.delete(key);
    }
    if (!left.size) watcher.disconnect();
  }
  const watcher = new MutationObserver(restore);
  watcher.observe(document.querySelector("main") ?? document.body, { childList: true, subtree: true });
  document.addEventListener("input", ({ target }) => {
    for (const [key, box] of keyed(others())) if (box === target) left.delete(key);
  }, true);
  restore();
}

// Once every block of the page has started.
const { kept } = runtime;
const boxes = kept?.boxes;
if (boxes) queueMicrotask(() => takeUp(boxes));
