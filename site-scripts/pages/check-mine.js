// Under each form of a question: "Check my own answer", filled when it is opened.

import { forms } from "./forms.js";
import { Sheet } from "./sheet.js";

export function startChecks() {
  const checks = new Map();
  for (const fold of document.querySelectorAll("details.check-mine")) {
    const section = fold.closest("section.question");
    const form = forms.get(section.dataset.question);
    if (!form) continue;
    const place = fold.querySelector(".sheet-place");
    const sheet = new Sheet(place, () => form.request());
    checks.set(form, { fold, sheet });
    fold.addEventListener("toggle", () => {
      if (!fold.open) return;
      if (!place.firstChild) place.textContent = "Getting the sheet ready…";
      sheet.open();
    });
    // A verdict points to a step of the worked answer below.
    place.addEventListener("click", (event) => {
      const link = event.target.closest("[data-look]");
      if (!link) return;
      event.preventDefault();
      const step = form.area.querySelector(`[data-step="${CSS.escape(link.dataset.look)}"]`);
      if (!step) return;
      const part = step.closest("details.part");
      if (part) part.open = true;
      step.tabIndex = -1;
      step.focus();
      step.scrollIntoView({ block: "center" });
    });
  }
  document.addEventListener("booklet:answer", (event) => {
    const check = checks.get(event.detail.form);
    if (check?.fold.open) check.sheet.open();
  });
}
