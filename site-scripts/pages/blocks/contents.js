// The first page: the find box in its middle opens the booklet's own, and a returning reader is told what is due.

import { dueToday } from "../due.js";
import { one } from "../elements.js";

const box = one(document, ".find-box");
box.hidden = false;
box.addEventListener("click", () => {
  const open = one(document, "#__search", HTMLInputElement);
  if (!open.checked) open.click();
  one(document, ".md-search__input").focus();
});

const place = one(document, ".due-today");
const due = dueToday();
if (due) {
  one(place, "a").textContent = `Due today: ${due}`;
  place.hidden = false;
}
