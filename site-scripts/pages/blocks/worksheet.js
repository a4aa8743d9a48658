// Worksheets: choose, make, print, save. It knows no physics: calc chooses the questions and writes the papers.
// "#paper=coulomb,several-charges&n=6&level=2&seed=41&heading=Forces_1" opens one paper, always the same.

import * as address from "../address.js";
import { show as showAddress } from "../address-bar.js";
import "../carry-over.js";
import { copied } from "../clipboard.js";
import { startRuntime } from "../data-saving.js";
import { around, boxIn, every, first, isBox, one } from "../elements.js";
import { typeset } from "../formulas.js";
import { linkedHere } from "../linked-here.js";
import { pagesOf, paperStyle } from "../page-count.js";
import { paperFonts } from "../paper-fonts.js";
import * as stamps from "../print-link.js";
import { headed, heads } from "../running-heads.js";
import { runtime } from "../runtime.js";
import { sentenceOf } from "../sentence.js";
import * as settings from "../settings.js";
import { forgets } from "../storage.js";

const root = one(document, ".worksheet");
const PAPER = { limit: 60_000 }; // thirty questions are many calculations in one
const STORE = "physics-line-by-line.class";
/** @type {PaperPiece[]} */
const PIECES = ["paper_html", "memo_html"];
const MOST_NAMES = 60;
const LARGEST_SEED = 999_999;
const find = (/** @type {string} */ selector) => one(root, selector);
const form = one(root, ".worksheet-form", HTMLFormElement);
const work = find(".worksheet-work");
const status = one(form, ".status");
const whole = one(form, ".problem.whole");
const tools = find(".worksheet-tools");
const told = one(tools, ".status");
const sheets = find(".sheets");
const input = (/** @type {string} */ name) => one(form, `input[name="${name}"]`, HTMLInputElement);
const choice = (/** @type {string} */ name) => one(form, `select[name="${name}"]`, HTMLSelectElement);
const boxes = {
  count: input("count"), marks: input("marks"), seed: input("seed"), heading: input("heading"),
  level: choice("level"), space: choice("space"), memo: choice("memo"), link: choice("link"),
  names: one(form, 'textarea[name="names"]', HTMLTextAreaElement),
};
const fold = one(root, ".worksheet-class", HTMLDetailsElement); // the fold with the class list
/** @type {string[] | null} */
let named = null; // the questions a link names one by one; null once the reader chooses anew
const NEWEST = root.dataset.draw ?? ""; // the rule by which new papers are drawn; addresses keep theirs
let draw = NEWEST;
/** @type {number | string} */
let own = 0; // the number of a learner's paper that a link asks for
/** @typedef {{ request: PaperAsked, reply: PaperMade }} Paper */
/** @type {Paper[]} */
let papers = []; // what is made: [{request, reply}]; one of them is in the page
/** @typedef {{ stopped: boolean, total: number, told: () => void }} Job */
/** @type {Job | null} */
let job = null; // what goes on: making, saving or setting for print; one at a time, in small slices
/** @type {Promise<void>} */
let showing = Promise.resolve(); // the setting of the paper in the page

stamps.codesReady();

// --- topics and their questions ---

const topics = every(form, ".worksheet-topic").map((node) => ({
  box: one(node, 'input[name="topic"]', HTMLInputElement),
  questions: every(node, 'input[name="question"]', HTMLInputElement),
}));

/** @param {typeof topics[number]} topic */
function level(topic) {
  const ticked = topic.questions.filter((box) => box.checked).length;
  topic.box.checked = ticked === topic.questions.length;
  topic.box.indeterminate = ticked > 0 && !topic.box.checked;
}

for (const topic of topics) {
  topic.box.addEventListener("change", () => topic.questions.forEach((box) => { box.checked = topic.box.checked; }));
  for (const box of topic.questions) box.addEventListener("change", () => level(topic));
}

function entries() {
  return topics.flatMap((topic) => (topic.box.checked
    ? [topic.box.value]
    : topic.questions.filter((box) => box.checked).map((box) => box.value)));
}

/** @param {string[]} keys */
function tick(keys) {
  const wanted = new Set(keys.map((key) => key.split(":")[0]));
  for (const topic of topics) {
    for (const box of topic.questions) box.checked = wanted.has(topic.box.value) || wanted.has(box.value);
    level(topic);
  }
}

// --- what is asked for ---

function listed() {
  return boxes.names.value.normalize("NFC").split("\n").map((line) => line.trim().replace(/\s+/g, " ")).filter(Boolean);
}

