// Pasting a table copied from a spreadsheet into the table of a form.

import { around, every, one } from "./elements.js";
import { isTable, pastedRows } from "./pasted-rows.js";

const boxesOf = (/** @type {Element} */ row) => every(row, "input", HTMLInputElement);
// What a reader or a link put there; what the page was built with is the example's.
const isTyped = (/** @type {Element} */ row) => boxesOf(row).some((box) => box.value.trim() && box.value !== box.defaultValue);
const textOf = (/** @type {Element} */ row) => boxesOf(row).map((box) => box.value.trim()).join("; ");

/**
 * @param {import("./forms.js").Form} form
 * @param {ClipboardEvent} event
 */
export function paste(form, event) {
  const table = around(event.target, ".entry.table");
  const row = around(event.target, "tbody tr", HTMLTableRowElement);
  const text = event.clipboardData?.getData("text/plain") ?? "";
  if (!table || !row || !isTable(text)) return;
  event.preventDefault();
  const body = one(table, "tbody", HTMLTableSectionElement);
  const signs = every(table, "thead th").slice(1);
  const columns = boxesOf(row).map((box, at) => ({
    name: box.name.slice(box.name.lastIndexOf(".") + 1),
    sign: signs[at]?.querySelector(".symbol")?.textContent ?? "",
    words: box.getAttribute("aria-label") ?? "",
  }));
  const start = [...body.rows].indexOf(row);
  const { rows, said } = pastedRows(text, columns, Number(table.dataset.most) - start);
  /** @type {string[]} */
  const lost = [];
  rows.forEach((cells, index) => {
    const place = body.rows[start + index] ?? form.addRow(table);
    if (isTyped(place)) lost.push(textOf(place));
    boxesOf(place).forEach((box, at) => { box.value = cells[at]; });
  });
  if (lost.length) said.push(`This was replaced: ${lost.map((words) => `“${words}”`).join(", ")}.`);
  if (rows.length) said.push(...rest(form, table, start, start + rows.length));
  one(table, ".pasted").textContent = said.join(" ");
  if (rows.length) form.filled(table);
}

// The rows below what was pasted: the example's go with it, what was typed stays.
/**
 * @param {import("./forms.js").Form} form
 * @param {HTMLElement} table
 * @param {number} start
 * @param {number} end
 */
function rest(form, table, start, end) {
  const body = one(table, "tbody", HTMLTableSectionElement);
  const below = [...body.rows].slice(end);
  const mine = below.filter(isTyped);
  if (start === 0) {
    const least = Number(table.dataset.least);
    for (const row of below) {
      if (mine.includes(row)) continue;
      if (body.rows.length > least) row.remove();
      else for (const box of boxesOf(row)) box.value = "";
    }
    form.number(table);
  }
  return mine.length ? [`Below them stays what was typed before: ${mine.map((row) => `“${textOf(row)}”`).join(", ")}. Remove what does not belong.`] : [];
}
