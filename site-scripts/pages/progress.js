// What was practised: kept on this device only, in localStorage; saved to a file, read from one, wiped.
// An attempt: {question, day: "2026-03-09", level, seed, earned, possible, mistakes: [keys]}.
// A file, and what is stored: {kind, version, attempts: [...], aside: [...]}. It is read entry by entry; what this
// version cannot read (a damaged entry, a whole file of a newer version) goes on unchanged in `aside`, and is tried
// again at each reading.

import { forgetDue, today } from "./due.js";
import { forgets } from "./storage.js";

const STORE = "physics-line-by-line.progress";
const KIND = "physics-line-by-line progress";
const VERSION = 1;
const LARGEST = 12_000_000; // characters of a file: more than a browser stores for one site
const NEWEST = 8; // attempts of one question that a revision rule of five boxes needs
const LONGEST_HISTORY = 80_000; // characters of a history; calc reads requests of 100 000

/**
 * @typedef {{ question: string, day: string, level: number, seed: number, earned: number, possible: number,
 *   mistakes: string[] }} Attempt
 * @typedef {{ attempts: unknown[], aside: unknown[], rest: Record<string, unknown> }} State entries as they came
 * @typedef {{ kind: string, version?: unknown, attempts?: unknown, aside?: unknown }} ProgressFile
 * @typedef {ProgressFile & { attempts: unknown[] }} Ours of the version that this script writes
 */

/** @returns {State} */
const nothing = () => ({ attempts: [], aside: [], rest: {} });
let waiting = nothing(); // what the browser would not store: held until the page is closed, tried again each time
let mine = nothing(); // what this page added: put back if another tab writes over it
/** @type {"" | "full" | "denied"} */
let trouble = ""; // why the last writing failed: "", "full" or "denied"
/** @type {(() => void)[]} */
const watchers = [];

// --- reading: {attempts, aside, rest}, of the entries as they came ---

function stored() {
  let text;
  try {
    text = localStorage.getItem(STORE);
  } catch {
    trouble = "denied";
    return nothing();
  }
  if (text === null) return nothing();
  const state = nothing();
  try {
    sort(JSON.parse(text), state);
  } catch {
    return { ...nothing(), aside: [text] };
  }
  return state;
}

// Puts what a file holds into `state`.
/**
 * @param {unknown} file
 * @param {State} state
 */
function sort(file, state) {
  if (!isOurs(file)) {
    state.aside.push(file);
    return;
  }
  const { kind, version, attempts, aside, ...rest } = file;
  for (const entry of attempts) (read(entry) ? state.attempts : state.aside).push(entry);
  if (Array.isArray(aside)) {
    for (const entry of aside) {
      if (isOurs(entry)) sort(entry, state); // a newer version laid it aside, or an older one
      else (read(entry) ? state.attempts : state.aside).push(entry);
    }
  } else if (aside !== undefined) state.aside.push(aside);
  Object.assign(state.rest, rest);
}

/**
 * @param {unknown} file
 * @returns {file is Ours}
 */
function isOurs(file) {
  return isProgress(file) && file.version === VERSION && Array.isArray(file.attempts);
}

/**
 * @param {unknown} file
 * @returns {file is ProgressFile}
 */
function isProgress(file) {
  return file !== null && typeof file === "object" && "kind" in file && file.kind === KIND;
}

// The attempt in an entry, with nothing but the named members; null where one cannot be used.
/**
 * @param {unknown} entry
 * @returns {Attempt | null}
 */
function read(entry) {
  if (!entry || typeof entry !== "object") return null;
  /** @type {{ [member in keyof Attempt]?: unknown }} */
  const { question, day, level, seed, earned, possible, mistakes } = entry;
  const usable = typeof question === "string" && /^[a-z0-9-]{1,40}\.[a-z0-9-]{1,60}$/.test(question)
    && typeof day === "string" && /^\d{4}-\d\d-\d\d$/.test(day) && isDay(day)
    && whole(level, 1, 3) && whole(seed, 0, 999_999) && whole(possible, 1, 500) && whole(earned, 0, possible)
    && Array.isArray(mistakes) && mistakes.length <= 40
    && mistakes.every((key) => typeof key === "string" && /^[\w.@+-]{1,80}$/.test(key));
  return usable ? { question, day, level, seed, earned, possible, mistakes: [...mistakes] } : null;
}

