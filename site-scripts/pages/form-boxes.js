// Which boxes of a form are on view, and what was understood of each. Both come from calc: the page moves
// entries and writes what it is told.

import { around, every, first, one } from "./elements.js";

// The entries that can be put behind the line "I know something else".
/** @param {HTMLElement} node */
function entries(node) {
  return every(node, ".known .fields > .entry");
}

const boxOf = (/** @type {HTMLElement} */ entry) => first(entry, ":scope > .box > input[type=text]", HTMLInputElement);

// Shows the boxes named and puts the others behind the line, in the order of the form. A box that loses its place
// loses the example's number too, and gets it back with its place; what a reader typed stays, and stays on view.
// Returns whether the text of any box is another now.
/**
 * @param {import("./forms.js").Form} form
 * @param {(string | undefined)[]} names
 */
export function arrange(form, names) {
  const { node, mine } = form;
  let changed = false;
  const order = form.order();
  const asked = form.asked().split(",");
  const [shownFields, others] = every(node, ".known .fields");
  const fold = around(others, "details");
  const held = around(document.activeElement, ".known .entry"); // a box that is moved loses the focus
  for (const entry of entries(node)) {
    const name = entry.dataset.field ?? "";
    const box = boxOf(entry);
    const shown = names.includes(name);
    if (box && !mine.has(name)) {
      const text = shown && !asked.includes(name) ? box.defaultValue : "";
      changed ||= box.value !== text;
      box.value = text;
    }
    const place = shown || (box?.value.trim() && !asked.includes(name)) ? shownFields : others;
    if (entry !== held && entry.parentElement !== place) place.append(entry);
  }
  for (const fields of [shownFields, others]) inOrder(fields, order, held);
  if (fold) fold.hidden = !others.children.length;
  return changed;
}

// Puts the entries in the order of the form, moving as few as it can and never the one with the focus.
/**
 * @param {HTMLElement} fields
 * @param {string[]} order
 * @param {HTMLElement | null} held
 */
function inOrder(fields, order, held) {
  const place = (/** @type {HTMLElement} */ entry) => order.indexOf(entry.dataset.field ?? "");
  const sorted = every(fields, ":scope > *").sort((before, after) => place(before) - place(after));
  const at = held ? sorted.indexOf(held) : -1;
  if (held && at >= 0) {
    held.before(...sorted.slice(0, at));
    held.after(...sorted.slice(at + 1));
  } else if (sorted.some((entry, index) => entry !== fields.children[index])) fields.append(...sorted);
}

// What was understood of each box: the unit it is counted in beside it, and one line below.
/**
 * @param {HTMLElement} node
 * @param {Record<string, Back>} backs
 */
export function readBack(node, backs) {
  for (const { path, unit, written, spoken, said } of units(node)) {
    const back = backs[path] ?? { unit: unit.dataset.own, spoken: unit.dataset.ownSpoken, line: "" };
    say(written, back.unit);
    say(spoken, back.spoken);
    say(said, back.line);
  }
}

// What the page was built with, to be read back again.
/**
 * @param {HTMLElement} node
 * @returns {Record<string, Back>}
 */
export function backsBuilt(node) {
  return Object.fromEntries(units(node).map(({ path, written, spoken, said }) =>
    [path, { unit: written.textContent, spoken: spoken.textContent, line: said.textContent }]));
}

// The units beside boxes, as written and as spoken, with the line below each box.
/** @param {HTMLElement} node */
function units(node) {
  return every(node, ".unit[data-own]").map((unit) => ({
    path: around(unit, "[data-field]")?.dataset.field ?? "",
    unit,
    written: one(unit, ":scope > :first-child"),
    spoken: one(unit, ":scope > :last-child"),
    said: one(unit.parentElement ?? node, ".said"),
  }));
}

// A line for text that is not there any more is worse than none.
/** @param {Element} box */
export function forgetBack(box) {
  const entry = around(box, "[data-field]");
  const said = entry && first(entry, ".said");
  if (said) say(said, "");
}

/**
 * @param {HTMLElement} place
 * @param {string} words
 */
function say(place, words) {
  if (place.textContent !== words) place.textContent = words;
}

// A list that picks from the rows of a table has as many options as the table has rows.
/**
 * @param {HTMLElement} node
 * @param {string} table
 * @param {number} rows
 */
export function countRows(node, table, rows) {
  for (const select of every(node, `select[data-counts="${CSS.escape(table)}"]`, HTMLSelectElement)) {
    [...select.options].forEach((option, index) => {
      option.hidden = option.disabled = index >= rows;
    });
  }
}
