// The answer sheet: a learner's own answers go to calc to be marked, and the verdicts come back.
// mount(place, request) puts the sheet of one question into `place`; request() gives
// {question, inputs, find, settings, variant} each time it is asked.

import { every, first, isBox, one } from "./elements.js";
import { typeset } from "./formulas.js";
import { runtime } from "./runtime.js";

/** @typedef {Desk["mark"]["answered"]} Marked */

export class Sheet {
  /** @type {HTMLFormElement | null} */
  form = null;

  /**
   * @param {HTMLElement} place
   * @param {() => QuestionAsked} request
   * @param {(marked: Marked) => void} onmarked
   */
  constructor(place, request, onmarked) {
    this.place = place;
    this.request = request;
    this.onmarked = onmarked;
    this.asked = 0;
  }

  // Asks for the sheet, and returns the reply; what was typed in it, also while it was asked for, stays where the same
  // box is there again. Of two that are asked for the later one stands, and the
  // earlier one gets nothing.
  async open() {
    const asked = ++this.asked;
    const reply = await runtime.ask("sheet", this.request());
    if (asked !== this.asked) return undefined;
    const kept = this.form ? new Map(new FormData(this.form)) : new Map();
    const { activeElement: active } = document;
    const typing = active && isBox(active) && this.form?.contains(active) ? active : null;
    if (!reply.ok) {
      this.say(reply.errors.map((error) => error.message).join(" "));
      return null;
    }
    this.place.innerHTML = reply.data.html; // rendered and escaped by calc
    typeset(this.place);
    this.form = one(this.place, "form", HTMLFormElement);
    for (const box of boxes(this.form)) {
      const text = kept.get(box.name);
      if (typeof text !== "string") continue;
      if (box instanceof HTMLInputElement && box.type === "radio") box.checked = box.value === text;
      else if (box.type !== "checkbox") box.value = text;
      if (typing?.name === box.name && typing.type === box.type && typing.value === box.value) {
        box.focus({ preventScroll: true });
        if (box.type === "text" && box instanceof HTMLInputElement && typing instanceof HTMLInputElement) {
          box.setSelectionRange(typing.selectionStart, typing.selectionEnd);
        }
      }
    }
    this.form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.mark();
    });
    return reply.data;
  }

  /** @param {string} words */
  say(words) {
    const status = this.form?.querySelector(".status");
    if (status) status.textContent = words;
    else this.place.textContent = words;
  }

  // {part: {value, direction, steps, formula, substitution, said}} from field names such as answers.find.steps.F_1
  /** @param {HTMLFormElement} form */
  answers(form) {
    /** @type {Record<string, PartTyped>} */
    const answers = {};
    for (const box of boxes(form)) {
      const [head, part, kind, step] = (box.name || "").split(".");
      if (head !== "answers") continue;
      const entry = (answers[part] ??= {});
      const ticked = box instanceof HTMLInputElement && box.checked;
      if (kind === "said") {
        if (ticked) (entry.said ??= []).push(Number(box.value));
      } else if (box.type === "radio") {
        if (ticked) entry[kind] = { ...bySteps(entry[kind]), [step]: box.value };
      } else if (!box.value.trim()) continue;
      else if (step) entry[kind] = { ...bySteps(entry[kind]), [step]: box.value };
      else entry[kind] = box.value;
    }
    return answers;
  }

  async mark() {
    const { form } = this;
    if (!form) return;
    this.say("Marking…");
    const reply = await runtime.ask("mark", { ...this.request(), answers: this.answers(form) });
    if (!reply.ok) {
      this.say(reply.errors.map((error) => error.message).join(" "));
      return;
    }
    const { parts, earned, possible, problems } = reply.data;
    for (const part of parts) {
      const spot = one(form, `.answer-part[data-part="${CSS.escape(part.part)}"] .verdict-place`);
      spot.innerHTML = part.html; // rendered and escaped by calc
      typeset(spot);
    }
    for (const problem of every(form, ".problem")) problem.hidden = true;
    for (const { field, message } of problems) {
      const problem = first(form, `[data-field="${CSS.escape(field)}"] .problem`);
      if (!problem) continue;
      problem.textContent = message;
      problem.hidden = false;
    }
    this.say(`${earned} of ${possible} mark${possible === 1 ? "" : "s"}.`);
    this.onmarked?.(reply.data);
  }
}

/** @param {HTMLFormElement} form */
function boxes(form) {
  return [...form.elements].filter(isBox);
}

/**
 * What was typed for the steps before.
 * @param {PartTyped[string]} typed
 */
function bySteps(typed) {
  return typeof typed === "object" && !Array.isArray(typed) ? typed : {};
}

/**
 * @param {HTMLElement} place
 * @param {() => QuestionAsked} request
 * @param {(marked: Marked) => void} onmarked
 */
export function mount(place, request, onmarked) {
  const sheet = new Sheet(place, request, onmarked);
  sheet.open();
  return sheet;
}
