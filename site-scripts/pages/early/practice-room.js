// Read before what follows it is laid out: a link to a drawn question gets room for it at once, and so does the list
// of what was marked, which the page's other scripts bring later.

import { every } from "../elements.js";

const page = document.documentElement;
if (/[#&]practice=/.test(location.hash)) page.classList.add("practice-linked");
let kept = "";
try {
  kept = localStorage.getItem("physics-line-by-line.progress") || "";
} catch {
  // nothing is kept
}
const questions = every(document, '.practice-picker [name="question"] option', HTMLOptionElement).map((option) => option.value);
const tried = questions.filter((key) => key.includes(".") && kept.includes(`"${key}"`)).length;
if (tried) {
  page.style.setProperty("--tried", String(tried));
  page.classList.add("progress-kept");
}
