// A table copied from a spreadsheet, split into the cells of a table of a form. It knows no physics: what a unit of a
// heading means is read by calc, in the cells it is written into.

/** @typedef {{ name: string, sign: string, words: string }} Column a column of the form's table */
/** @typedef {{ name: string, unit: string, text: string }} Heading a heading of what was pasted */
/** @typedef {{ rows: string[][], said: string[] }} Pasted the rows for the form, and what there is to say */

const BARE = /^[+\-−–]?\s*[\d\s.,]*\d([eE][+\-−–]?\d+|\s*[x×*·]\s*10\s*(\^\s*[+\-−–]?\s*\d+|[⁺⁻]?[⁰¹²³⁴-⁹]+))?$/;
const NUMBER = /^[+\-−–]?\s*[.,]?\d(?!\d*\s*\/)/; // "1/λ" is a heading
const POWER = /10\s*(\^|\*\*|[⁺⁻⁰¹²³⁴-⁹])/;

/** @param {string} text whether it is a table, and not the text of one box */
export function isTable(text) {
  return /[\t\n\r;]/.test(text.trim());
}

// Commas part cells only where a point is the decimal sign and each line has as many of them.
/** @param {string} text */
function partingOf(text) {
  if (text.includes("\t")) return "\t";
  const commas = text.trim().split(/[\r\n]+/).map((line) => line.split(",").length);
  const plain = !text.includes(";") && /\d\.\d/.test(text) && commas[0] > 1;
  return plain && commas.every((count) => count === commas[0]) ? "," : ";";
}

/**
 * @param {string} text
 * @returns {string[][]}
 */
function cellsOf(text) {
  const parting = partingOf(text);
  const rows = [[""]];
  let quoted = false; // a cell in quotation marks may hold the signs that part cells and rows
  for (const letter of text.replace(/\r\n?/g, "\n")) {
    const row = rows[rows.length - 1];
    if (letter === '"' && (quoted || row[row.length - 1] === "")) quoted = !quoted;
    else if (letter === parting && !quoted) row.push("");
    else if (letter === "\n" && !quoted) rows.push([""]);
    else row[row.length - 1] += letter;
  }
  if (quoted) return cellsOf(text.replaceAll('"', ""));
  const tidy = rows.map((row) => row.map((cell) => cell.replace(/\s+/g, " ").trim())).filter((row) => row.some(Boolean));
  const width = Math.max(...tidy.map((row) => row.length));
  const used = [...Array(width).keys()].filter((at) => tidy.some((row) => row[at]));
  return tidy.map((row) => used.map((at) => row[at] ?? ""));
}

// "I (mA)", "I [mA]", "I / mA", "I in mA" -> its name and its unit.
/**
 * @param {string} text
 * @returns {Heading}
 */
function headingOf(text) {
  const [, name, ...units] = /^(.*?)\s*(?:\(([^()]*)\)|\[([^[\]]*)\]|\/\s*(.+)|\sin\s+(.+))$/.exec(text) ?? [text, text];
  const unit = (units.find(Boolean) ?? "").replace(/^\((.*)\)$/, "$1").replace(/^in\s+/, "").trim();
  return { name: name.trim(), unit: /[\p{L}°]/u.test(unit) ? unit : "", text };
}

// Which column of the form each heading names, surest first; -1 for none.
/**
 * @param {Heading[]} headings
 * @param {Column[]} columns
 */
function placesOf(headings, columns) {
  const plain = (/** @type {string} */ text) => text.replace(/[_\s]/g, "");
  const tokens = (/** @type {string} */ text) => text.split(/[\s,:=]+/).map(plain);
  /** @type {((heading: string, column: Column) => boolean)[]} */
  const ways = [
    (heading, { name, sign }) => [plain(name), plain(sign)].includes(plain(heading)),
    (heading, { words }) => heading.toLowerCase().includes(words.toLowerCase()),
    (heading, { name, sign }) => tokens(heading).some((token) => token === plain(name) || token === plain(sign)),
    (heading, { name }) => plain(heading).toLowerCase() === plain(name).toLowerCase(),
    (heading, { words }) => words.toLowerCase().split(" ").some((word) => tokens(heading.toLowerCase()).includes(word)),
  ];
  const places = headings.map(() => -1);
  for (const way of ways) {
    headings.forEach(({ name }, at) => {
      if (places[at] >= 0 || !name) return;
      const fitting = [...columns.keys()].filter((column) => !places.includes(column) && way(name, columns[column]));
      if (fitting.length === 1) places[at] = fitting[0];
    });
  }
  return places;
}

/**
 * @param {string} cell
 * @param {string} unit
 */
function withUnit(cell, unit) {
  if (!unit || !BARE.test(cell)) return cell;
  const power = unit.replace(/^[x×*·]\s*/, "");
  return POWER.test(power.slice(0, 5)) ? `${cell} x ${power}` : `${cell} ${unit}`;
}