function names() {
  return [...new Set(listed())];
}

/** @returns {PaperAsked} */
function request() {
  const chosen = named
    ? { topics: named, count: "", marks: "" }
    : { topics: entries(), count: boxes.count.value, marks: boxes.marks.value };
  return {
    ...chosen, level: boxes.level.value, seed: boxes.seed.value, own, draw, heading: boxes.heading.value,
    space: boxes.space.value, memo: boxes.memo.value, settings: settings.current(),
  };
}

// The link of a paper names its questions, so that questions added later cannot change it.
/** @param {Paper} paper */
function state({ request: asked, reply }) {
  const pairs = [
    ["paper", reply.named.join(",")], ["level", String(reply.level)], ["seed", String(reply.seed)],
    ["own", reply.own ? String(reply.own) : ""], ["draw", String(reply.draw)], ["heading", asked.heading.trim().replace(/\s+/g, "_")],
    ["space", asked.space === "none" ? "" : asked.space],
    ["memo", asked.memo === "short" ? "" : asked.memo],
  ];
  return address.write(pairs.concat(Object.entries(asked.settings).map(([name, text]) => [`set.${name}`, text])));
}

/** @param {Paper} paper */
function stamp(paper) {
  const { seed, level: hard, questions } = paper.reply;
  const words = `Paper ${seed}, ${hard === "rising" ? "rising from easier to harder" : `level ${hard}`}, ${plural(questions, "question")}.`;
  return stamps.stamp(state(paper), words);
}

/**
 * @param {number} number
 * @param {string} word
 */
function plural(number, word) {
  return `${number} ${word}${number === 1 ? "" : "s"}`;
}

// --- long work: in slices, with a bar and a way to stop it ---

// Lets what the reader types go first. Messages are not slowed down in a tab at the back, as timers are.
const channel = new MessageChannel();
/** @type {(() => void)[]} */
const resting = [];
channel.port1.onmessage = () => resting.shift()?.();
/** @returns {Promise<void>} */
function breathe() {
  return new Promise((resolve) => {
    resting.push(resolve);
    channel.port2.postMessage(null);
  });
}

const bar = one(work, "progress", HTMLProgressElement);

/** @param {number} total */
function begin(total) {
  end(job);
  /** @type {Job} */
  const mine = { stopped: false, total, told: () => {} };
  job = mine;
  bar.max = total;
  return mine;
}

/**
 * @param {Job} mine
 * @param {number} done
 * @param {string} words
 */
function step(mine, done, words) {
  if (mine !== job) return;
  work.hidden = mine.total < 2;
  bar.value = done;
  one(work, ".doing").textContent = words;
}

/** @param {Job | null} mine */
function end(mine) {
  if (!mine || mine !== job) return;
  mine.stopped = true;
  job = null;
  work.hidden = true;
}

one(work, ".stop").addEventListener("click", () => {
  const mine = job;
  end(mine);
  mine?.told();
});

// --- making ---

async function make() {
  const learners = own ? [] : names();
  const mine = begin(learners.length || 1);
  problems([]);
  if (learners.length > MOST_NAMES) {
    end(mine);
    problems([{ field: "learner", message: `The list has ${learners.length} names; at most ${MOST_NAMES} papers are made at once. Make them in two goes.` }]);
    return;
  }
  const unkept = keepNames();
  status.textContent = runtime.state === "ready" ? "Making the paper…" : "Getting the working ready…";
  const asked = request();
  const common = await settings.ask("paper", learners.length ? { ...asked, as: [] } : asked, PAPER);
  if (mine.stopped) return;
  if (!common.ok) return refused(mine, common.errors, common.settings);
  asked.settings = settings.current(); // without what could not be used
  /** @type {Paper[]} */
  const made = [];
  mine.told = () => {
    status.textContent = made.length
      ? `Stopped: ${plural(made.length, "paper")} of ${learners.length} made, and kept below. ${common.data.said}`
      : "Stopped before a paper was made.";
  };
  for (const learner of learners.length ? learners : [""]) {
    /** @type {Reply<"paper">} */
    let reply = common;
    let theirs = asked;
    if (learners.length) {
      step(mine, made.length, `Making paper ${made.length + 1} of ${learners.length}`);
      if (!made.length) status.textContent = "Making the papers…";
      theirs = { ...asked, topics: common.data.named, count: "", marks: "", learner };
      reply = await runtime.ask("paper", theirs, PAPER);
      if (mine.stopped) return;
      if (!reply.ok) return refused(mine, reply.errors);
    }
    if (!made.length) {
      await stamps.codesReady();
      if (mine.stopped) return;
      papers = made; // from here on these are the papers of the page, stopped or not
      told.textContent = "";
      showAddress(state({ request: asked, reply: common.data }));
    }
    made.push({ request: theirs, reply: reply.data });
    list();
    if (made.length === 1) show(0);
  }
  await showing;
  if (mine.stopped) return;
  end(mine);
  const twice = learners.length && learners.length < listed().length ? " A name that stands twice in the list gets one paper: add an initial to tell two learners apart." : "";
  const several = learners.length ? ` ${plural(made.length, "paper")}, each with numbers of its own.${twice}` : "";
  status.textContent = [common.data.said + several, unkept, settings.words()].filter(Boolean).join(" ");
}

