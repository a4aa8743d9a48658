// Progress: kept entry by entry, nothing lost to what cannot be read or stored.

import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { device } from "./device.mjs";

const { store } = device();
const progress = await import("../../site-scripts/pages/progress.js");

const KEY = "physics-line-by-line.progress";
const attempt = (more = {}) => ({
  question: "coulomb.force", day: "2026-03-09", level: 1, seed: 4, earned: 2, possible: 5, mistakes: [], ...more,
});
const file = (...attempts) => JSON.stringify({ kind: "physics-line-by-line progress", version: 1, attempts });

beforeEach(() => {
  store.full = false;
  progress.wipe();
});

test("an attempt is kept and read again", async () => {
  assert.equal(await progress.add(attempt()), "");
  assert.deepEqual(progress.load(), [attempt()]);
  assert.deepEqual(JSON.parse(store.getItem(KEY)).attempts, [attempt()]);
});

test("what cannot be read is laid aside, unchanged", async () => {
  store.setItem(KEY, file(attempt(), { day: 7 }, attempt({ level: 9 })));
  await progress.add(attempt({ seed: 5 }));
  assert.equal(progress.load().length, 2);
  assert.equal(progress.aside(), 2);
  assert.deepEqual(JSON.parse(store.getItem(KEY)).aside, [{ day: 7 }, attempt({ level: 9 })]);
});

test("a day that is none, and more marks than there are, are not used", () => {
  store.setItem(KEY, file(attempt({ day: "2026-02-30" }), attempt({ earned: 6 }), attempt({ question: "<b>.x" })));
  assert.equal(progress.load().length, 0);
  assert.equal(progress.aside(), 3);
});

test("a full store says so, and holds the attempt until the page is closed", async () => {
  store.full = true;
  assert.equal(await progress.add(attempt()), "full");
  assert.deepEqual(progress.load(), [attempt()]);
});

test("reading the same file twice adds nothing", async () => {
  assert.equal((await progress.merge(file(attempt(), attempt()))).attempts, 2);
  assert.equal((await progress.merge(file(attempt(), attempt()))).attempts, 0);
});

test("a file of another kind or version is refused in a sentence and changes nothing", async () => {
  await progress.add(attempt());
  for (const [text, told] of [
    ["{", /not a progress file/], ['{"kind": "other"}', /something else/],
    [file().replace('"version":1', '"version":2'), /another version/],
  ]) {
    await assert.rejects(async () => progress.merge(text), told);
  }
  assert.equal(progress.load().length, 1);
});

test("the history holds the eight newest attempts of a known question", async () => {
  for (let day = 10; day < 22; day += 1) await progress.add(attempt({ day: `2026-03-${day}` }));
  await progress.add(attempt({ question: "thermal.heat" }));
  const told = progress.history(new Set(["coulomb.force"]));
  assert.deepEqual(Object.keys(told), ["coulomb.force"]);
  assert.deepEqual(told["coulomb.force"].map(({ day }) => day.slice(-2)), ["14", "15", "16", "17", "18", "19", "20", "21"]);
});