/**
 * @param {unknown} value
 * @param {number} low
 * @param {number} high
 * @returns {value is number}
 */
function whole(value, low, high) {
  return typeof value === "number" && Number.isInteger(value) && value >= low && value <= high;
}

/** @param {string} day */
function isDay(day) {
  const date = new Date(`${day}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(day) && day > "0001";
}

// --- writing ---

// One tab at a time, where the browser can arrange that; reading and writing are one piece in any case.
/**
 * @template T
 * @param {() => T} work
 * @returns {Promise<T>}
 */
async function alone(work) {
  let done = false;
  const once = () => {
    done = true;
    return work();
  };
  try {
    if (navigator.locks) return await navigator.locks.request(STORE, once);
  } catch (problem) {
    if (done) throw problem;
  }
  return once();
}

/** @param {State} state */
function write(state) {
  try {
    localStorage.setItem(STORE, text(state));
    trouble = forgets() ? "denied" : "";
    return true;
  } catch (problem) {
    trouble = problem instanceof Error && problem.name === "QuotaExceededError" ? "full" : "denied";
    return false;
  }
}

/** @param {State} state */
function text({ attempts, aside, rest }) {
  return JSON.stringify({ ...rest, kind: KIND, version: VERSION, attempts, ...(aside.length ? { aside } : {}) });
}

// What of `more` is not in `here` yet; an entry that stands twice in one of them counts twice.
/**
 * @param {unknown[]} here
 * @param {unknown[]} more
 */
function missing(here, more) {
  const left = new Map();
  for (const entry of here) {
    const key = JSON.stringify(entry);
    left.set(key, (left.get(key) || 0) + 1);
  }
  return more.filter((entry) => {
    const key = JSON.stringify(entry);
    const count = left.get(key) || 0;
    if (count) left.set(key, count - 1);
    return !count;
  });
}

/**
 * @param {State} here
 * @param {State} more
 * @returns {State}
 */
function lacking(here, more) {
  return { attempts: missing(here.attempts, more.attempts), aside: missing(here.aside, more.aside), rest: more.rest };
}

/**
 * @param {State} here
 * @param {State} more
 * @returns {State}
 */
function sum(here, more) {
  return {
    attempts: [...here.attempts, ...more.attempts], aside: [...here.aside, ...more.aside], rest: { ...more.rest, ...here.rest },
  };
}

function all() {
  return sum(stored(), waiting);
}

// Adds entries; what cannot be stored is held on this page. Returns the trouble, "" when there was none.
/** @param {State} more */
function keep(more) {
  const whole = sum(all(), more);
  mine = sum(mine, more);
  if (write(whole)) waiting = nothing();
  else waiting = sum(waiting, more);
  return trouble;
}

// --- what the page asks for ---

/** @param {Attempt} attempt */
export function add(attempt) {
  return alone(() => keep({ ...nothing(), attempts: [attempt] }));
}

// Adds what a file holds and is not here yet: {attempts, aside} counted, and the trouble. Throws Error with a sentence.
/** @param {string} typed */
export function merge(typed) {
  const found = opened(typed);
  return alone(() => {
    const more = lacking(all(), found);
    const failed = keep(more);
    return { attempts: more.attempts.length, aside: size(more.aside), trouble: failed };
  });
}

/** @param {string} typed */
function opened(typed) {
  if (typed.length > LARGEST) throw new Error("This file is too large to be a progress file. Choose the file that this page saved.");
  const found = nothing();
  /** @type {unknown} */
  let file;
  try {
    file = JSON.parse(typed);
    if (isOurs(file)) sort(file, found);
    JSON.stringify(found); // what is nested without end cannot be written again
  } catch {
    throw new Error("This file is not a progress file, or it is damaged. Choose the file that this page saved.");
  }
  if (!isProgress(file)) throw new Error("This file holds something else than progress. Choose the file that this page saved.");
  if (file.version !== VERSION) throw new Error("This progress file was written by another version of the booklet and cannot be read here. Nothing was changed: keep the file.");
  if (!isOurs(file)) throw new Error("This progress file is damaged: it has no list of attempts. Nothing was changed.");
  return found;
}

export function wipe() {
  waiting = nothing();
  mine = nothing();
  try {
    localStorage.removeItem(STORE);
    forgetDue();
  } catch {
    // nothing was kept
  }
}

export function load() {
  return all().attempts.map(read).filter((attempt) => attempt !== null);
}

// How many entries lie aside, those inside a file of another version counted one by one.
export function aside() {
  return size(all().aside);
}

/** @param {unknown[]} entries */
function size(entries) {
  const inside = (/** @type {unknown} */ entry) => (isProgress(entry) && Array.isArray(entry.attempts) ? entry.attempts.length : 1);
  return entries.reduce((/** @type {number} */ total, entry) => total + Math.max(1, inside(entry)), 0);
}

// {question: [its newest attempts]} of the known questions, for the revision rule; short enough to be read.
// A day after tomorrow (the clock was wrong) says nothing of the order: such an attempt is older than any other.
/**
 * @param {Set<string>} known
 * @returns {Record<string, AttemptTold[]>}
 */
export function history(known) {
  const latest = today(1);
  const dated = (/** @type {Attempt} */ { day }) => (day > latest ? "" : day);
  /** @type {Map<string, Attempt[]>} */
  const lines = new Map();
  for (const attempt of load()) {
    if (!known.has(attempt.question)) continue;
    const line = lines.get(attempt.question);
    if (line) line.push(attempt);
    else lines.set(attempt.question, [attempt]);
  }
  for (const entries of lines.values()) entries.sort((a, b) => (dated(a) < dated(b) ? -1 : dated(a) > dated(b) ? 1 : 0));
  /** @type {Record<string, AttemptTold[]>} */
  let told = {};
  for (let count = NEWEST; count; count -= 1) {
    told = Object.fromEntries([...lines].map(([question, entries]) => [question, entries.slice(-count).map(short)]));
    if (JSON.stringify(told).length <= LONGEST_HISTORY) break;
  }
  return told;
}

// Of the mistakes only those of the last attempt are told.
/**
 * @param {Attempt} attempt
 * @param {number} index
 * @param {Attempt[]} entries
 * @returns {AttemptTold}
 */
function short({ day, level, earned, possible, mistakes }, index, entries) {
  return { day, level, earned, possible, mistakes: index === entries.length - 1 ? mistakes.slice(0, 4) : [] };
}

export function save() {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text(all())], { type: "application/json" }));
  link.download = `physics-progress-${today()}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

// Why nothing can be stored: "full" or "denied"; "" as long as nothing went wrong.
export function problem() {
  stored();
  return forgets() ? "denied" : trouble;
}

// --- another tab wrote ---

window.addEventListener("storage", async (event) => {
  if (event.key !== STORE && event.key !== null) return;
  if (event.newValue === null) {
    mine = nothing(); // wiped there
    waiting = nothing();
  } else {
    // It may have read before this page had written.
    await alone(() => {
      const here = stored();
      const lost = lacking(sum(here, waiting), mine);
      if (lost.attempts.length + lost.aside.length && !write(sum(here, lost))) waiting = sum(waiting, lost);
    });
  }
  watchers.forEach((watcher) => watcher());
});
// A page that slept heard nothing of what other tabs wrote or wiped.
window.addEventListener("pageshow", (event) => {
  if (!event.persisted) return;
  mine = nothing();
  watchers.forEach((watcher) => watcher());
});

/** @param {() => void} watcher */
export function onchange(watcher) {
  watchers.push(watcher);
}
