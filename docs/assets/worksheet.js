// Worksheets: choose, make, print, save. It knows no physics: calc chooses the questions and writes the papers.
// "#paper=coulomb,several-charges&n=6&level=2&seed=41&heading=Forces_1" opens one paper, always the same.
(function () {
  "use strict";

  const root = document.querySelector(".worksheet");
  if (!root) return;
  const runtime = window.bookletRuntime;
  const address = window.bookletAddress;
  const settings = window.bookletSettings;
  const stamps = window.bookletPrintLink;
  const STORE = "physics-line-by-line.class";
  const MOST_NAMES = 60;
  const LARGEST_SEED = 999_999;
  const find = (selector) => root.querySelector(selector);
  const form = find(".worksheet-form");
  const status = form.querySelector(".status");
  const whole = form.querySelector(".problem.whole");
  const tools = find(".worksheet-tools");
  const told = tools.querySelector(".status");
  const sheets = find(".sheets");
  const boxes = form.elements;
  let named = null; // the questions a link names one by one; null once the reader chooses anew
  let own = 0; // the number of a learner's paper that a link asks for
  let papers = []; // what is on screen: [{request, reply}]
  let turn = 0;

  runtime.start();

  // --- topics and their questions ---

  const topics = [...form.querySelectorAll(".worksheet-topic")].map((node) => ({
    box: node.querySelector('input[name="topic"]'),
    questions: [...node.querySelectorAll('input[name="question"]')],
  }));

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

  function request() {
    const chosen = named
      ? { topics: named, count: "", marks: "" }
      : { topics: entries(), count: boxes.count.value, marks: boxes.marks.value };
    return {
      ...chosen, level: boxes.level.value, seed: boxes.seed.value, own, heading: boxes.heading.value,
      space: boxes.space.value, settings: settings.current(),
    };
  }

  // The link of a paper names its questions, so that questions added later cannot change it.
  function state(reply) {
    const pairs = [
      ["paper", reply.named.join(",")], ["level", String(reply.level)], ["seed", String(reply.seed)],
      ["own", reply.own ? String(reply.own) : ""], ["heading", boxes.heading.value.trim().replace(/\s+/g, "_")],
      ["space", boxes.space.value === "none" ? "" : boxes.space.value],
    ];
    return address.write(pairs.concat(settings.pairs()));
  }

  function link(reply) {
    return `${location.href.split("#")[0]}#${state(reply)}`;
  }

  // --- making ---

  async function make() {
    const mine = ++turn;
    const learners = own ? [] : names();
    problems([]);
    if (learners.length > MOST_NAMES) {
      problems([{ field: "learner", message: `The list has ${learners.length} names; at most ${MOST_NAMES} papers are made at once. Make them in two goes.` }]);
      return;
    }
    keepNames();
    status.textContent = runtime.state === "ready" ? "Making the paper…" : "Getting the working ready…";
    const asked = request();
    const common = await settings.ask("paper", learners.length ? { ...asked, as: [] } : asked);
    if (mine !== turn) return;
    if (!common.ok) return refused(common.errors, common.settings);
    asked.settings = settings.current(); // without what could not be used
    const made = learners.length ? [] : [{ request: asked, reply: common.data }];
    for (const learner of learners) {
      status.textContent = `Making paper ${made.length + 1} of ${learners.length}…`;
      const theirs = { ...asked, topics: common.data.named, count: "", marks: "", learner };
      const reply = await runtime.ask("paper", theirs);
      if (mine !== turn) return;
      if (!reply.ok) return refused(reply.errors);
      made.push({ request: theirs, reply: reply.data });
    }
    await stamps.ready;
    if (mine !== turn) return;
    papers = made;
    show();
    const twice = learners.length && learners.length < listed().length ? " A name that stands twice in the list gets one paper: add an initial to tell two learners apart." : "";
    const several = learners.length ? ` ${learners.length} papers, each with numbers of its own.${twice}` : "";
    status.textContent = [common.data.said + several, settings.words()].filter(Boolean).join(" ");
    told.textContent = "";
    address.show(state(common.data));
  }

  function refused(errors, setting = false) {
    const remedy = setting ? "Put the setting right, above, to go on." : "Mend what is marked to go on.";
    status.textContent = papers.length ? `The paper below is the one made before. ${remedy}` : setting ? remedy : "";
    problems(errors);
  }

  function show() {
    const nodes = ["paper_html", "memo_html"].flatMap((piece) => papers.map(({ reply }) => {
      const holder = document.createElement("template");
      holder.innerHTML = reply[piece]; // rendered and escaped by calc
      const sheet = holder.content.firstElementChild;
      if (boxes.link.value === "both" || (boxes.link.value === "memo" && piece === "memo_html")) sheet.append(stamps.stamp(link(reply)));
      return sheet;
    }));
    sheets.replaceChildren(...nodes);
    window.bookletMaths?.typeset(sheets);
    tools.hidden = false;
  }

  function problems(errors) {
    for (const problem of form.querySelectorAll(".problem")) {
      problem.hidden = true;
      problem.textContent = "";
    }
    for (const box of form.querySelectorAll("[aria-invalid]")) box.removeAttribute("aria-invalid");
    for (const { field, message } of errors) {
      const entry = field === null ? null : form.querySelector(`[data-field="${CSS.escape(field)}"]`);
      const place = entry?.querySelector(":scope > .problem") || whole;
      place.textContent = place.textContent ? `${place.textContent} ${message}` : message;
      place.hidden = false;
      const box = entry?.querySelector("input[type=text], select, textarea");
      if (field === "learner") find(".worksheet-class").open = true;
      box?.setAttribute("aria-invalid", "true");
    }
    form.querySelector("[aria-invalid]")?.focus();
  }

  // --- the class list stays here ---

  function keepNames() {
    try {
      if (boxes.names.value.trim()) localStorage.setItem(STORE, boxes.names.value);
      else localStorage.removeItem(STORE);
    } catch {
      // a browser that stores nothing: the list holds until the page is closed
    }
  }

  find(".wipe-class").addEventListener("click", () => {
    boxes.names.value = "";
    keepNames();
    own = 0;
    // No name may be left on the page either.
    if (papers.some(({ request: asked }) => asked.learner)) {
      papers = [];
      sheets.replaceChildren();
      tools.hidden = true;
    }
    status.textContent = "The class list is wiped.";
  });

  // --- printing and saving ---

  function piece() {
    return tools.querySelector("select").value;
  }

  tools.querySelector("select").addEventListener("change", () => { sheets.dataset.piece = piece(); });
  find(".print").addEventListener("click", () => window.print());

  // The papers as a document of their own: style inside, formulas as MathML, which browsers set without a script.
  function asDocument() {
    const copy = sheets.cloneNode(true);
    for (const node of copy.querySelectorAll(piece() === "both" ? ".nothing" : piece() === "paper" ? ".memo" : ".paper:not(.memo)")) node.remove();
    for (const node of copy.querySelectorAll(".tex[data-tex]")) {
      const tex = node.dataset.tex;
      node.innerHTML = window.katex.renderToString(tex, { output: "mathml", throwOnError: false, trust: false, strict: "ignore" });
      node.querySelector("annotation")?.remove();
      if (node.classList.contains("display")) node.querySelector("math")?.setAttribute("displaystyle", "true");
      for (const name of ["data-tex", "tabindex", "role", "aria-label"]) node.removeAttribute(name);
    }
    const page = document.implementation.createHTMLDocument(title());
    page.documentElement.lang = "en";
    const charset = page.createElement("meta");
    charset.setAttribute("charset", "utf-8");
    const size = page.createElement("meta");
    size.name = "viewport";
    size.content = "width=device-width,initial-scale=1";
    const style = page.createElement("style");
    style.textContent = document.getElementById("paper-style").textContent;
    page.head.prepend(charset, size);
    page.head.append(style);
    page.body.className = "saved";
    page.body.append(page.adoptNode(copy));
    return `<!doctype html>\n${page.documentElement.outerHTML}\n`;
  }

  function title() {
    return boxes.heading.value.trim() || "Worksheet";
  }

  // Markdown and LaTeX come from calc; several papers become one file.
  async function inNotation(notation) {
    const wanted = { both: [notation, `${notation}_memo`], paper: [notation], memo: [`${notation}_memo`] }[piece()];
    const replies = [];
    for (const { request: asked } of papers) {
      const reply = await runtime.ask("paper", { ...asked, as: wanted });
      if (!reply.ok) throw new Error(reply.errors.map((error) => error.message).join(" "));
      replies.push(reply.data);
    }
    const texts = wanted.flatMap((name) => replies.map((reply) => reply[name]));
    if (notation === "markdown") return texts.join("\n---\n\n");
    const [begin, end] = ["\\begin{document}\n", "\\end{document}\n"];
    const bodies = texts.map((text) => text.slice(text.indexOf(begin) + begin.length, text.lastIndexOf(end)));
    return texts[0].slice(0, texts[0].indexOf(begin)) + begin + bodies.join("\\newpage\n") + end;
  }

  async function save(notation) {
    const ends = { html: ["html", "text/html"], markdown: ["md", "text/markdown"], latex: ["tex", "text/x-tex"] };
    const [end, kind] = ends[notation];
    told.textContent = "Writing the file…";
    let text;
    try {
      text = notation === "html" ? asDocument() : await inNotation(notation);
    } catch (problem) {
      told.textContent = problem.message;
      return;
    }
    const stem = title().toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "") || "worksheet";
    const anchor = document.createElement("a");
    anchor.href = URL.createObjectURL(new Blob([text], { type: `${kind};charset=utf-8` }));
    anchor.download = `${stem}-${boxes.seed.value.trim() || "0"}.${end}`;
    document.body.append(anchor);
    anchor.click();
    anchor.remove();
    setTimeout(() => URL.revokeObjectURL(anchor.href), 10_000);
    told.textContent = `Saved as ${anchor.download}.`;
  }

  for (const button of tools.querySelectorAll("[data-save]")) button.addEventListener("click", () => save(button.dataset.save));

  find(".copy-link").addEventListener("click", async () => {
    // The common paper's link: a learner's own stands on that paper.
    const text = link({ ...papers[0].reply, own });
    tools.querySelector(".copy-box")?.remove();
    try {
      await navigator.clipboard.writeText(text);
      told.textContent = "Copied: a link that opens this very paper and its memo.";
    } catch {
      // Clipboards are refused on some pages, those from disk among them.
      told.textContent = "Copy the marked link below.";
      const box = document.createElement("textarea");
      box.className = "copy-box";
      box.readOnly = true;
      box.rows = 3;
      box.value = text;
      box.setAttribute("aria-label", "Link to this paper");
      told.after(box);
      box.focus();
      box.select();
    }
  });

  // --- what the reader does ---

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    make();
  });
  form.addEventListener("change", (event) => {
    const name = event.target.name;
    if (["topic", "question", "count", "marks", "level"].includes(name)) named = null;
    if (["topic", "question", "count", "marks", "level", "seed", "names"].includes(name)) own = 0;
    if (name === "link" && papers.length) show();
  });
  find(".another").addEventListener("click", () => {
    boxes.seed.value = String(1 + Math.floor(Math.random() * LARGEST_SEED));
    named = null;
    own = 0;
    make();
  });
  settings.onchange(() => (papers.length ? make() : fromAddress()));

  function fromAddress() {
    let linked;
    try {
      linked = address.read(location.hash);
    } catch (problem) {
      address.tell([problem.message]);
      return;
    }
    address.tell([]);
    if (!linked?.has("paper")) return;
    settings.take(linked);
    const keys = linked.get("paper").split(",").filter(Boolean);
    const free = linked.has("n") || linked.has("marks") || keys.some((key) => !key.includes("."));
    tick(keys);
    named = free ? null : keys;
    own = linked.get("own") || 0;
    boxes.count.value = free ? linked.get("n") || "" : String(keys.length);
    boxes.marks.value = linked.get("marks") || "";
    boxes.seed.value = linked.get("seed") || "1";
    boxes.heading.value = (linked.get("heading") || "").replaceAll("_", " ");
    for (const name of ["level", "space"]) {
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
    find(".worksheet-class").open = boxes.names.value !== "";
  } catch {
    // nothing was kept
  }
  if (!entries().length && topics.length) tick([topics[0].box.value]);
  window.addEventListener("hashchange", fromAddress);
  fromAddress();
})();
