// Drawn questions: pick one, answer it, open hints one at a time, have it marked, see when to revise it.
// It knows no physics. "#practice=coulomb.force&seed=3&level=2" opens one question, always the same.

import * as address from "../address.js";
import { show } from "../address-bar.js";
import "../carry-over.js";
import { copied, forgetCopy } from "../clipboard.js";
import { startRuntime } from "../data-saving.js";
import { keepDue, today } from "../due.js";
import { around, every, first, one } from "../elements.js";
import { typeset } from "../formulas.js";
import { linkedHere } from "../linked-here.js";
import { tell } from "../notice.js";
import { advice, codesReady, linkTo } from "../print-link.js";
import * as progress from "../progress.js";
import { runtime } from "../runtime.js";
import { sentenceOf } from "../sentence.js";
import * as settings from "../settings.js";
import { mount } from "../sheet.js";

const root = one(document, ".practice");
const find = (/** @type {string} */ selector) => one(root, selector);
const picker = one(root, ".practice-picker", HTMLFormElement);
const asked = one(picker, '[name="question"]', HTMLSelectElement);
const levels = one(picker, '[name="level"]', HTMLSelectElement);
const status = one(picker, ".status");
const area = find(".practice-question");
const memo = one(root, ".practice-memo", HTMLDetailsElement);
const answer = find(".practice-answer");
const kept = find(".kept");
const told = find(".progress .status");
const known = new Set([...asked.options].map((option) => option.value).filter((key) => key.includes(".")));
const MOST = 1_000_000; // numbers of drawn questions
const NEWEST = root.dataset.draw ?? ""; // the rule by which new questions are drawn; addresses keep theirs
/**
 * A question as calc draws it, and what the reader did with it: {marked, seen}.
 * @typedef {Desk["practice"]["answered"] & { marked: boolean, seen: boolean }} Drawn
 */

/** @type {Drawn | null} */
let current = null; // the question on screen
let turn = 0;

codesReady();

// --- drawing a question ---

// picked: the reader chose it in the picker, whose choice then stays as it is. Returns whether it was drawn.
/**
 * @param {string} question
 * @param {number | string} seed
 * @param {number | string} level
 * @param {{ focus?: boolean, picked?: boolean, draw?: number | string }} how
 */
async function open(question, seed, level, { focus = true, picked = false, draw = NEWEST } = {}) {
  const mine = ++turn;
  status.textContent = runtime.state === "ready" ? "Drawing a question…" : "Getting the working ready…";
  const reply = await settings.ask("practice", { question, seed, level, draw });
  if (mine !== turn) return true; // a later one is on its way
  if (!reply.ok) {
    status.textContent = reply.errors.map((error) => error.message).join(" ");
    return false;
  }
  status.textContent = settings.words();
  const drawn = { ...reply.data, marked: false, seen: false };
  current = drawn;
  area.hidden = false;
  area.classList.add("waiting");
  find(".practice-title").textContent = drawn.title;
  find(".practice-figure").innerHTML = drawn.figure; // rendered and escaped by calc
  kept.textContent = "";
  forgetCopy(kept);
  memo.open = false;
  answer.replaceChildren();
  if (!picked) asked.value = drawn.question;
  levels.value = String(drawn.level);
  show(stateOf(drawn));
  mountSheet(drawn, focus);
  return true;
}

/**
 * @param {Drawn} question
 * @param {boolean} focus
 */
function mountSheet(question, focus) {
  const place = document.createElement("div");
  find(".practice-sheet").replaceChildren(place);
  // The sheet says nothing when it is there: its form appears in its place.
  new MutationObserver((_, watcher) => {
    const form = first(place, "form");
    if (!form) return;
    watcher.disconnect();
    addHints(form, question);
    area.classList.remove("waiting");
    if (focus) {
      find(".practice-title").focus({ preventScroll: true });
      area.scrollIntoView({ block: "start" });
    }
  }).observe(place, { childList: true });
  mount(place, () => request(question), (reply) => marked(question, reply));
}

/**
 * @param {Drawn} drawn
 * @returns {QuestionAsked}
 */
function request({ question, inputs, find, variant }) {
  return { question, inputs, find, variant, settings: settings.current() };
}

/** @param {Drawn} drawn */
function stateOf(drawn) {
  const pairs = [["practice", drawn.question], ["seed", String(drawn.seed)], ["level", String(drawn.level)], ["draw", String(drawn.draw)]];
  return address.write(pairs.concat(settings.pairs()));
}

// --- hints: one more each time ---

/**
 * @param {HTMLElement} form
 * @param {Drawn} question
 */
