// What a printed page carries: its link as text and, when the page is served, as a QR code.
// stamp(state, words) makes both for what stands after # on this page; the page's own is put
// in before printing. A page opened from disk names no folder: that is the reader's own, and of use to no one else.

const SVG = "http://www.w3.org/2000/svg";
const HERE = /** @type {HTMLScriptElement} */ (document.currentScript).src;
const LIBRARY = new URL(QR_LIBRARY, HERE).href;
const BOOKLET = new URL("../../", HERE).href;
const LONGEST_CODE = 1200; // characters; beyond that the squares are too small for a phone
const served = location.protocol.startsWith("http");

// Printing does not wait, so the library has to be there before; it is fetched when the page is at rest.
function load() {
  return new Promise((resolve) => {
    const script = document.createElement("script");
    script.src = LIBRARY;
    script.onload = script.onerror = resolve;
    document.head.append(script);
  });
}
const SOON = 1500; // ms; a page that never comes to rest gets it all the same
const atRest = (/** @type {() => void} */ run) => (window.requestIdleCallback
  ? window.requestIdleCallback(run, { timeout: SOON })
  : setTimeout(run, SOON));
/** @type {Promise<void> | null} */
let ready = null;

// Fetches the library where a link holds more than the page's own name. Resolves when it is there, or cannot be.
export function codesReady() {
  ready ??= /** @type {Promise<void>} */ (new Promise((resolve) => {
    if (!served) resolve();
    else if (document.readyState === "complete") atRest(() => load().then(resolve));
    else window.addEventListener("load", () => atRest(() => load().then(resolve)));
  }));
  return ready;
}

/** @param {string} link */
function code(link) {
  if (!served || !window.qrcode || link.length > LONGEST_CODE) return null;
  const made = window.qrcode(0, link.length < 300 ? "M" : "L");
  made.addData(link);
  made.make();
  const size = made.getModuleCount();
  const edge = 4; // the quiet zone that ISO/IEC 18004 asks for
  let path = "";
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      if (made.isDark(row, column)) path += `M${column + edge} ${row + edge}h1v1h-1z`;
    }
  }
  const drawing = document.createElementNS(SVG, "svg");
  drawing.setAttribute("viewBox", `0 0 ${size + 2 * edge} ${size + 2 * edge}`);
  drawing.setAttribute("class", "print-code");
  drawing.setAttribute("role", "img");
  drawing.setAttribute("aria-label", "The same link as a QR code");
  drawing.setAttribute("shape-rendering", "crispEdges");
  const squares = document.createElementNS(SVG, "path");
  squares.setAttribute("d", path);
  squares.setAttribute("fill", "#000");
  drawing.append(squares);
  return drawing;
}

// The address of this page with a state; from disk, what to open in the folder of any copy of the booklet.
/** @param {string} state */
export function linkTo(state) {
  const page = location.href.split("#")[0];
  return `${served ? page : page.replace(BOOKLET, "")}${state ? `#${state}` : ""}`;
}

export const advice = served ? "" : "It begins with the name of the page: put the address of the folder of a booklet in front of it.";

// words: what it is, for a reader who has the booklet on disk and no link to follow.
/**
 * @param {string} state
 * @param {string} words
 */
export function stamp(state, words) {
  const line = document.createElement("footer");
  line.className = "print-link";
  const told = document.createElement("p");
  told.textContent = served ? linkTo(state) : `${words} In the folder of the booklet: ${linkTo(state)}`;
  const drawn = code(linkTo(state));
  line.append(...(drawn ? [drawn, told] : [told]));
  return line;
}

window.addEventListener("beforeprint", () => {
  document.querySelector(".md-content__inner > .print-link")?.remove();
  if (document.querySelector(".sheets > article")) return; // papers carry links of their own
  document.querySelector(".md-content__inner")?.append(stamp(location.hash.slice(1), `${document.title}.`));
});
