// Settings: those of the device, those of a link, and what cannot be one.

import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { device } from "./device.mjs";

const { store, window } = device();
globalThis.document = { querySelector: () => null };
let answer = async () => ({ ok: true, data: {} });
window.bookletRuntime = { ask: (...given) => answer(...given) };
const settings = await import("../../site-scripts/pages/settings.js");

const KEY = "physics-line-by-line.settings";

beforeEach(() => {
  settings.take(new Map());
  settings.forget();
  answer = async () => ({ ok: true, data: {} });
});

test("what is kept is in force and told", () => {
  settings.keep({ k: "8,99e9", decimals: "3" });
  assert.deepEqual(settings.current(), { k: "8,99e9", decimals: "3" });
  assert.equal(settings.words(), "Your settings: k = 8,99e9; 3 decimals");
  assert.deepEqual(settings.pairs(), [["set.k", "8,99e9"], ["set.decimals", "3"]]);
});

test("a link's settings hold for its view and are not stored", () => {
  settings.keep({ k: "8,99e9" });
  settings.take(new Map([["open.question", "coulomb.force"], ["set.g", "10"]]));
  assert.deepEqual(settings.current(), { g: "10" });
  assert.match(settings.words(), /^This link uses: g = 10$/);
  assert.equal(store.getItem(KEY), '{"k":"8,99e9"}');
  settings.take(new Map());
  assert.deepEqual(settings.current(), { k: "8,99e9" });
});

test("forgetting leaves nothing in the store", () => {
  settings.keep({ k: "8,99e9" });
  settings.forget();
  assert.equal(store.getItem(KEY), null);
  assert.equal(settings.words(), "");
});

test("damaged storage is handed to calc as a setting, which says what is wrong", () => {
  store.setItem(KEY, "{nonsense");
  assert.deepEqual(settings.current(), { kept: "{nonsense" });
});

test("what is asked carries the settings in force", async () => {
  settings.keep({ comma: "point" });
  let sent;
  answer = async (_operation, data) => {
    sent = data;
    return { ok: true, data: {} };
  };
  await settings.ask("solve", { question: "coulomb.force" });
  assert.deepEqual(sent, { question: "coulomb.force", settings: { comma: "point" } });
});
