// The answer sheet: a learner's own answers go to calc to be marked, and the verdicts come back.
// mount(place, request) puts the sheet of one question into `place`; request() gives
// {question, inputs, find, settings, variant} each time it is asked.

import { typeset } from "./formulas.js";
import { runtime } from "./runtime.js";

export class Sheet {
  constructor(place, request, onmarked) {
    this.place = place;
    this.request = request;
    this.onmarked = onmarked;
  }

  // Asks for the sheet, and returns the reply; what was typed in it before stays where the same box is there again.
  async open() {
    const kept = this.form ? new Map(new FormData(this.form)) : new Map();
    const reply = await runtime.ask("sheet", this.request());
    if (!reply.ok) {
      this.say(reply.errors.map((error) => error.message).join(" "));
      return null;
    }
    this.place.innerHTML = reply.data.html; // rendered and escaped by calc
    typeset(this.place);
    this.form = this.place.querySelector("form");
    for (const box of this.form.elements) {
      if (!kept.has(box.name)) continue;
      if (box.type === "radio") box.checked = box.value === kept.get(box.name);
      else if (box.type !== "checkbox") box.value = kept.get(box.name);
    }
    this.form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.mark();
    });
    return reply.data;
  }

  say(words) {
    const status = this.form?.querySelector(".status");
    if (status) status.textContent = words;
    else this.place.textContent = words;
  }

  // {part: {value, direction, steps, formula, substitution, said}} from field names such as answers.find.steps.F_1
  answers() {
    const answers = {};
    for (const box of this.form.elements) {
      const [head, part, kind, step] = (box.name || "").split(".");
      if (head !== "answers") continue;
      const entry = (answers[part] ??= {});
      if (kind === "said") {
        if (box.checked) (entry.said ??= []).push(Number(box.value));
      } else if (box.type === "radio") {
        if (box.checked) (entry[kind] ??= {})[step] = box.value;
      } else if (!box.value.trim()) continue;
      else if (step) (entry[kind] ??= {})[step] = box.value;
      else entry[kind] = box.value;
    }
    return answers;
  }

  async mark() {
    this.say("Marking…");
    const reply = await runtime.ask("mark", { ...this.request(), answers: this.answers() });
    if (!reply.ok) {
      this.say(reply.errors.map((error) => error.message).join(" "));
      return;
    }
    const { parts, earned, possible, problems } = reply.data;
    for (const part of parts) {
      const spot = this.form.querySelector(`.answer-part[data-part="${CSS.escape(part.part)}"] .verdict-place`);
      spot.innerHTML = part.html; // rendered and escaped by calc
      typeset(spot);
    }
    for (const problem of this.form.querySelectorAll(".problem")) problem.hidden = true;
    for (const { field, message } of problems) {
      const problem = this.form.querySelector(`[data-field="${CSS.escape(field)}"] .problem`);
      if (!problem) continue;
      problem.textContent = message;
      problem.hidden = false;
    }
    this.say(`${earned} of ${possible} mark${possible === 1 ? "" : "s"}.`);
    this.onmarked?.(reply.data);
  }
}

export function mount(place, request, onmarked) {
  const sheet = new Sheet(place, request, onmarked);
  sheet.open();
  return sheet;
}
