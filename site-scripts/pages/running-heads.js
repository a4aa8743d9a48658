// Running heads of printed papers, in the margin of every page: rules for named pages (CSS Paged Media), which an
// element takes with its `page` property. They are built here as they hold names.

// A text as a string of CSS, safe inside a style element too.
/** @param {string} text */
function quoted(text) {
  return `"${text.replace(/["\\\n\r\f<]/g, (sign) => `\\${sign.charCodeAt(0).toString(16)} `)}"`;
}

// entries: [{name of the pages, left, middle: texts, count: how many pages}, ...]; first: the name of the first page that
// is printed. What stands before it goes under the same name: a change of name begins a page, and that would be empty.
// Pages are counted for each name, as the browser's own counters run through the whole print.
/**
 * @param {{ name: string, left: string, middle: string, count: number }[]} entries
 * @param {string} first
 */
export function heads(entries, first) {
  const font = 'font: 9pt "Source Sans 3", system-ui, sans-serif;';
  return `@media print { body { page: ${first}; } }\n${entries.map(({ name, left, middle, count }) => `@page ${name} {
  counter-increment: of-${name};
  @top-left { content: ${quoted(left)}; ${font} }
  @top-center { content: ${quoted(middle)}; ${font} }
  @top-right { content: "page " counter(of-${name}) " of ${count}"; ${font} }
}`).join("\n")}`;
}

/** @type {CSSStyleSheet | null} */
let sheet = null;

// Puts the rules into the page, in place of those before. Not as an element: the page's policy allows none.
/** @param {string} rules */
export function headed(rules) {
  if (!sheet) {
    sheet = new CSSStyleSheet();
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  }
  sheet.replaceSync(rules);
}