/**
 * @param {Job} mine
 * @param {Problem[]} errors
 * @param {boolean} setting
 */
function refused(mine, errors, setting = false) {
  end(mine);
  const remedy = setting ? "Put the setting right, above, to go on." : "Mend what is marked to go on.";
  status.textContent = papers.length ? `The paper below is the one made before. ${remedy}` : setting ? remedy : "";
  problems(errors);
}

// --- showing one of them ---

const shown = one(tools, '[name="shown"]', HTMLSelectElement);
const chooser = around(shown, ".entry");
const before = one(tools, ".before", HTMLButtonElement);
const after = one(tools, ".after", HTMLButtonElement);

// The chooser, which has a line for each paper made.
function list() {
  if (papers.length <= 1) shown.replaceChildren();
  while (shown.options.length < papers.length) {
    const number = shown.options.length;
    shown.add(new Option(`${number + 1}: ${papers[number].request.learner || "paper"}`, String(number)));
  }
  if (chooser) chooser.hidden = papers.length < 2;
  turned();
  tools.hidden = !papers.length;
}

function turned() {
  const at = shown.selectedIndex;
  before.disabled = at < 1;
  after.disabled = at + 1 >= papers.length;
}

/** @param {number} number */
function show(number) {
  if (papers.length > 1) shown.selectedIndex = number;
  turned();
  showing = mount(papers[number]);
  return showing;
}

// Puts one paper and its memo into the page, question by question.
let mounting = 0;
/** @param {Paper} paper */
async function mount(paper) {
  const mine = ++mounting;
  sheets.replaceChildren();
  for (const piece of PIECES) {
    const { article, blocks } = taken(paper, piece);
    sheets.append(article);
    for (const block of blocks) {
      await breathe();
      if (mine !== mounting) return;
      article.append(block);
      typeset(block);
    }
    if (linked(piece)) article.append(stamp(paper));
  }
}

// An article of calc's, and the blocks it is made of, not yet in the page.
/**
 * @param {Paper} paper
 * @param {PaperPiece} piece
 */
function taken(paper, piece) {
  const holder = document.createElement("template");
  holder.innerHTML = paper.reply[piece] ?? ""; // rendered and escaped by calc
  const whole = one(holder.content, "article");
  const article = document.importNode(whole, false);
  article.style.page = pageName(paper, piece); // its running head: see running-heads.js
  return { article, blocks: [...whole.children] };
}

// The name under which the printed pages of a piece go.
/**
 * @param {Paper} paper
 * @param {PaperPiece} piece
 */
function pageName(paper, piece) {
  return `${piece === "paper_html" ? "paper" : "memo"}-${papers.indexOf(paper) + 1}`;
}

// What stands in the margin of every printed page: whose it is, which paper, which page of how many of its own.
function runningHeads() {
  const number = (/** @type {Paper} */ { reply }) => `Paper ${reply.seed}${reply.own ? `/${reply.own}` : ""}`;
  const entries = wanted().map(([paper, name]) => ({
    name: pageName(paper, name),
    left: paper.request.learner || title(),
    middle: name === "paper_html" ? number(paper) : `${number(paper)}, memo`,
    count: pageCount(paper, name),
  }));
  const table = answerTable();
  if (table) entries.push({ name: "answers", left: title(), middle: `Paper ${papers[0].reply.seed}, answers`, count: pagesOf(table) });
  return heads(entries, entries[0].name);
}

