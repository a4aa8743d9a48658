// The first page: the find box in its middle opens the booklet's own, and a returning reader is told what is due.

import { dueToday } from "../due.js";

const box = document.querySelector(".find-box");
box.hidden = false;
box.addEventListener("click", () => {
  const open = document.querySelector("#__search");
  if (!open.checked) open.click();
  document.querySelector(".md-search__input").focus();
});

const place = document.querySelector(".due-today");
const due = dueToday();
if (due) {
  place.querySelector("a").textContent = `Due today: ${due}`;
  place.hidden = false;
}
