// The forms of a page: what is typed goes to the runtime, the worked answer comes back in its place.
// It knows no physics. Whatever is typed or linked is set as text; only what calc renders is markup.
import * as address from "./address.js";
import { show } from "./address-bar.js";
import { copied } from "./clipboard.js";
import { startRuntime } from "./data-saving.js";
import { around, boxesIn, boxIn, every, first, isBox, one } from "./elements.js";
import { arrange, backsBuilt, countRows, forgetBack, readBack } from "./form-boxes.js";
import { readable, typeset } from "./formulas.js";
import { tell } from "./notice.js";
import { paste } from "./paste.js";
import { advice, codesReady, linkTo } from "./print-link.js";
import { draw, renew } from "./renewed.js";
import { runtime } from "./runtime.js";
import { sentenceOf } from "./sentence.js";
import * as settings from "./settings.js";

/** @typedef {import("./elements.js").Box} Box */
/** @typedef {Desk["solve"]["answered"]} Solved */

/** @type {Map<string, Form>} */
export const forms = new Map();
/** @type {Map<string, string>} */
const renamed = new Map(); // what a question was called when old addresses were made
// The key of a part, and those it had when old addresses were made.
const named = (/** @type {HTMLElement} */ part) => `${part.dataset.part ?? ""} ${part.dataset.former ?? ""}`.split(" ").filter(Boolean);

export class Form {
  turn = 0; // of the answers asked for
  laid = 0; // of the boxes asked for
  /** @type {Promise<unknown> | null} */
  laying = null; // while they are asked for
  part = ""; // the one a copied link asks for
  /** @type {Desk["drawings"]["asked"] | null} */
  undrawn = null; // what was solved, while its figures and the lines of its folded parts are still to come
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  later = undefined;

  /** @param {HTMLFormElement} node */
  constructor(node) {
    this.node = node;
    this.question = node.dataset.question ?? "";
    this.area = one(node.parentElement ?? document, ".answer-area");
    this.whole = one(node, ".problem.whole");
    this.status = one(node, ".status"); // seen
    this.heard = one(node, ".heard"); // heard by a screen reader only
    /** @type {{ answer: Node[], rows: Map<HTMLElement, string>, backs: Record<string, Back>, paste: string, shown: (string | undefined)[] }} */
    this.first = {
      answer: [...this.area.childNodes].map((child) => child.cloneNode(true)),
      rows: new Map(),
      backs: backsBuilt(node),
      paste: first(node, ".pasted")?.textContent ?? "",
      shown: every(node, ".known .fields").slice(0, 1)
        .flatMap((fields) => every(fields, ":scope > *").map((entry) => entry.dataset.field)),
    };
    /** @type {Set<string | undefined>} */
    this.touched = new Set();
    /** @type {Set<string | undefined>} */
    this.mine = new Set(); // boxes whose text is the reader's or a link's, not the example's
    /** @type {Map<string, [typed: string | undefined, full: string]>} */
    this.understood = new Map(); // by box: what was typed, and the same with the unit it was taken in
    for (const table of this.tables()) this.first.rows.set(table, bodyOf(table).innerHTML);
    node.addEventListener("input", ({ target }) => isBox(target) && this.edited(target));
    node.addEventListener("change", ({ target }) => {
      if (isBox(target) && target.matches("select, input[name=find]")) this.edited(target);
    });
    // a choice of how to draw stands beside the drawing; the form holds it
    this.area.addEventListener("change", ({ target }) => {
      if (!(target instanceof HTMLSelectElement && target.matches(".draws"))) return;
      const box = one(this.node, `select[name="${CSS.escape(target.name)}"]`, HTMLSelectElement);
      box.value = target.value;
      this.edited(box);
    });
    node.addEventListener("paste", (event) => paste(this, event));
    node.addEventListener("click", (event) => this.clicked(around(event.target, "button", HTMLButtonElement)));
    // the last part opened is the one a copied link asks for
    this.area.addEventListener("toggle", ({ target }) => {
      if (target instanceof HTMLDetailsElement && target.matches(".part")) this.part = (target.open && target.dataset.part) || "";
    }, true);
    node.addEventListener("submit", (event) => {
      event.preventDefault();
      this.everything();
      this.solve({ announce: true }).then(() => this.firstProblem());
    });
    this.markAsked();
  }