function addHints(form, question) {
  for (const { part, number, html } of question.hints) {
    const spot = form.querySelector(`.answer-part[data-part="${CSS.escape(part)}"] .verdict-place`);
    if (!spot || !html.length) continue;
    const holder = document.createElement("div");
    holder.className = "hints";
    const list = document.createElement("ol");
    list.setAttribute("aria-live", "polite");
    const button = document.createElement("button");
    button.type = "button";
    button.className = "next-hint";
    const say = () => {
      const left = html.length - list.children.length;
      button.disabled = !left;
      button.textContent = left ? `${list.children.length ? "Next hint" : "Give me a hint"} (${left} left)` : "No more hints: the worked answer is below";
      if (number) button.setAttribute("aria-label", `${button.textContent}, part ${number}`);
    };
    button.addEventListener("click", () => {
      const item = document.createElement("li");
      item.innerHTML = html[list.children.length]; // rendered and escaped by calc
      list.append(item);
      typeset(item);
      say();
    });
    say();
    holder.append(list, button);
    spot.before(holder);
  }
}

// --- marking and the worked answer ---

/**
 * @param {Drawn} question
 * @param {Desk["mark"]["answered"]} reply
 */
async function marked(question, reply) {
  if (question !== current) return;
  const typed = reply.parts.some((part) => part.state !== "blank" && (part.state !== "self-marked" || part.earned));
  if (!typed) {
    kept.textContent = "Nothing to mark yet: type an answer, or open a hint.";
    return;
  }
  if (reply.problems.length) {
    kept.textContent = "Mend the marked box and mark again; then it is kept.";
    return;
  }
  const first = !question.marked;
  question.marked = true;
  if (!first) kept.textContent = "Only the first marking of a question is kept.";
  else if (question.seen) kept.textContent = "Not kept: the worked answer was open before.";
  else {
    const mistakes = reply.parts.flatMap((part) => (part.fits?.length === 1 ? part.fits[0].keys : []));
    const trouble = await progress.add({
      question: question.question, day: today(), level: question.level, seed: question.seed,
      earned: reply.earned, possible: reply.possible, mistakes: [...new Set(mistakes)].slice(0, 40),
    });
    const score = `${reply.earned} of ${reply.possible}`;
    const words = trouble ? `${score} is listed below, but not stored. ${UNSTORED[trouble]}` : `Kept on this device: ${score}. The worked answer is below.`;
    if (question === current) kept.textContent = words;
    release();
    list();
  }
}

async function showAnswer() {
  const question = current;
  if (!question) return;
  if (!question.marked) question.seen = true;
  if (answer.firstChild) return;
  answer.textContent = "Working it…";
  const reply = await runtime.ask("solve", request(question));
  if (question !== current) return;
  if (!reply.ok) {
    answer.textContent = reply.errors.map((error) => error.message).join(" ");
    return;
  }
  answer.innerHTML = reply.data.html ?? ""; // rendered and escaped by calc
  for (const part of every(answer, "details.part", HTMLDetailsElement)) part.open = true;
  typeset(answer);
}

// The theme opens what is folded while it prints: that is no looking up, and stays off the paper.
memo.addEventListener("toggle", () => {
  if (matchMedia("print").matches) return;
  memo.classList.toggle("looked-up", memo.open);
  if (memo.open) showAnswer();
});

// A verdict points to a step of the worked answer.
find(".practice-sheet").addEventListener("click", async (event) => {
  const link = around(event.target, "[data-look]");
  if (!link) return;
  event.preventDefault();
  memo.open = true;
  await showAnswer();
  const step = first(answer, `[data-step="${CSS.escape(link.dataset.look ?? "")}"]`);
  if (!step) return;
  step.tabIndex = -1;
  step.focus();
  step.scrollIntoView({ block: "center" });
});

// --- what the reader asks for ---

const anySeed = () => 1 + Math.floor(Math.random() * 9999);

picker.addEventListener("submit", async (event) => {
  event.preventDefault();
  const level = Number(levels.value);
  if (asked.value) {
    open(asked.value, anySeed(), level, { picked: true });
    return;
  }
  status.textContent = runtime.state === "ready" ? "Looking what is due…" : "Getting the working ready…";
  const reply = await list();
  if (reply?.ok && reply.data.next) open(reply.data.next.question, anySeed(), reply.data.next.level, { picked: true });
  else status.textContent = reply?.ok ? "Nothing to revise." : status.textContent;
});

find(".practice-again").addEventListener("click", () => {
  if (!current) return;
  const { question, seed, level } = current;
  open(question, (seed + 1) % MOST, level, { picked: true });
});

find(".practice-link").addEventListener("click", async () => {
  kept.textContent = await copied(linkTo(current ? stateOf(current) : ""), {
    near: kept, label: "Link to this question", done: "Copied: a link that opens this very question.", advice,
  });
});

