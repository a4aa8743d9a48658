// Tables copied from a spreadsheet: split into cells, put in order, and what is said of them.

import assert from "node:assert/strict";
import { test } from "node:test";
import { isTable, pastedRows } from "../../site-scripts/pages/pasted-rows.js";

const CELL = [{ name: "I", sign: "I", words: "Current" }, { name: "V", sign: "V", words: "Potential difference" }];
const LIGHT = [{ name: "f", sign: "f", words: "Frequency" }, { name: "E", sign: "E", words: "Maximum kinetic energy" }];
const PLANE = [{ name: "Q", sign: "Q", words: "Charge" }, { name: "x", sign: "x", words: "Position x" }, { name: "y", sign: "y", words: "Position y" }];
const of = (text, columns = CELL, room = 12) => pastedRows(text, columns, room);

test("one number is no table; tabs, lines and semicolons make one", () => {
  for (const text of ["0,5 A", " 1 200,5\n", "0,5\r\n", "0,5\t"]) assert.equal(isTable(text), false, text);
  for (const text of ["1\t2", "1\n2", "1;2", "1\r\n2"]) assert.equal(isTable(text), true, text);
});

test("rows without a heading fill the columns as they stand", () => {
  for (const text of ["0,1\t1,4\n0,2\t1,3", "0,1;1,4\r\n0,2;1,3\r\n", '"0,1"\t"1,4"\n\n0,2\t1,3\n\n', "\t0,1\t1,4\n\t0,2\t1,3"]) {
    assert.deepEqual(of(text), { rows: [["0,1", "1,4"], ["0,2", "1,3"]], said: ["2 rows pasted."] }, text);
  }
  assert.deepEqual(of("0.1;1.4").rows, [["0.1", "1.4"]]);
  assert.deepEqual(of("1,00E-03 A\t1 200,5 mV").rows, [["1,00E-03 A", "1 200,5 mV"]]);
});

test("commas part the cells where points are decimal signs, and only there", () => {
  assert.deepEqual(of("I (A),V (V)\n0.1,1.4\n0.2,1.3\n").rows, [["0.1 A", "1.4 V"], ["0.2 A", "1.3 V"]]);
  assert.deepEqual(of("0.1,1.4\n0.2").rows, []);
  assert.deepEqual(of("0,1\n0,2").rows, []);
  assert.deepEqual(of("0.1;1,4").rows, [["0.1", "1,4"]]);
});

test("the unit of a heading goes to its cells, however it is written; a cell's own unit stays", () => {
  for (const heading of ["I (mA)\tV (V)", "I / mA\tV / V", "I [mA]\tV [V]", "Current in mA\tPotential difference in V", "I\tV\nmA\tV", "I\tV\n(mA)\t(V)", '"I\n(mA)"\tV/V', "I/(mA)\tV/(V)"]) {
    const { rows, said } = of(`${heading}\n100\t1,4\n0,2 A\t1,3`);
    assert.deepEqual(rows, [["100 mA", "1,4 V"], ["0,2 A", "1,3 V"]], heading);
    assert.deepEqual(said, ["2 rows pasted.", "The units are those of the headings."], heading);
  }
  assert.deepEqual(of("I\tV\n0,1\t1,4"), { rows: [["0,1", "1,4"]], said: ["1 row pasted."] });
});

test("names in the headings put the columns the other way round", () => {
  for (const heading of ["V (V)\tI (A)", "Potential difference (V)\tCurrent (A)", "V/V;I/A", "voltage (V)\tI (A)", "v (V)\ti (A)", "p.d. V (V)\tcurrent (A)"]) {
    const sign = heading.includes(";") ? ";" : "\t";
    const { rows, said } = of(`${heading}\n1,4${sign}0,1\n1,3${sign}0,2`);
    assert.deepEqual(rows, [["0,1 A", "1,4 V"], ["0,2 A", "1,3 V"]], heading);
    assert.equal(said.length, 3, heading);
    assert.match(said[2], /^By their headings the columns go like this: “.+” is current, “.+” is potential difference\.$/);
  }
});

