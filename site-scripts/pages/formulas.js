// Formulas. They come as MathML, from the build and from calc, and a browser sets them by itself: here is what it
// does not do. A line that is still too wide becomes reachable by keyboard, and where a browser lays out no
// MathML the plain text that goes with each formula stands in its place, so that no fraction loses its bar.

/** @type {boolean | undefined} */
let lays;

// Whether a fraction stands as one: its top above its bottom.
function laysOut() {
  const holder = document.createElement("div");
  holder.style.cssText = "position:absolute;visibility:hidden";
  holder.innerHTML = "<math><mfrac><mn>1</mn><mn>2</mn></mfrac></math>";
  document.body.append(holder);
  const [top, bottom] = [...holder.querySelectorAll("mn")].map((node) => node.getBoundingClientRect());
  holder.remove();
  return bottom.height > 0 && top.bottom <= bottom.top + 1;
}

/** @typedef {Element | Document | DocumentFragment} Root */

// Whatever is put into a page or printed from it comes through here.
/** @param {Root} root */
export function typeset(root) {
  readable(root);
  markWide(root);
}

// The first half of it, which measures nothing: the browser need not lay out what is put in before it shows it.
/** @param {Root} root */
export function readable(root) {
  lays ??= laysOut();
  if (!lays) for (const node of select(root, "math[alttext]")) inWords(node);
}

/** @param {Element} node */
function inWords(node) {
  const words = document.createElement("span");
  words.className = "formula-words";
  const before = node.previousElementSibling;
  words.textContent = (before?.className === "formula-words" ? " " : "") + node.getAttribute("alttext");
  node.replaceWith(words);
}

// A formula wider than its column scrolls, and whatever scrolls must be reachable by keyboard.
// One that fits is no stop on the way through the page. All are measured before any is changed.
/** @param {Root} root */
function markWide(root) {
  const lines = select(root, ".tex.display").filter((node) => node instanceof HTMLElement)
    .map((node) => ({ node, wide: node.scrollWidth > node.clientWidth + 1 }));
  for (const { node, wide } of lines) {
    if (node.classList.contains("wide") === wide) continue;
    node.classList.toggle("wide", wide);
    if (wide) {
      node.tabIndex = 0;
      node.setAttribute("role", "group");
      node.setAttribute("aria-label", "Wide formula, scrolls sideways");
    } else {
      for (const name of ["tabindex", "role", "aria-label"]) node.removeAttribute(name);
    }
  }
}

/**
 * @param {Root} root
 * @param {string} selector
 * @returns {Element[]}
 */
function select(root, selector) {
  const inside = [...root.querySelectorAll(selector)];
  return root instanceof Element && root.matches(selector) ? [root, ...inside] : inside;
}

// Sets the formulas of the page itself, after its other scripts: to measure a line the browser lays out the whole page.
export function startFormulas() {
  document.addEventListener("DOMContentLoaded", () => typeset(document));
  document.fonts.ready.then(() => markWide(document));
  let pending = 0;
  window.addEventListener("resize", () => {
    cancelAnimationFrame(pending);
    pending = requestAnimationFrame(() => markWide(document));
  });
}
