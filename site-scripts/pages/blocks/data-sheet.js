// The form of the reader's settings.

import "../carry-over.js";
import { every, first, isBox, one } from "../elements.js";
import { runtime } from "../runtime.js";
import { current, forget, keep } from "../settings.js";
import { forgets } from "../storage.js";

const form = one(document, "form.settings", HTMLFormElement);
const status = one(form, ".status");
const boxes = [...form.elements].filter(isBox);

function fill() {
  const settings = current();
  for (const box of boxes) {
    if (box.name) box.value = settings[box.name] ?? box.dataset.usual ?? "";
  }
}

function read() {
  /** @type {Record<string, string>} */
  const settings = {};
  for (const box of boxes) {
    if (box.name && box.value.trim() !== (box.dataset.usual ?? "")) settings[box.name] = box.value.trim();
  }
  return settings;
}

form.addEventListener("submit", async (event) => {
  event.preventDefault();
  for (const problem of every(form, ".problem")) problem.hidden = true;
  for (const box of form.querySelectorAll("[aria-invalid]")) box.removeAttribute("aria-invalid");
  status.textContent = "Reading the settings…";
  const reply = await runtime.ask("settings", { settings: read() });
  if (reply.ok) {
    keep(read());
    status.textContent = forgets()
      ? "This browser lets the page store nothing: the settings hold until the page is closed."
      : "Kept on this device, for every page of the booklet.";
    return;
  }
  status.textContent = "";
  for (const { field, message } of reply.errors) {
    const problem = first(form, `[data-field="${CSS.escape(field || "")}"] .problem`);
    if (problem) {
      problem.textContent = message;
      problem.hidden = false;
      problem.parentElement?.querySelector("input")?.setAttribute("aria-invalid", "true");
    } else status.textContent = message;
  }
  first(form, "[aria-invalid]")?.focus();
});
one(form, ".usual").addEventListener("click", () => {
  forget();
  fill();
  status.textContent = "Back to the usual school values.";
});
fill();