// Counted once for each paper, and again where the link is put elsewhere: counting sixty long sheets takes a while.
/** @type {WeakMap<Paper, Map<string, number>>} */
const counts = new WeakMap();
/**
 * @param {Paper} paper
 * @param {PaperPiece} piece
 */
function pageCount(paper, piece) {
  const kind = `${piece}/${linked(piece)}`;
  const known = counts.get(paper) ?? new Map();
  counts.set(paper, known);
  const counted = known.get(kind);
  if (counted !== undefined) return counted;
  const { article, blocks } = taken(paper, piece);
  article.append(...blocks, ...(linked(piece) ? [stamp(paper)] : []));
  typeset(article);
  const count = pagesOf(article);
  known.set(kind, count);
  return count;
}

// The answers of a class, a table for each question, a line for each learner; "" for one paper. calc writes the pieces.
// Learners whose question has other parts than that of the others have a table of their own.
/** @param {"html" | FileNotation} notation */
function answersIn(notation) {
  if (papers.length < 2 || piece() === "paper") return "";
  const lines = papers.flatMap(({ reply }) => reply.answers[notation].questions).sort((one, other) => one.number - other.number);
  const tables = new Map();
  for (const { number, head, row, foot } of lines) {
    const table = tables.get(`${number} ${head}`) ?? { head, rows: "", foot };
    table.rows += row;
    tables.set(`${number} ${head}`, table);
  }
  return papers[0].reply.answers[notation].title
    + [...tables.values()].map(({ head, rows, foot }) => head + rows + foot).join("");
}

function answerTable() {
  const text = answersIn("html");
  if (!text) return null;
  const article = document.createElement("article");
  article.className = "paper memo answer-table";
  article.style.page = "answers";
  article.innerHTML = text; // rendered and escaped by calc
  return article;
}

// Whether the link stands on this piece.
/** @param {PaperPiece} piece */
function linked(piece) {
  return boxes.link.value === "both" || (boxes.link.value === "memo" && piece === "memo_html");
}

shown.addEventListener("change", () => show(shown.selectedIndex));
before.addEventListener("click", () => show(shown.selectedIndex - 1));
after.addEventListener("click", () => show(shown.selectedIndex + 1));

/** @param {Problem[]} errors */
function problems(errors) {
  for (const problem of every(form, ".problem")) {
    problem.hidden = true;
    problem.textContent = "";
  }
  for (const box of form.querySelectorAll("[aria-invalid]")) box.removeAttribute("aria-invalid");
  for (const { field, message } of errors) {
    const entry = field === null ? null : first(form, `[data-field="${CSS.escape(field)}"]`);
    const place = (entry && first(entry, ":scope > .problem")) || whole;
    place.textContent = place.textContent ? `${place.textContent} ${message}` : message;
    place.hidden = false;
    const box = entry && boxIn(entry, "input[type=text], select, textarea");
    if (field === "learner") fold.open = true;
    box?.setAttribute("aria-invalid", "true");
  }
  first(form, "[aria-invalid]")?.focus();
}

// --- the class list stays here ---

// Returns a sentence where the list could not be stored.
function keepNames() {
  let stored = !forgets();
  try {
    if (boxes.names.value.trim()) localStorage.setItem(STORE, boxes.names.value);
    else localStorage.removeItem(STORE);
  } catch {
    stored = false;
  }
  return stored || !boxes.names.value.trim() ? "" : "This browser does not store the class list: it holds until the page is closed.";
}

find(".wipe-class").addEventListener("click", () => {
  boxes.names.value = "";
  keepNames();
  own = 0;
  // No name may be left on the page either.
  if (papers.some(({ request: asked }) => asked.learner)) {
    end(job);
    mounting += 1;
    papers = [];
    sheets.replaceChildren();
    list();
  }
  status.textContent = "The class list is wiped.";
});

// --- printing and saving: every paper, not the one in the page alone ---

const which = one(tools, '[name="piece"]', HTMLSelectElement);

function piece() {
  return which.value;
}

which.addEventListener("change", () => { sheets.dataset.piece = piece(); });

// [[paper, "paper_html" or "memo_html"], …]: first every paper, then every memo
/** @returns {[Paper, PaperPiece][]} */
function wanted() {
  const pieces = PIECES.filter((name) => piece() === "both" || name === `${piece()}_html`);
  return pieces.flatMap((name) => papers.map((paper) => /** @type {[Paper, PaperPiece]} */ ([paper, name])));
}

// More papers than the one in the page stand in a container of their own while they are printed.
const printed = document.createElement("div");
printed.className = "sheets printed";
root.append(printed);
let prepared = false;

