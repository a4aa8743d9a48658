// The first page: the find box in its middle opens the booklet's own, and a returning reader is told what is due.
// The days are those the practice page listed last (see practice.js); which day is due is decided there, by calc.
(function () {
  "use strict";

  const box = document.querySelector(".find-box");
  if (!box) return;
  box.hidden = false;
  box.addEventListener("click", () => {
    const open = document.getElementById("__search");
    if (!open.checked) open.click();
    document.querySelector(".md-search__input").focus();
  });

  const place = document.querySelector(".due-today");
  let days = [];
  try {
    days = JSON.parse(localStorage.getItem("physics-line-by-line.due") || "[]");
  } catch {
    return; // nothing is kept, or not by us
  }
  if (!Array.isArray(days)) return;
  const today = window.bookletProgress.today();
  const due = days.filter((day) => typeof day === "string" && day <= today).length;
  if (!due) return;
  place.querySelector("a").textContent = `Due today: ${due}`;
  place.hidden = false;
})();