function fromAddress() {
  const linked = linkedHere("practice");
  if (!linked) return;
  area.hidden = false; // its room is kept while the question is drawn
  area.classList.add("waiting");
  open(linked.get("practice") ?? "", linked.get("seed") || "1", linked.get("level") || "1", { focus: false, draw: linked.get("draw") || "1" }).then((drawn) => {
    if (drawn) return;
    if (status.textContent) tell([`This link draws no question. ${status.textContent}`]);
    status.textContent = "";
    document.documentElement.classList.remove("practice-linked");
    area.classList.remove("waiting");
    area.hidden = !current;
  });
}

// --- progress ---

const UNSTORED = {
  full: "The room this browser gives the booklet is full, so it is held only until this page is closed. Save it to a file, below, to keep it.",
  denied: "This browser lets the page store nothing, so it is held only until this page is closed. Save it to a file, below, to keep it.",
};

const LONG_LIST = 30_000; // ms; a year's work on a slow phone is much to read, and not stuck
async function list() {
  const history = progress.history(known);
  const room = find(".progress-list");
  tellAside();
  if (!Object.keys(history).length) {
    release();
    room.replaceChildren(paragraph("Nothing has been marked on this device yet. Mark a question, and it is listed here."));
  } else if (!room.querySelector("table")) room.replaceChildren();
  const reply = await runtime.ask("revision", { today: today(), history }, { limit: LONG_LIST });
  if (reply.ok) {
    room.innerHTML = reply.data.html; // rendered and escaped by calc
    keepDue(reply.data.late);
  }
  else told.textContent = reply.errors.map((error) => error.message).join(" ");
  return reply;
}

// The room that practice-room.js reserved holds until the reader does something: then the list takes what it needs.
function release() {
  document.documentElement.classList.remove("progress-kept");
}

// What is kept and not listed, or cannot be stored.
function tellAside() {
  const aside = progress.aside();
  const foreign = progress.load().filter(({ question }) => !known.has(question)).length;
  const lines = [];
  if (aside === 1) lines.push("1 entry cannot be read by this version of the booklet; it is kept aside, unchanged, and goes into the saved file.");
  if (aside > 1) lines.push(`${aside} entries cannot be read by this version of the booklet; they are kept aside, unchanged, and go into the saved file.`);
  if (foreign === 1) lines.push("1 attempt is of a question this booklet does not have; it is kept as well.");
  if (foreign > 1) lines.push(`${foreign} attempts are of questions this booklet does not have; they are kept as well.`);
  if (progress.problem() === "denied") lines.push("This browser lets the page store nothing (a private window, perhaps): what you mark is held until the page is closed. Save it to a file to keep it.");
  find(".kept-aside").textContent = lines.join(" ");
}

/** @param {string} words */
function paragraph(words) {
  const node = document.createElement("p");
  node.textContent = words;
  return node;
}

find(".progress-list").addEventListener("click", (event) => {
  const button = around(event.target, "[data-practise]");
  if (button) open(button.dataset.practise ?? "", anySeed(), Number(button.dataset.level));
});

find(".progress-export").addEventListener("click", () => {
  progress.save();
  told.textContent = `Saved: ${count(progress.load().length)}${apart(progress.aside())}.`;
});

const box = one(root, ".progress-import input", HTMLInputElement);
box.addEventListener("change", async () => {
  const file = box.files?.[0];
  if (!file) return;
  try {
    const more = await progress.merge(await file.text());
    const words = more.attempts || more.aside
      ? `Read: ${count(more.attempts)}${apart(more.aside)}, added to what was here.`
      : "Everything in this file was here already.";
    told.textContent = more.trouble ? `${words} ${UNSTORED[more.trouble]}` : words;
    release();
    list();
  } catch (problem) {
    told.textContent = sentenceOf(problem);
  }
  box.value = "";
});

/** @param {number} number */
function count(number) {
  return `${number} ${number === 1 ? "attempt" : "attempts"}`;
}

/** @param {number} number */
function apart(number) {
  return number ? `, and ${number} ${number === 1 ? "entry" : "entries"} kept aside` : "";
}

const sure = find(".progress-sure");
find(".progress-wipe").addEventListener("click", () => {
  sure.hidden = false;
  find(".progress-no").focus();
});
find(".progress-no").addEventListener("click", () => {
  sure.hidden = true;
  find(".progress-wipe").focus();
});
find(".progress-yes").addEventListener("click", () => {
  progress.wipe();
  sure.hidden = true;
  told.textContent = "Wiped: nothing is kept here now.";
  find(".progress-wipe").focus();
  release();
  list();
});

progress.onchange(list);
settings.onchange(() => (current ? open(current.question, current.seed, current.level, { focus: false, draw: current.draw }) : fromAddress()));
window.addEventListener("hashchange", fromAddress);
fromAddress();
startRuntime([root], (words) => { status.textContent = words; }).then(list);
