// How many pages a sheet takes in print. No browser tells before it prints, and a page's own counters know only the whole
// print: so the sheet is laid out in columns of the size of a page, which break where pages do. It stands apart from the
// styles of the site, under those of papers alone, as in a saved file.

/** @type {HTMLElement | null} */
let frame = null;

// The frame's columns stand for pages: rules for print hold in it.
function ready() {
  const host = document.createElement("div");
  host.setAttribute("aria-hidden", "true");
  host.style.cssText = "all: initial; position: fixed; left: 0; top: 0; visibility: hidden; contain: strict; width: 0; height: 0";
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(paperStyle().replaceAll("@media print", "@media all"));
  const root = host.attachShadow({ mode: "open" });
  root.adoptedStyleSheets = [sheet];
  const columns = document.createElement("div");
  columns.className = "sheets pages";
  columns.lang = document.documentElement.lang; // signs that a font lacks come from another one, by language
  root.append(columns);
  document.body.append(host);
  return columns;
}

// The style of papers, which a saved file takes along.
export function paperStyle() {
  return document.getElementById("paper-style")?.textContent ?? "";
}

// The number of pages of an article of calc's with all that is printed with it. It is moved, not copied.
/** @param {HTMLElement} article */
export function pagesOf(article) {
  frame ??= ready();
  frame.replaceChildren(article);
  const count = article.getClientRects().length;
  frame.replaceChildren();
  return count;
}
