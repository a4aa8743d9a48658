// Addresses: what is typed goes into a link and comes back.

import assert from "node:assert/strict";
import { test } from "node:test";
import { QUESTION, read, rowsToText, textToRows, write } from "../../site-scripts/pages/address.js";

test("a state goes into an address and comes back", () => {
  const pairs = [[QUESTION, "coulomb.force"], ["Q1", "+8nC"], ["set.k", "8,99e9"], ["find", "r"]];
  assert.deepEqual([...read(`#${write(pairs)}`)], pairs);
});

test("an empty box is not in the address", () => {
  assert.equal(write([["a", ""], ["b", "1"]]), "b=1");
});

test("a number and its unit lose their spaces, a unit of several parts keeps them", () => {
  assert.equal(write([["r", " 1 200,5  m "]]), "r=1200,5m");
  assert.equal(write([["g", "5 m s^-2"]]), "g=5%20m%20s%5E-2");
});

test("signs that an address may hold stand as they are", () => {
  assert.equal(write([["Q", "-5 µC"], ["a", "30°"]]), "Q=-5µC&a=30°");
});

test("an anchor of a page is no state", () => {
  assert.equal(read("#counting-electrons"), null);
  assert.equal(read(""), null);
});

test("a link of another kind is a state too", () => {
  assert.equal(read("#practice=coulomb.force&seed=3").get("seed"), "3");
  assert.equal(read("#paper=coulomb&n=6").get("n"), "6");
});

test("an older link names its question q, also beside a box q", () => {
  const state = read("#q=-3nC&q=coulomb.force&r=1m");
  assert.equal(state.get(QUESTION), "coulomb.force");
  assert.equal(state.get("q"), "-3nC");
});

test("a damaged link and one without end are refused in a sentence", () => {
  assert.throws(() => read("#q=%E0%A4%A"), /^Error: This link is damaged/);
  assert.throws(() => read(`#q=${"x".repeat(5000)}`), /^Error: This link is too long/);
});

test("rows of a table come back, parting signs in cells too", () => {
  const rows = [["5_3", "1~2"], ["", "4cm"]];
  assert.deepEqual(textToRows(rowsToText(rows)), rows);
});

test("a table has at most fifty rows", () => {
  assert.equal(textToRows("1~".repeat(200)).length, 50);
});