  // --- reading and filling the boxes ---

  // The names of all boxes, as the form has them whatever is on view.
  order() {
    return (this.node.dataset.order ?? "").split(" ");
  }

  tables() {
    return every(this.node, ".entry.table");
  }

  // Where one thing is to be found a pick for each, where several may be, a box to tick for each.
  picks() {
    return every(this.node, 'input[name="find"]', HTMLInputElement);
  }

  // What is to be found where a choice says it, one thing or several: a box to tick for each.
  several() {
    return every(this.node, "fieldset.several").map((node) => ({
      name: node.dataset.field ?? "",
      words: one(node, "legend").firstChild?.textContent?.trim() ?? "",
      ticks: every(node, "input[type=checkbox]", HTMLInputElement),
    }));
  }

  // All that can be ticked or picked to be found.
  ticks() {
    return this.picks().concat(this.several().flatMap(({ ticks }) => ticks));
  }

  wishes() {
    return this.ticks().filter(({ checked }) => checked).map(({ value }) => value).join(",");
  }

  boxes() {
    const order = this.order(); // so that a link is the same too
    return boxesIn(this.node, ".entry:not(.table) > .box > input, .entry:not(.table) > .box > select")
      .sort((before, after) => order.indexOf(before.name) - order.indexOf(after.name));
  }

  // What is to be found: one name, or several with commas between where the question allows it.
  asked() {
    return this.picks().filter((pick) => pick.checked).map((pick) => pick.value).join(",");
  }

  inputs() {
    /** @type {Inputs} */
    const inputs = {};
    for (const { name, ticks } of this.several()) inputs[name] = ticks.filter((tick) => tick.checked).map((tick) => tick.value).join(",");
    for (const box of this.boxes()) inputs[box.name] = box.value;
    for (const table of this.tables()) {
      inputs[table.dataset.field ?? ""] = [...bodyOf(table).rows].map((row) => {
        /** @type {Record<string, string>} */
        const cells = {};
        for (const box of row.querySelectorAll("input")) cells[box.name.slice(box.name.lastIndexOf(".") + 1)] = box.value;
        return cells;
      });
    }
    return inputs;
  }

  // values: text by field name; a table is a list of rows, each a list of cells. Returns a sentence for
  // each thing the link asks for that is not here.
  /**
   * @param {Map<string, string>} linked
   * @param {string} linkedFind
   */
  fill(linked, linkedFind) {
    const { values, find } = this.asNamedNow(linked, linkedFind);
    const remarks = [];
    const names = new Set(every(this.node, ".entry[data-field], fieldset.several").map((entry) => entry.dataset.field));
    for (const name of values.keys()) {
      if (!names.has(name) && !name.includes(".") && !["find", "part", "only"].includes(name)) {
        remarks.push(`The link has a value for “${shortened(name)}”, and this question has no such box. It was left out.`);
      }
    }
    for (const { name, words, ticks } of this.several()) {
      const keys = values.get(name)?.split(",") ?? [];
      const unknown = keys.filter((key) => !ticks.some((tick) => tick.value === key));
      if (unknown.length) remarks.push(`The link has “${shortened(unknown.join(","))}” for “${words}”, which this list does not have. Choose it anew.`);
      for (const tick of ticks) tick.checked = keys.includes(tick.value);
      if (!ticks.some((tick) => tick.checked)) ticks[0].checked = true;
    }
    for (const box of this.boxes()) {
      const text = values.get(box.name);
      if (box instanceof HTMLSelectElement) {
        const option = [...box.options].find((choice) => choice.value === text);
        if (text !== undefined && !option) remarks.push(`The link has “${shortened(text)}” for “${this.words(box)}”, which this list does not have. Choose it anew.`);
        box.value = option ? option.value : box.options[0].value;
      } else box.value = text ?? "";
    }
    for (const table of this.tables()) {
      const text = values.get(table.dataset.field ?? "");
      const rows = text === undefined ? [] : address.textToRows(text);
      const body = bodyOf(table);
      body.replaceChildren();
      while (body.rows.length < Math.max(rows.length, Number(table.dataset.least))) this.addRow(table);
      rows.forEach((cells, index) => {
        body.rows[index].querySelectorAll("input").forEach((box, column) => { box.value = cells[column] ?? ""; });
      });
    }
    for (const pick of this.picks()) pick.checked = find.split(",").includes(pick.value);
    if (find && !this.asked()) remarks.push(`The link asks to find “${shortened(find)}”, which this question cannot. Leave the box to find empty, or pick it.`);
    // What a link brings without a unit is taken as it always was; what is typed may be asked about.
    for (const box of this.texts()) box.toggleAttribute("data-linked", box.value.trim() !== "");
    this.markAsked();
    for (const name of names) this.mine.add(name);
    this.lay();
    return remarks;
  }