const some = (/** @type {number} */ count, /** @type {string} */ thing) => `${count} ${thing}${count === 1 ? "" : "s"}`;
const listed = (/** @type {string[]} */ words) => words.join(", ").replace(/, ([^,]*)$/, " and $1");
const refused = (/** @type {string} */ why) => ({ rows: [], said: [`${why} Nothing was changed.`] });

/**
 * The rows of a pasted table for the columns of a form's; without rows it is refused, and said why.
 * @param {string} text
 * @param {Column[]} columns
 * @param {number} room how many rows there is a place for
 * @returns {Pasted}
 */
export function pastedRows(text, columns, room) {
  const lines = cellsOf(text);
  const width = lines[0]?.length ?? 0;
  const wanted = `${columns.length}: ${listed(columns.map(({ words }) => words))}`;
  if (width < columns.length) {
    return refused(`Only ${some(width, "column")} came, and this table has ${wanted}. Copy the columns together, side by side.`);
  }
  const heads = lines.findIndex((cells) => cells.some((cell) => NUMBER.test(cell)));
  if (heads < 0) return refused("No row of numbers was found in what was pasted. Copy the rows with the numbers.");
  const { headings, above } = headingsOf(lines.slice(0, heads), columns);
  const twoWays = headings.find(({ name }) => POWER.test(name));
  if (twoWays) {
    return refused(`The heading “${twoWays.text}” can be read in two ways. Write the power of ten with its unit, as in “${columns[0].name} (10^3 …)”, or copy the values in full.`);
  }
  const places = placesOf(headings, columns);
  if (width > columns.length && columns.some((_, column) => !places.includes(column))) {
    return refused(`${width} columns came, and this table has ${wanted}. Copy only these, or copy their headings with them.`);
  }
  const free = [...columns.keys()].filter((column) => !places.includes(column));
  const from = places.map((place) => (place < 0 && width === columns.length ? free.shift() ?? -1 : place));
  const sources = columns.map((_, column) => (headings.length ? from.indexOf(column) : column));

  /** @type {string[]} */
  const said = [];
  const rows = [];
  const over = [];
  const left = [];
  for (const cells of lines.slice(heads)) {
    const taken = sources.map((at) => withUnit(cells[at], headings[at]?.unit ?? ""));
    const odd = taken.find((cell) => cell && !NUMBER.test(cell));
    if (odd === undefined && taken.some(Boolean) && rows.length < room) rows.push(taken);
    else if (odd === undefined && taken.some(Boolean)) over.push(cells);
    else left.push(`The row “${cells.filter(Boolean).join("; ")}” was left out: ${odd ? `“${odd}” is not a number` : "it has nothing for these columns"}.`);
  }
  if (!rows.length) return refused(left.length ? left.join(" ") : "The table has no room for another row here. Paste into an earlier row.");
  said.push(`${some(rows.length, "row")} pasted.`);
  if (headings.some((heading, at) => heading.unit && sources.includes(at))) said.push("The units are those of the headings.");
  if (sources.some((at, column) => at > column) && width === columns.length) {
    said.push(`By their headings the columns go like this: ${columns.map(({ words }, at) => `“${headings[sources[at]].text}” is ${words.toLowerCase()}`).join(", ")}.`);
  }
  const unused = headings.filter((_, at) => !sources.includes(at)).map((heading) => `“${heading.text}”`);
  if (unused.length) said.push(`Left out: ${unused.length === 1 ? "the column" : "the columns"} ${listed(unused)}.`);
  const unread = [...above, ...(headings.length && !places.some((place) => place >= 0) ? [headings.map((heading) => heading.text)] : [])];
  if (unread.length) {
    said.push(`Not understood: ${listed(unread.map((cells) => `“${cells.filter(Boolean).join("; ")}”`))}. Check that each column holds what its heading says.`);
  }
  said.push(...left);
  if (over.length) said.push(`The table holds no more: ${some(over.length, "row")} from ${over[0].join("; ")} on ${over.length === 1 ? "was" : "were"} left out.`);
  return { rows, said };
}

// The lines above the numbers: names of the columns with their units, or the units in a line of their own below.
/**
 * @param {string[][]} lines
 * @param {Column[]} columns
 */
function headingsOf(lines, columns) {
  const named = lines.map((cells) => placesOf(cells.map(headingOf), columns).filter((place) => place >= 0).length);
  const best = named.lastIndexOf(Math.max(...named));
  if (best < 0) return { headings: [], above: [] };
  const headings = lines[best].map(headingOf);
  const below = lines[best + 1];
  if (below && named[best]) {
    headings.forEach((heading, at) => {
      const unit = below[at].replace(/^[([](.*)[)\]]$/, "$1");
      if (unit && !heading.unit) headings[at] = { ...heading, unit, text: `${heading.text} (${unit})` };
    });
  }
  return { headings, above: lines.filter((_, at) => at !== best && !(below && named[best] && at === best + 1)) };
}