function unprinted() {
  prepared = false;
  printed.replaceChildren();
}

find(".print").addEventListener("click", async () => {
  await showing;
  if (papers.length > 1) {
    const pieces = wanted();
    const mine = begin(pieces.length);
    mine.told = () => {
      unprinted();
      told.textContent = "Stopped: nothing was printed. The papers are kept.";
    };
    unprinted();
    printed.dataset.piece = piece();
    for (const [index, [paper, name]] of pieces.entries()) {
      step(mine, index, `Setting sheet ${index + 1} of ${pieces.length} for print`);
      const { article, blocks } = taken(paper, name);
      for (const block of blocks) {
        await breathe();
        if (mine.stopped) return;
        article.append(block);
        typeset(block);
      }
      if (linked(name)) article.append(stamp(paper));
      printed.append(article);
      pageCount(paper, name);
    }
    printed.append(answerTable() ?? "");
    end(mine);
    prepared = true;
  }
  window.print();
});

// The browser's own print command does not wait: what is not prepared is set in one go.
window.addEventListener("beforeprint", () => {
  if (prepared || papers.length < 2) return;
  printed.dataset.piece = piece();
  for (const [paper, name] of wanted()) {
    const { article, blocks } = taken(paper, name);
    article.append(...blocks, ...(linked(name) ? [stamp(paper)] : []));
    printed.append(article);
  }
  printed.append(answerTable() ?? "");
});
window.addEventListener("beforeprint", () => { if (papers.length) headed(runningHeads()); });
window.addEventListener("afterprint", unprinted);

// The papers as a document of their own: style and fonts inside, formulas as calc wrote them, which browsers set without
// a script.
/** @param {Job} mine */
async function asDocument(mine) {
  const fonts = await paperFonts();
  const page = document.implementation.createHTMLDocument(title());
  page.documentElement.lang = "en";
  const charset = page.createElement("meta");
  charset.setAttribute("charset", "utf-8");
  const size = page.createElement("meta");
  size.name = "viewport";
  size.content = "width=device-width,initial-scale=1";
  const texts = [];
  for (const [index, [paper, name]] of wanted().entries()) {
    step(mine, index, `Writing sheet ${index + 1} of ${mine.total}`);
    pageCount(paper, name);
    const { article, blocks } = taken(paper, name);
    const [open, close] = article.outerHTML.split(/(?=<\/[a-z]+>$)/);
    texts.push(open);
    // Written block by block: a whole sheet at once would hold up typing.
    for (const block of blocks) {
      if (mine.stopped) return null;
      texts.push(block.outerHTML);
      await breathe();
    }
    if (linked(name)) texts.push(stamp(paper).outerHTML);
    texts.push(close);
  }
  const style = page.createElement("style");
  style.textContent = `${fonts}\n${paperStyle()}\n${runningHeads()}`;
  page.head.prepend(charset, size);
  page.head.append(style);
  return [
    `<!doctype html>\n<html lang="en">${page.head.outerHTML}<body class="saved"><div class="sheets" data-piece="${piece()}">`,
    ...texts, answerTable()?.outerHTML ?? "", "</div></body></html>\n",
  ];
}

function title() {
  return papers[0].request.heading.trim() || "Worksheet";
}

// Markdown and LaTeX come from calc; several papers become one file.
/**
 * @param {FileNotation} notation
 * @param {Job} mine
 */
async function inNotation(notation, mine) {
  /** @type {(FileNotation | `${FileNotation}_memo`)[]} */
  const names = piece() === "memo" ? [] : [notation];
  if (piece() !== "paper") names.push(`${notation}_memo`);
  /** @type {PaperMade[]} */
  const replies = [];
  for (const { request: asked } of papers) {
    step(mine, replies.length, `Writing paper ${replies.length + 1} of ${papers.length}`);
    const reply = await runtime.ask("paper", { ...asked, as: names }, PAPER);
    if (mine.stopped) return null;
    if (!reply.ok) throw new Error(reply.errors.map((error) => error.message).join(" "));
    replies.push(reply.data);
  }
  const texts = names.flatMap((name) => replies.map((reply) => reply[name] ?? ""));
  const answers = [answersIn(notation)].filter(Boolean);
  if (notation === "markdown") return [[...texts, ...answers].join("\n---\n\n")];
  const [first, last] = ["\\begin{document}\n", "\\end{document}\n"];
  const bodies = texts.map((text) => text.slice(text.indexOf(first) + first.length, text.lastIndexOf(last)));
  bodies.push(...answers);
  return [texts[0].slice(0, texts[0].indexOf(first)) + first + bodies.join("\\newpage\n") + last];
}