  // An address made before a box or a choice was renamed still has the former name.
  /**
   * @param {Map<string, string>} linked
   * @param {string} linkedFind
   */
  asNamedNow(linked, linkedFind) {
    /** @type {Map<string, string>} */
    const former = new Map();
    for (const { dataset: { former: olds, field } } of every(this.node, "[data-field][data-former]")) {
      for (const old of (olds ?? "").split(" ")) former.set(old, field ?? "");
    }
    const values = new Map([...linked].map(([name, text]) => [former.get(name) ?? name, text]));
    for (const option of every(this.node, "option[data-former]", HTMLOptionElement)) {
      const name = around(option, "select", HTMLSelectElement)?.name ?? "";
      if (option.dataset.former?.split(" ").includes(values.get(name) ?? "")) values.set(name, option.value);
    }
    return { values, find: linkedFind.split(",").map((name) => former.get(name) ?? name).join(",") };
  }

  texts() {
    return every(this.node, ".entry input[type=text]", HTMLInputElement);
  }

  /** @param {Box} box */
  words(box) {
    return first(this.node, `label[for="${CSS.escape(box.id)}"]`)?.firstChild?.textContent?.trim() ?? box.name;
  }

  state() {
    const inputs = this.inputs();
    const asked = this.asked().split(",");
    const pairs = [[address.QUESTION, this.question]];
    for (const [name, value] of Object.entries(inputs)) {
      if (asked.includes(name)) continue;
      pairs.push([name, typeof value === "string" ? this.withUnit(name, value) : address.rowsToText(value.map((row, index) =>
        Object.entries(row).map(([column, text]) => this.withUnit(`${name}.${index}.${column}`, text))))]);
    }
    pairs.push(["find", this.asked()], ["part", this.part]);
    return address.write(pairs.concat(settings.pairs()));
  }

  /**
   * @param {string} path
   * @param {string} text
   */
  withUnit(path, text) {
    const [typed, full] = this.understood.get(path) ?? [];
    return full !== undefined && typed === text ? full : text;
  }

  // --- tables ---

  /** @param {HTMLElement} table */
  addRow(table) {
    const row = document.importNode(one(one(table, "template", HTMLTemplateElement).content, "tr"), true);
    bodyOf(table).append(row);
    this.number(table);
    return row;
  }

