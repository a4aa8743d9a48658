// Which boxes of a form are on view, and what was understood of each. Both come from calc: the page moves
// entries and writes what it is told.

// The entries that can be put behind the line "I know something else".
function entries(node) {
  return [...node.querySelectorAll(".known .fields > .entry")];
}

const boxOf = (entry) => entry.querySelector(":scope > .box > input[type=text]");

// Shows the boxes named and puts the others behind the line, in the order of the form. A box that loses its place
// loses the example's number too, and gets it back with its place; what a reader typed stays, and stays on view.
// Returns whether the text of any box is another now.
export function arrange(form, names) {
  const { node, mine } = form;
  let changed = false;
  const order = node.dataset.order.split(" ");
  const asked = form.asked().split(",");
  const [first, others] = node.querySelectorAll(".known .fields");
  const fold = others.closest("details");
  const held = document.activeElement?.closest(".known .entry"); // a box that is moved loses the focus
  for (const entry of entries(node)) {
    const name = entry.dataset.field;
    const box = boxOf(entry);
    const shown = names.includes(name);
    if (box && !mine.has(name)) {
      const text = shown && !asked.includes(name) ? box.defaultValue : "";
      changed ||= box.value !== text;
      box.value = text;
    }
    const place = shown || (box?.value.trim() && !asked.includes(name)) ? first : others;
    if (entry !== held && entry.parentElement !== place) place.append(entry);
  }
  for (const fields of [first, others]) inOrder(fields, order, held);
  fold.hidden = !others.children.length;
  return changed;
}

// Puts the entries in the order of the form, moving as few as it can and never the one with the focus.
function inOrder(fields, order, held) {
  const sorted = [...fields.children].sort((one, other) => order.indexOf(one.dataset.field) - order.indexOf(other.dataset.field));
  const at = held ? sorted.indexOf(held) : -1;
  if (at >= 0) {
    held.before(...sorted.slice(0, at));
    held.after(...sorted.slice(at + 1));
  } else if (sorted.some((entry, index) => entry !== fields.children[index])) fields.append(...sorted);
}

// What was understood of each box: the unit it is counted in beside it, and one line below.
export function readBack(node, backs) {
  for (const unit of node.querySelectorAll(".unit[data-own]")) {
    const path = unit.closest("[data-field]").dataset.field;
    const back = backs[path] ?? { unit: unit.dataset.own, spoken: unit.dataset.ownSpoken, line: "" };
    say(unit.firstElementChild, back.unit);
    say(unit.lastElementChild, back.spoken);
    say(unit.parentElement.querySelector(".said"), back.line);
  }
}

// What the page was built with, to be read back again.
export function backsBuilt(node) {
  return Object.fromEntries([...node.querySelectorAll(".unit[data-own]")].map((unit) => [unit.closest("[data-field]").dataset.field, {
    unit: unit.firstElementChild.textContent,
    spoken: unit.lastElementChild.textContent,
    line: unit.parentElement.querySelector(".said").textContent,
  }]));
}

// A line for text that is not there any more is worse than none.
export function forgetBack(box) {
  const said = box.closest("[data-field]")?.querySelector(".said");
  if (said) say(said, "");
}

function say(place, words) {
  if (place.textContent !== words) place.textContent = words;
}

// A list that picks from the rows of a table has as many options as the table has rows.
export function countRows(node, table, rows) {
  for (const select of node.querySelectorAll(`select[data-counts="${CSS.escape(table)}"]`)) {
    [...select.options].forEach((option, index) => {
      option.hidden = option.disabled = index >= rows;
    });
  }
}
