// The reader's settings: constants, decimals and decimal sign; kept on this device, for every page.
// A link may carry its own; those hold for that page view only. What cannot be a setting is said in a
// notice with a button for the usual value: in a link the answer waits for it, from this device the usual
// value is used meanwhile, so that no form is stopped by what was kept long ago.

import { tell } from "./notice.js";
import { runtime } from "./runtime.js";

const STORE = "physics-line-by-line.settings";
const LONGEST = 60;
const NOTICE = "settings-problem";
/** @type {(() => void)[]} */
const watchers = [];
/** @type {Map<string, Fault>} */
const aside = new Map(); // kept settings that cannot be: name -> what calc says of it
/** @typedef {Record<string, string>} Settings */
/** @typedef {Problem & { name: string }} Fault */
/** @type {Settings | null} */
let fromLink = null;
/** @type {Settings | null} */
let unkept = null; // where nothing can be stored: they hold until the page is closed

/** @returns {Settings} */
export function stored() {
  if (unkept) return unkept;
  let text;
  try {
    text = localStorage.getItem(STORE) || "{}";
  } catch {
    return {}; // nothing can be kept here
  }
  try {
    /** @type {unknown} */
    const kept = JSON.parse(text);
    if (kept && typeof kept === "object" && !Array.isArray(kept)) return clean(kept);
  } catch {
    // told below
  }
  return { kept: text.slice(0, LONGEST) }; // calc knows no such setting, and says so
}

// Whatever is there, as text: calc says what cannot be.
/** @param {object} object */
function clean(object) {
  /** @type {Settings} */
  const settings = {};
  for (const [name, value] of Object.entries(object).slice(0, 30)) {
    const text = typeof value === "string" ? value : JSON.stringify(value);
    if (text) settings[name.slice(0, LONGEST)] = text.slice(0, LONGEST);
  }
  return settings;
}

export function current() {
  if (fromLink) return fromLink;
  return Object.fromEntries(Object.entries(stored()).filter(([name]) => !aside.has(name)));
}

/** @param {Settings} settings */
function store(settings) {
  try {
    if (Object.keys(settings).length) localStorage.setItem(STORE, JSON.stringify(settings));
    else localStorage.removeItem(STORE);
  } catch {
    unkept = settings; // private windows may refuse to store
  }
}

function changed() {
  aside.clear();
  tell([], { kind: NOTICE });
  watchers.forEach((watcher) => watcher());
}

/** @param {Settings} settings */
export function keep(settings) {
  fromLink = null;
  store(clean(settings));
  changed();
}

export function forget() {
  keep({});
}

// Takes the settings a link carries out of its state (a Map); a link without any brings back the reader's own.
/** @param {Map<string, string>} state */
export function take(state) {
  /** @type {Settings} */
  const carried = {};
  for (const [name, text] of state) {
    if (name.startsWith("set.")) carried[name.slice(4)] = text;
  }
  fromLink = Object.keys(carried).length ? clean(carried) : null;
  tell([], { kind: NOTICE });
}

// One setting back to its usual value, in the link or on this device.
/** @param {string} name */
function putBack(name) {
  if (fromLink) {
    delete fromLink[name];
    if (!Object.keys(fromLink).length) fromLink = null;
    const rest = location.hash.slice(1).split("&").filter((piece) => decoded(piece.split("=")[0]) !== `set.${name}`);
    history.replaceState(null, "", `#${rest.join("&")}`);
  } else {
    const settings = stored();
    delete settings[name];
    store(settings);
  }
  changed();
}

/** @param {string} text */
function decoded(text) {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

// Asks calc with the settings in force. near: where a notice about them goes; the title, if not given.
/**
 * @template {Operation} O
 * @param {O} operation
 * @param {Desk[O]["asked"]} data
 * @param {{ near?: Element | null, channel?: string, limit?: number }} options
 * @returns {Promise<Reply<O>>}
 */
export async function ask(operation, data, { near = null, ...options } = {}) {
  const linked = fromLink;
  const sent = current();
  const reply = await runtime.ask(operation, { ...data, settings: sent }, options);
  if (!reply || reply.ok) return reply;
  const faults = reply.errors.flatMap((fault) => (fault.field?.startsWith("settings.") ? [{ ...fault, name: fault.field.slice(9) }] : []));
  if (!faults.length || linked !== fromLink) return reply;
  if (linked) {
    notice(faults, near, "It comes with the link.");
    return { ok: false, errors: reply.errors.filter(({ field }) => !field?.startsWith("settings.")), settings: true };
  }
  for (const fault of faults) aside.set(fault.name, fault);
  notice([...aside.values()], null, "It is kept on this device; the usual value is used meanwhile.");
  const better = faults.some(({ name }) => name in sent); // then it is left out the next time
  return better ? ask(operation, data, { near, ...options }) : reply;
}

/**
 * @param {Fault[]} faults
 * @param {Element | null} near
 * @param {string} where
 */
function notice(faults, near, where) {
  tell(faults.map(({ message }) => `${message} ${where}`), {
    near,
    kind: NOTICE,
    offers: faults.flatMap(({ name, choices }) => (choices || []).map(({ words }) => ({ words, act: () => putBack(name) }))),
  });
}

// The settings as pairs for a link.
export function pairs() {
  return Object.entries(current()).map(([name, text]) => [`set.${name}`, text]);
}

export function words() {
  const settings = current();
  const changed = Object.entries(settings).map(([name, text]) =>
    name === "decimals" ? `${text} decimals` : name === "comma" ? `decimal ${text}` : `${name} = ${text}`);
  return changed.length ? `${fromLink ? "This link uses" : "Your settings"}: ${changed.join("; ")}` : "";
}

/** @param {() => void} watcher */
export function onchange(watcher) {
  watchers.push(watcher);
}