const ENDS = { html: ["html", "text/html"], markdown: ["md", "text/markdown"], latex: ["tex", "text/x-tex"] };

/** @param {keyof typeof ENDS} notation */
async function save(notation) {
  const [ending, kind] = ENDS[notation];
  const mine = begin(notation === "html" ? wanted().length : papers.length);
  mine.told = () => { told.textContent = "Stopped: nothing was saved. The papers are kept."; };
  told.textContent = "Writing the file…";
  let texts;
  try {
    texts = notation === "html" ? await asDocument(mine) : await inNotation(notation, mine);
  } catch (problem) {
    end(mine);
    told.textContent = sentenceOf(problem);
    return;
  }
  if (mine.stopped || !texts) return;
  end(mine);
  const stem = title().toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "") || "worksheet";
  const anchor = document.createElement("a");
  anchor.href = URL.createObjectURL(new Blob(texts, { type: `${kind};charset=utf-8` }));
  anchor.download = `${stem}-${papers[0].reply.seed}.${ending}`;
  document.body.append(anchor);
  anchor.click();
  anchor.remove();
  setTimeout(() => URL.revokeObjectURL(anchor.href), 10_000);
  told.textContent = `Saved as ${anchor.download}.`;
}

for (const notation of /** @type {const} */ (["html", "markdown", "latex"])) {
  one(tools, `[data-save="${notation}"]`).addEventListener("click", () => save(notation));
}

find(".copy-link").addEventListener("click", async () => {
  // The common paper's link: a learner's own stands on that paper.
  const { request: asked, reply } = papers[0];
  const text = stamps.linkTo(state({ request: asked, reply: asked.learner ? { ...reply, own: 0 } : reply }));
  told.textContent = await copied(text, {
    near: told, label: "Link to this paper", done: "Copied: a link that opens this very paper and its memo.", advice: stamps.advice,
  });
});

// --- what the reader does ---

form.addEventListener("submit", (event) => {
  event.preventDefault();
  make();
});
form.addEventListener("change", ({ target }) => {
  const name = isBox(target) ? target.name : "";
  if (["topic", "question", "count", "marks", "level"].includes(name)) {
    named = null;
    draw = NEWEST;
  }
  if (["topic", "question", "count", "marks", "level", "seed", "names"].includes(name)) own = 0;
  if (name === "link" && papers.length) show(Math.max(0, shown.selectedIndex));
});
find(".another").addEventListener("click", () => {
  boxes.seed.value = String(1 + Math.floor(Math.random() * LARGEST_SEED));
  named = null;
  own = 0;
  draw = NEWEST;
  make();
});
settings.onchange(() => (papers.length ? make() : fromAddress()));

function fromAddress() {
  const linked = linkedHere("paper");
  if (!linked) return;
  const keys = (linked.get("paper") ?? "").split(",").filter(Boolean);
  const free = linked.has("n") || linked.has("marks") || keys.some((key) => !key.includes("."));
  tick(keys);
  named = free ? null : keys;
  own = linked.get("own") || 0;
  draw = linked.get("draw") || "1";
  boxes.count.value = free ? linked.get("n") || "" : String(keys.length);
  boxes.marks.value = linked.get("marks") || "";
  boxes.seed.value = linked.get("seed") || "1";
  boxes.heading.value = (linked.get("heading") || "").replaceAll("_", " ");
  for (const name of /** @type {const} */ (["level", "space", "memo"])) {
    const value = linked.get(name);
    boxes[name].value = value ?? boxes[name].options[0].value;
    if (boxes[name].selectedIndex < 0) {
      boxes[name].selectedIndex = 0;
      problems([{ field: name, message: "The link asks for something this list does not have. Choose here, then make the paper." }]);
      return;
    }
  }
  const unknown = free && !entries().length;
  if (unknown) named = keys; // calc says what there is
  make();
}

try {
  boxes.names.value = localStorage.getItem(STORE) || "";
  fold.open = boxes.names.value !== "";
} catch {
  // nothing was kept
}
if (!entries().length && topics.length) tick([topics[0].box.value]);
window.addEventListener("hashchange", fromAddress);
fromAddress();
startRuntime([form], (words) => { status.textContent = words; });
