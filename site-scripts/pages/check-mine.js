// Under each form of a question: "Check my own answer", filled when it is opened. While it is open the worked answer
// is folded; a part of it opens when it has been marked, or when the reader opens it.

import { around, every, first, one } from "./elements.js";
import { forms } from "./forms.js";
import { Sheet } from "./sheet.js";

class Check {
  /**
   * @param {import("./forms.js").Form} form
   * @param {HTMLDetailsElement} fold
   */
  constructor(form, fold) {
    this.area = form.area;
    this.fold = fold;
    this.place = one(fold, ".sheet-place");
    /** @type {Set<string | undefined>} */
    this.seen = new Set(); // keys of parts that were marked or given up
    this.sheet = new Sheet(this.place, () => form.request(), (marked) => this.marked(marked));
    fold.addEventListener("toggle", () => (fold.open ? this.begin() : this.end()));
    this.area.addEventListener("toggle", (/** @type {Event} */ { target }) => {
      if (target instanceof HTMLDetailsElement && target.matches(".part") && target.open && fold.open) this.see(target.dataset.part);
    }, true);
    this.area.addEventListener("click", (/** @type {Event} */ { target }) => {
      if (around(target, ".see-part")) this.see(around(target, ".part")?.dataset.part);
    });
    // A verdict points to a step of the worked answer below.
    this.place.addEventListener("click", (event) => {
      const link = around(event.target, "[data-look]");
      if (!link) return;
      event.preventDefault();
      const step = first(this.area, `[data-step="${CSS.escape(link.dataset.look ?? "")}"]`);
      if (!step) return;
      this.see(around(step, ".part")?.dataset.part);
      step.tabIndex = -1;
      step.focus();
      step.scrollIntoView({ block: "center" });
    });
  }

  begin() {
    if (!this.place.firstChild) this.place.textContent = "Getting the sheet ready…";
    this.put();
    return this.sheet.open().then((reply) => {
      if (reply !== undefined) this.area.classList.toggle("no-scene", !reply?.scene);
    });
  }

  // The same again for another answer in the same place.
  again() {
    this.seen.clear();
    if (this.fold.open) this.begin();
  }

  parts() {
    return every(this.area, ".part");
  }

  // Folds what has not been seen.
  put() {
    this.area.classList.add("checking");
    for (const part of this.parts()) {
      const seen = this.seen.has(part.dataset.part);
      part.classList.toggle("seen", seen);
      if (part instanceof HTMLDetailsElement) part.open = seen;
      else if (!part.querySelector(".see-part")) one(part, ".part-ask").after(seeButton());
    }
    this.whole();
  }

  /** @param {string | undefined} key */
  see(key) {
    this.seen.add(key);
    for (const part of this.parts().filter((one) => one.dataset.part === key)) {
      part.classList.add("seen");
      if (part instanceof HTMLDetailsElement) part.open = true;
    }
    this.whole();
  }

  // What stands outside the parts tells of all of them.
  whole() {
    this.area.classList.toggle("all-seen", this.parts().every((part) => this.seen.has(part.dataset.part)));
  }

  /** @param {Desk["mark"]["answered"]} marked */
  marked({ parts }) {
    for (const { part, state } of parts) {
      if (state !== "blank" && state !== "unreadable") this.see(part);
    }
  }

  end() {
    this.seen.clear();
    this.area.classList.remove("checking", "all-seen", "no-scene");
    for (const button of this.area.querySelectorAll(".see-part")) button.remove();
  }
}

function seeButton() {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "see-part";
  button.textContent = "Show me the working";
  return button;
}

export function startChecks() {
  const checks = new Map();
  for (const fold of every(document, "details.check-mine", HTMLDetailsElement)) {
    const form = forms.get(around(fold, "section.question")?.dataset.question ?? "");
    if (form) checks.set(form, new Check(form, fold));
  }
  document.addEventListener("booklet:answer", (event) => checks.get(event.detail.form)?.again());
}
