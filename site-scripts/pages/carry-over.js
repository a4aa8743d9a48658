// Keeps what was typed when the page reloads itself after an update of the site (see runtime/loader.js).
// Forms of questions hand over the text of their link (forms.js); any other box goes over by its name.

import { runtime } from "./runtime.js";

const BOXES = "input:not([type=button], [type=submit], [type=file], [type=hidden]), textarea, select";

function others() {
  return [...document.querySelectorAll(`main :is(${BOXES})`)].filter((box) => !box.closest("form.numbers"));
}

// Boxes of one name (a group of radio buttons, the same box of two sheets) are told apart by their order.
function keyed(boxes) {
  const counts = new Map();
  return boxes.map((box) => {
    const name = `${box.form?.className ?? ""} ${box.name || box.id}`;
    counts.set(name, (counts.get(name) ?? 0) + 1);
    return [`${name} ${counts.get(name)}`, box];
  });
}

const ticked = (box) => box.type === "radio" || box.type === "checkbox";

document.addEventListener("booklet:leaving", ({ detail }) => {
  detail.boxes = keyed(others()).map(([key, box]) => [key, ticked(box) ? box.checked : box.value]);
});

// A sheet of answers arrives later than the page. A box the reader has typed into meanwhile is theirs.
function takeUp(kept) {
  const left = new Map(kept);
  function restore() {
    for (const [key, box] of keyed(others())) {
      if (!left.has(key)) continue;
      if (ticked(box)) box.checked = left.get(key);
      else box.value = left.get(key);
      left.delete(key);
    }
    if (!left.size) watcher.disconnect();
  }
  const watcher = new MutationObserver(restore);
  watcher.observe(document.querySelector("main"), { childList: true, subtree: true });
  document.addEventListener("input", ({ target }) => {
    for (const [key, box] of keyed(others())) if (box === target) left.delete(key);
  }, true);
  restore();
}

// Once every block of the page has started.
const { kept } = runtime;
if (kept?.boxes) queueMicrotask(() => takeUp(kept.boxes));