  /** @param {HTMLElement} table */
  number(table) {
    const body = bodyOf(table);
    [...body.rows].forEach((row, index) => {
      one(row, ".row-number").textContent = String(index + 1);
      for (const node of row.querySelectorAll("[id], [name], [data-field], [aria-describedby]")) {
        for (const name of ["id", "name", "data-field", "aria-describedby"]) {
          const value = node.getAttribute(name);
          if (value) node.setAttribute(name, value.replace(/([.-])(#|\d+)([.-])/, `$1${index}$3`));
        }
      }
      one(row, ".remove-row", HTMLButtonElement).disabled = body.rows.length <= Number(table.dataset.least);
    });
    one(table, ".add-row", HTMLButtonElement).disabled = body.rows.length >= Number(table.dataset.most);
    countRows(this.node, table.dataset.field ?? "", body.rows.length);
  }

  // All cells of a table hold what the reader put there at once.
  /** @param {HTMLElement} table */
  filled(table) {
    for (const cell of [table, ...every(table, "[data-field]")]) {
      this.touched.add(cell.dataset.field);
      this.mine.add(cell.dataset.field);
    }
    for (const box of every(table, "tbody input", HTMLInputElement)) {
      box.removeAttribute("data-linked");
      if (runtime.state !== "ready") forgetBack(box);
    }
    this.solve({ announce: true });
  }

  // --- what the reader does ---

  /** @param {Box} box */
  edited(box) {
    const before = this.wishes();
    const open = this.picks();
    if (box.name === "find") this.touched.delete(box.value);
    else {
      const entry = around(box, "[data-field]");
      if (!entry) return;
      this.touched.add(entry.dataset.field);
      this.mine.add(entry.dataset.field);
      box.removeAttribute("data-linked");
      if (runtime.state !== "ready") forgetBack(box);
      const wished = this.ticks().filter(({ value }) => value === entry.dataset.field);
      if (box.value.trim()) for (const wish of wished) wish.checked = false; // a typed box is no longer one to find
    }
    if (open.length && !this.asked()) {
      const empty = open.filter((pick) => !boxIn(this.node, `[data-field="${CSS.escape(pick.value)}"] > .box > input`)?.value.trim());
      if (empty.length === 1) empty[0].checked = true;
    }
    this.markAsked();
    // What is to be found, and what is chosen, say which boxes are wanted.
    if (this.wishes() !== before || box.type === "radio" || box.type === "checkbox" || (box.tagName === "SELECT" && !around(box, ".entry")?.hidden)) {
      const { turn } = this;
      this.lay().then((changed) => {
        if (changed || turn === this.turn) this.solve({ announce: false });
      });
    } else this.solve({ announce: false });
  }

  // Puts the boxes that lead to what is asked on view, and the others behind their line. Whether a text changed.
  // Asked once at a time; of several changes meanwhile only the last is asked about.
  async lay() {
    const turn = ++this.laid;
    while (this.laying) await this.laying;
    if (turn !== this.laid) return false;
    const { question, inputs, find } = this.request();
    for (const box of this.texts()) { // the example's numbers are no reason to show a box
      if (box.name in inputs && !this.mine.has(box.name)) inputs[box.name] = "";
    }
    const asked = runtime.ask("boxes", { question, inputs, find }).catch(() => null); // solving says what is wrong
    this.laying = asked;
    const reply = await asked;
    this.laying = null;
    return turn === this.laid && reply?.ok ? arrange(this, reply.data.boxes) : false;
  }

  /** @param {HTMLButtonElement | null} button */
  clicked(button) {
    if (!button || button.type === "submit") return;
    const table = around(button, ".entry.table");
    const row = around(button, "tr");
    if (table && button.matches(".add-row")) {
      one(this.addRow(table), "input").focus();
    } else if (table && row && button.matches(".remove-row")) {
      const next = row.nextElementSibling || row.previousElementSibling;
      row.remove();
      this.number(table);
      if (next && bodyOf(table).contains(next)) one(next, "input").focus();
      this.solve({ announce: true });
    } else if (button.matches(".back-to-example")) this.reset();
    else if (button.matches(".copy-link")) this.copyLink();
    else if (button.matches(".pick")) this.pick(button);
    else if (button.dataset.copy === "text" || button.dataset.copy === "latex") this.copyAnswer(button.dataset.copy);
  }

  // One of the readings offered beside a box goes into the box.
  /** @param {HTMLButtonElement} button */
  pick(button) {
    const box = one(around(button, "[data-field]") ?? this.node, "input[type=text]", HTMLInputElement);
    box.value = button.dataset.put ?? "";
    box.focus();
    this.edited(box);
  }

  markAsked() {
    const asked = this.asked().split(",");
    for (const entry of every(this.node, ".known .entry")) {
      entry.classList.toggle("asked", asked.includes(entry.dataset.field ?? ""));
    }
  }

  everything() {
    for (const entry of every(this.node, "[data-field]")) this.touched.add(entry.dataset.field);
  }

  reset() {
    this.turn += 1; // an answer under way is for other numbers
    this.undrawn = null;
    this.node.reset();
    for (const [table, rows] of this.first.rows) {
      bodyOf(table).innerHTML = rows; // as built: this page's own markup
      this.number(table);
      one(table, ".pasted").textContent = this.first.paste;
    }
    for (const box of this.texts()) box.removeAttribute("data-linked");
    this.touched.clear();
    this.mine.clear();
    this.laid += 1;
    arrange(this, this.first.shown);
    readBack(this.node, this.first.backs);
    this.problems([]);
    this.notes([]);
    this.markAsked();
    this.area.replaceChildren(...this.first.answer.map((child) => child.cloneNode(true)));
    this.area.classList.remove("stale");
    this.say("The page's own example again.");
    show("");
    document.dispatchEvent(new CustomEvent("booklet:answer", { detail: { form: this, reply: null } }));
  }

  // From disk a link names the page and no folder: that is the reader's own.
  link() {
    return linkTo(this.state());
  }

  copyLink() {
    this.copy(this.link(), "Copied: a link that opens this page with these numbers.", "Link to these numbers", advice);
  }

  // The answer on screen in another notation ("text" or "latex").
  /** @param {"text" | "latex"} notation */
  async copyAnswer(notation) {
    const reply = await settings.ask("solve", { ...this.request(), as: [notation] }, { near: this.node });
    if (reply.ok) {
      await this.copy(reply.data[notation] ?? "", "Copied: the worked answer.", "The worked answer");
      return;
    }
    this.everything();
    this.say(`There is no answer to copy yet. ${this.remedy(reply, this.problems(reply.errors))}`);
  }

  /**
   * @param {string} text
   * @param {string} done
   * @param {string} label
   */
  async copy(text, done, label, advice = "") {
    this.say(await copied(text, { near: this.status, label, done, advice }));
  }

  // --- asking and showing ---

  /** @returns {QuestionAsked} */
  request() {
    const typed = this.texts().filter((box) => box.value.trim() && !box.hasAttribute("data-linked")).map((box) => box.name);
    return { question: this.question, inputs: this.inputs(), find: this.asked(), settings: settings.current(), typed };
  }

  /** @param {{ announce: boolean }} how */
  async solve({ announce }) {
    const turn = ++this.turn;
    if (runtime.state !== "ready" && runtime.state !== "failed") this.say("Getting the working ready…");
    const typed = new Map(this.texts().map((box) => [box.name, box.value]));
    let reply, request;
    try {
      request = { ...this.request(), opened: this.opened() };
      reply = await settings.ask("solve", { ...request, readback: true, drawn: false }, { channel: this.question, near: this.node });
    } catch (problem) {
      if (turn === this.turn) this.say(sentenceOf(problem));
      return;
    }
    if (turn !== this.turn || !reply) return;
    readBack(this.node, reply.readback ?? {});
    const marked = this.problems(reply.ok ? [] : reply.errors);
    this.notes(reply.ok ? reply.data.notes : []);
    if (!reply.ok) {
      this.area.classList.add("stale");
      this.say(`The working below is for the numbers before. ${this.remedy(reply, marked)}`);
      this.draw(turn);
      return;
    }
    this.understood = new Map(Object.entries(reply.data.understood).map(([path, full]) => [path, [typed.get(path), full]]));
    this.show(reply.data, announce);
    this.undrawn = request;
    this.draw(turn);
  }

  // The keys of the parts that are open, or will be.
  opened() {
    return every(this.area, "details.part[open]").map((part) => part.dataset.part ?? "").concat(this.part || []);
  }

  // Figures and folded parts follow the lines on view, unless the reader types on: then those of the next lines do.
  /** @param {number} turn */
  async draw(turn) {
    if (!this.undrawn) return;
    const reply = await settings.ask("drawings", this.undrawn, { channel: this.question, near: this.node });
    if (turn !== this.turn || reply.superseded) return;
    this.undrawn = null;
    draw(this.area, reply.ok ? reply.data.drawings : {}, reply.ok ? reply.data.parts : {});
    typeset(this.area);
  }

  /**
   * @param {Solved} data
   * @param {boolean} announce
   */
  show(data, announce) {
    const open = new Set(every(this.area, "details.part[open]").map((part) => part.dataset.part));
    const held = this.area.contains(document.activeElement) && around(document.activeElement, "select.draws", HTMLSelectElement)?.name;
    renew(this.area, data.html ?? "");
    this.area.classList.remove("stale");
    for (const part of every(this.area, "details.part", HTMLDetailsElement)) {
      part.open = open.has(part.dataset.part) || named(part).includes(this.part);
    }
    if (held) first(this.area, `select.draws[name="${CSS.escape(held)}"]`)?.focus();
    readable(this.area);
    clearTimeout(this.later);
    this.status.textContent = settings.words();
    this.later = setTimeout(() => {
      this.heard.textContent = data.spoken;
      show(this.state());
    }, announce ? 0 : 700);
    document.dispatchEvent(new CustomEvent("booklet:answer", { detail: { form: this, reply: data } }));
  }

  // A link may ask for one part: it is opened and brought into view.
  toPart() {
    const part = this.part && every(this.area, "[data-part]").find((node) => named(node).includes(this.part));
    if (part) part.scrollIntoView({ block: "start" });
  }

  // Puts each sentence beside its box, and the choices that go with it. Returns how many boxes are marked.
  /** @param {Problem[]} errors */
  problems(errors) {
    for (const problem of every(this.node, ".problem")) {
      problem.hidden = true;
      problem.replaceChildren();
    }
    for (const box of this.node.querySelectorAll("[aria-invalid]")) box.removeAttribute("aria-invalid");
    for (const { field, message, choices } of errors) {
      const entry = field === null ? null : first(this.node, `[data-field="${CSS.escape(field)}"]`);
      const box = entry && boxIn(entry, "input[type=text], select, input[type=checkbox]");
      if (entry && !box?.value.trim() && !this.touched.has(entry.dataset.field)) continue; // not reached yet
      const place = entry ? one(entry, ":scope > .problem") : this.whole;
      place.append(place.hasChildNodes() ? ` ${message}` : message, ...picks(choices));
      place.hidden = false;
      const fold = around(entry, "details", HTMLDetailsElement);
      if (fold) fold.open = true;
      box?.setAttribute("aria-invalid", "true");
    }
    return this.node.querySelectorAll("[aria-invalid]").length;
  }

  // What is to be known of a box although it was answered.
  /** @param {FieldNote[]} told */
  notes(told) {
    for (const note of this.node.querySelectorAll(".unit-note")) note.remove();
    for (const { field, message, choices } of told) {
      const entry = this.node.querySelector(`[data-field="${CSS.escape(field)}"]`);
      if (!entry) continue;
      const note = document.createElement("p");
      note.className = "unit-note";
      note.append(message, ...picks(choices));
      entry.append(note);
    }
  }

  /**
   * What the reader is to do about a refusal.
   * @param {{ errors: Problem[], settings?: boolean }} reply
   * @param {number} marked
   */
  remedy({ errors, settings: setting }, marked) {
    if (setting) return "Put the setting right, above, to go on.";
    if (errors.some(({ choices }) => choices?.length)) return "Answer the question beside the box to go on.";
    if (marked) return `Mend the marked ${marked > 1 ? "boxes" : "box"} to go on.`;
    if (!this.whole.hidden) return "What is in the way stands above the buttons.";
    return "Fill the empty box to go on.";
  }

  firstProblem() {
    first(this.node, "[aria-invalid]")?.focus();
  }

  /** @param {string} words */
  say(words) {
    this.status.textContent = words;
  }
}

/** @param {HTMLElement} table */
function bodyOf(table) {
  return one(table, "tbody", HTMLTableSectionElement);
}

/** @param {Problem["choices"]} choices */
function picks(choices = []) {
  if (!choices.length) return [];
  const line = document.createElement("span");
  line.className = "picks";
  line.append(...choices.map(({ words, text }) => {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "pick";
    button.dataset.put = text;
    button.textContent = words;
    return button;
  }));
  return [line];
}

/** @param {string} text */
function shortened(text) {
  return text.length > 24 ? `${text.slice(0, 24)}…` : text;
}

function openLink() {
  tell([]);
  try {
    const state = address.read(location.hash);
    if (!state || !state.has(address.QUESTION)) return;
    const asked = state.get(address.QUESTION) ?? "";
    const form = forms.get(renamed.get(asked) ?? asked);
    if (!form) throw new Error("This link asks for a question that is not on this page. Look for it in the contents.");
    settings.take(state);
    const remarks = form.fill(state, state.get("find") || "");
    form.everything();
    form.part = state.get("part") || "";
    form.solve({ announce: true }).then(() => form.toPart());
    form.node.scrollIntoView({ block: "start" });
    tell(remarks, { near: form.node });
  } catch (problem) {
    tell([sentenceOf(problem)]);
    document.querySelector(".notice.link-problem")?.scrollIntoView({ block: "center" });
  }
}

// --- over a reload after an update of the site (see carry-over.js) ---

document.addEventListener("booklet:leaving", ({ detail }) => {
  detail.forms = [...forms.values()].filter((form) => form.touched.size).map((form) => [form.question, form.state()]);
});

// kept: [[question, the text of its link], …]
/** @param {[question: string, state: string][]} kept */
function takeUp(kept) {
  for (const [question, text] of kept) {
    const form = forms.get(question);
    if (!form) continue;
    const state = address.read(`#${text}`) ?? new Map();
    form.fill(state, state.get("find") || "");
    form.everything();
    form.solve({ announce: true });
  }
}

// Each form's question is worked a few times unseen while nothing else is to be done, so that the first numbers typed
// are answered as quickly as those after them. Asked turn by turn: what a reader types has its turn between. Not before
// the page has been there for a second: whoever leaves it at once waits for nothing.
async function rehearse() {
  await new Promise((resolve) => setTimeout(resolve, 1000));
  for (const question of forms.keys()) {
    for (let turn = 0, more = true; more; turn++) {
      await idle();
      const reply = await runtime.ask("rehearse", { question, turn });
      more = reply.ok && reply.data.more;
    }
  }
}

/** @returns {Promise<unknown>} */
function idle() {
  return new Promise((resolve) => ("requestIdleCallback" in window ? requestIdleCallback(resolve) : setTimeout(resolve, 200)));
}

// Makes the forms of the page live.
export function startForms() {
  for (const node of every(document, "form.numbers", HTMLFormElement)) {
    const form = new Form(node);
    forms.set(form.question, form);
    const [topic] = form.question.split(".");
    for (const old of node.dataset.former?.split(" ") ?? []) renamed.set(`${topic}.${old}`, form.question);
    node.classList.add("live");
  }
  runtime.onchange((state) => state === "failed" && forms.forEach((form) => form.say(runtime.message)));
  codesReady();
  settings.onchange(() => forms.forEach((form) => form.solve({ announce: false })));
  window.addEventListener("hashchange", openLink);
  openLink();
  takeUp(runtime.kept?.forms ?? []);
  startRuntime([...forms.values()].map(({ node }) => node), (words) => forms.forEach((form) => form.say(words))).then(() => {
    if (settings.words()) forms.forEach((form) => form.turn || form.solve({ announce: false }));
    if (runtime.state === "ready") rehearse();
    else {
      const off = runtime.onchange((state) => {
        if (state !== "ready") return;
        off();
        rehearse();
      });
    }
  });
}