test("a power of ten beside the unit of a heading multiplies, one beside the name is asked about", () => {
  for (const unit of ["(10^14 Hz)", "(×10¹⁴ Hz)", "/ 10^14 Hz", "(x 10^14 Hz)"]) {
    const { rows } = of(`f ${unit}\tEk (eV)\n4,5\t0\n6\t0,4`, LIGHT);
    const power = unit.includes("¹⁴") ? "10¹⁴ Hz" : "10^14 Hz";
    assert.deepEqual(rows, [[`4,5 x ${power}`, "0 eV"], [`6 x ${power}`, "0,4 eV"]], unit);
  }
  assert.deepEqual(of("f x 10^14 (Hz)\tE (eV)\n4,5\t0", LIGHT), {
    rows: [],
    said: ["The heading “f x 10^14 (Hz)” can be read in two ways. Write the power of ten with its unit, as in “f (10^3 …)”, or copy the values in full. Nothing was changed."],
  });
});

test("columns that are not wanted are left out where the headings say which", () => {
  const { rows, said } = of("No.\tV (V)\tI (A)\n1\t1,4\t0,1\n2\t1,3\t0,2");
  assert.deepEqual(rows, [["0,1 A", "1,4 V"], ["0,2 A", "1,3 V"]]);
  assert.equal(said[2], "Left out: the column “No.”.");
  assert.deepEqual(of("1\t1,4\t0,1\n2\t1,3\t0,2"), {
    rows: [],
    said: ["3 columns came, and this table has 2: Current and Potential difference. Copy only these, or copy their headings with them. Nothing was changed."],
  });
});

test("one column is refused", () => {
  for (const text of ["0,1\n0,2\n0,3", "I (A)\n0,1\n0,2"]) {
    assert.deepEqual(of(text), {
      rows: [],
      said: ["Only 1 column came, and this table has 2: Current and Potential difference. Copy the columns together, side by side. Nothing was changed."],
    });
  }
  assert.match(of("1\t2", PLANE).said[0], /^Only 2 columns came, and this table has 3: Charge, Position x and Position y\./);
});

test("rows with text and rows above the limit are left out and quoted", () => {
  assert.deepEqual(of("0,1\t1,4\n0,2\toff scale\n\n0,3\t1,2\n0,4\t1,1\n0,5\t1,0", CELL, 2), {
    rows: [["0,1", "1,4"], ["0,3", "1,2"]],
    said: [
      "2 rows pasted.",
      "The row “0,2; off scale” was left out: “off scale” is not a number.",
      "The table holds no more: 2 rows from 0,4; 1,1 on were left out.",
    ],
  });
  assert.deepEqual(of("I\tV\nmean\tnone"), {
    rows: [],
    said: ["No row of numbers was found in what was pasted. Copy the rows with the numbers. Nothing was changed."],
  });
  assert.deepEqual(of("1\tbroken").said, ["The row “1; broken” was left out: “broken” is not a number. Nothing was changed."]);
});

test("an empty cell stays empty for the form to ask for, with the rest of its row", () => {
  assert.deepEqual(of("I (A)\tV (V)\n0,1\t\n0,2\t1,3").rows, [["0,1 A", ""], ["0,2 A", "1,3 V"]]);
});

test("headings nobody understands are quoted", () => {
  assert.deepEqual(of("Run of Monday\t\nfoo\tbar\n0,1\t1,4").said, [
    "1 row pasted.",
    "Not understood: “Run of Monday” and “foo; bar”. Check that each column holds what its heading says.",
  ]);
});

test("a table of three columns finds each by its name", () => {
  assert.deepEqual(of("x (cm)\ty (cm)\tQ (nC)\n0\t3\t-2", PLANE).rows, [["-2 nC", "0 cm", "3 cm"]]);
  assert.deepEqual(of("Charge\tPosition y\tPosition x\n1\t2\t3", PLANE).rows, [["1", "3", "2"]]);
});
