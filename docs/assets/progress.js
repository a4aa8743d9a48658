// What was practised: kept on this device only, in localStorage; saved to a file, read from one, wiped.
// An attempt: {question, day: "2026-03-09", level, seed, earned, possible, mistakes: [keys]}.
(function () {
  "use strict";

  const STORE = "physics-line-by-line.progress";
  const KIND = "physics-line-by-line progress";
  const VERSION = 1;
  const MOST = 2000; // attempts kept, the newest
  const LARGEST = 2_000_000; // characters of a file
  const NEWEST = 8; // attempts of one question that a revision rule of five boxes needs

  let memory = null; // used where the browser refuses to store

  function load() {
    if (memory) return memory;
    try {
      const kept = localStorage.getItem(STORE);
      return kept ? check(kept) : [];
    } catch {
      return [];
    }
  }

  function keep(attempts) {
    const newest = attempts.slice(-MOST);
    try {
      localStorage.setItem(STORE, text(newest));
      memory = null;
      return true;
    } catch {
      memory = newest; // until the page is closed
      return false;
    }
  }

  function text(attempts) {
    return JSON.stringify({ kind: KIND, version: VERSION, attempts });
  }

  // The attempts of a file's text; throws Error with a sentence. Nothing but the named members is taken over.
  function check(typed) {
    if (typed.length > LARGEST) throw new Error("This file is too large to be a progress file. Choose the file that this page saved.");
    let file;
    try {
      file = JSON.parse(typed);
    } catch {
      throw new Error("This file is not a progress file, or it is damaged. Choose the file that this page saved.");
    }
    if (!file || file.kind !== KIND || !Array.isArray(file.attempts)) {
      throw new Error("This file holds something else than progress. Choose the file that this page saved.");
    }
    if (file.version !== VERSION) throw new Error("This progress file was written by another version of the booklet and cannot be read here.");
    return file.attempts.slice(-MOST).map((entry, index) => clean(entry, index + 1));
  }

  function clean(entry, number) {
    const wrong = (what) => new Error(`Entry ${number} of this file has no usable ${what}. Nothing was read from it.`);
    const whole = (value, low, high) => Number.isInteger(value) && value >= low && value <= high;
    if (!entry || typeof entry !== "object") throw wrong("content");
    const { question, day, level, seed, earned, possible, mistakes } = entry;
    if (typeof question !== "string" || !/^[a-z0-9-]{1,40}\.[a-z0-9-]{1,60}$/.test(question)) throw wrong("question");
    if (typeof day !== "string" || !/^\d{4}-\d\d-\d\d$/.test(day) || !realDay(day)) throw wrong("day");
    if (!whole(level, 1, 3)) throw wrong("level");
    if (!whole(seed, 0, 999_999)) throw wrong("seed");
    if (!whole(possible, 1, 500) || !whole(earned, 0, possible)) throw wrong("marks");
    if (!Array.isArray(mistakes) || mistakes.length > 40) throw wrong("list of mistakes");
    if (!mistakes.every((key) => typeof key === "string" && /^[\w.@+-]{1,80}$/.test(key))) throw wrong("list of mistakes");
    return { question, day, level, seed, earned, possible, mistakes: [...mistakes] };
  }

  function realDay(day) {
    const date = new Date(`${day}T00:00:00Z`);
    return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(day) && date.getUTCFullYear() >= 2000;
  }

  function today() {
    const now = new Date();
    const two = (number) => String(number).padStart(2, "0");
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  }

  // Returns whether it could be stored.
  function add(attempt) {
    return keep([...load(), clean(attempt, 1)]);
  }

  // Adds what a file holds and is not here yet; returns how many attempts were new.
  function merge(typed) {
    const here = load();
    const known = new Set(here.map((entry) => JSON.stringify(entry)));
    const more = check(typed).filter((entry) => !known.has(JSON.stringify(entry)));
    keep([...here, ...more].map((entry, index) => [entry, index])
      .sort(([a, i], [b, j]) => (a.day < b.day ? -1 : a.day > b.day ? 1 : i - j))
      .map(([entry]) => entry));
    return more.length;
  }

  function wipe() {
    memory = null;
    try {
      localStorage.removeItem(STORE);
    } catch {
      // nothing was kept
    }
  }

  // {question: [its newest attempts]} for the revision rule
  function history() {
    const lines = new Map();
    for (const { question, day, level, earned, possible, mistakes } of load()) {
      if (!lines.has(question)) lines.set(question, []);
      lines.get(question).push({ day, level, earned, possible, mistakes: mistakes.slice(0, 4) });
    }
    return Object.fromEntries([...lines].map(([question, entries]) => [question, entries.slice(-NEWEST)]));
  }

  function save() {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text(load())], { type: "application/json" }));
    link.download = `physics-progress-${today()}.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  }

  window.bookletProgress = { load, add, merge, wipe, history, save, today };
})();
