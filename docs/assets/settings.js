// The reader's settings: constants, decimals and decimal sign; kept on this device, for every page.
// A link may carry its own; those hold for that page view only.
(function () {
  "use strict";

  const STORE = "physics-line-by-line.settings";
  const NAME = /^[A-Za-z_]{1,12}$/; // calc says which names there are
  const watchers = [];
  let fromLink = null;

  function stored() {
    try {
      const kept = JSON.parse(localStorage.getItem(STORE) || "{}");
      return clean(kept);
    } catch {
      return {};
    }
  }

  function clean(object) {
    const settings = {};
    for (const [name, text] of Object.entries(object || {}).slice(0, 30)) {
      if (NAME.test(name) && typeof text === "string" && text && text.length < 60) settings[name] = text;
    }
    return settings;
  }

  function current() {
    return fromLink || stored();
  }

  function keep(settings) {
    try {
      localStorage.setItem(STORE, JSON.stringify(clean(settings)));
    } catch {
      // Private windows may refuse to store: the settings then hold until the page is closed.
      fromLink = clean(settings);
    }
    watchers.forEach((watcher) => watcher());
  }

  function forget() {
    fromLink = null;
    try {
      localStorage.removeItem(STORE);
    } catch {
      // nothing was kept
    }
    watchers.forEach((watcher) => watcher());
  }

  // Takes the settings a link carries out of its state (a Map), if there are any.
  function take(state) {
    const carried = {};
    for (const [name, text] of state) {
      if (name.startsWith("set.")) carried[name.slice(4)] = text;
    }
    if (Object.keys(carried).length) fromLink = clean(carried);
  }

  // The settings as pairs for a link.
  function pairs() {
    return Object.entries(current()).map(([name, text]) => [`set.${name}`, text]);
  }

  function words() {
    const settings = current();
    const changed = Object.entries(settings).map(([name, text]) =>
      name === "decimals" ? `${text} decimals` : name === "comma" ? `decimal ${text}` : `${name} = ${text}`);
    return changed.length ? `${fromLink ? "This link uses" : "Your settings"}: ${changed.join("; ")}` : "";
  }

  window.bookletSettings = { current, keep, forget, take, pairs, words, stored, onchange: (watcher) => watchers.push(watcher) };

  // The settings form, on the page that has one.
  const form = document.querySelector("form.settings");
  if (!form) return;
  const status = form.querySelector(".status");

  function fill() {
    const settings = current();
    for (const box of form.elements) {
      if (box.name) box.value = settings[box.name] ?? box.dataset.usual ?? "";
    }
  }

  function read() {
    const settings = {};
    for (const box of form.elements) {
      if (box.name && box.value.trim() !== (box.dataset.usual ?? "")) settings[box.name] = box.value.trim();
    }
    return settings;
  }

  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    for (const problem of form.querySelectorAll(".problem")) problem.hidden = true;
    status.textContent = "Reading the settings…";
    const reply = await window.bookletRuntime.ask("settings", { settings: read() });
    if (reply.ok) {
      keep(read());
      status.textContent = "Kept on this device, for every page of the booklet.";
      return;
    }
    status.textContent = "";
    for (const { field, message } of reply.errors) {
      const problem = form.querySelector(`[data-field="${CSS.escape(field || "")}"] .problem`);
      if (problem) {
        problem.textContent = message;
        problem.hidden = false;
      } else status.textContent = message;
    }
  });
  form.querySelector(".usual").addEventListener("click", () => {
    forget();
    fill();
    status.textContent = "Back to the usual school values.";
  });
  fill();
})();
