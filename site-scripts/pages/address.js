// The state of a page in its address, after #: "#open.question=coulomb.force&Q1=+8nC&r=12cm&find=F".
// A box has its own name as key; what a link says besides has a dot in its key, which no box's name can
// have, or is an older word that calc lets no box have. Rows of a table are parted by ~ and their cells
// by _ . Nothing here is trusted: what comes out is text, and goes into boxes as text.

export const QUESTION = "open.question";
const OLD_QUESTION = "q"; // in links given out before; a box may have this name too
const LONGEST = 4000;
const PLAIN = /%(2B|2C|2F|3A|40|C2%B7|CE%A9|C2%B5|C2%B0)/g;
// One number and one unit: read the same without their spaces. Any other text keeps them ("5 m s^-2").
const LOOSE = /^[+\-−–]?\s*(\d+|[1-9]\d{0,2}(\s\d{3})+)([.,]\d+)?([eE][+\-−–]?\d+|\s*[xX×*·]\s*10\s*(\^\s*[+\-−–]?\s*\d+|[⁺⁻]?[⁰¹²³⁴-⁹]+))?\s*[^\s\d]*$/;

// [[name, text], …] -> "name=text&…".
/** @param {string[][]} pairs */
export function write(pairs) {
  return pairs
    .filter(([, text]) => text !== "")
    .map(([name, text]) => `${encodeURIComponent(name)}=${lighten(text)}`)
    .join("&");
}

/** @param {string} text */
function lighten(text) {
  return encodeURIComponent(tight(text)).replace(PLAIN, (code) => decodeURIComponent(code));
}

/** @param {string} text */
function tight(text) {
  const plain = text.trim().replace(/\s+/g, " ");
  return LOOSE.test(plain) ? plain.replaceAll(" ", "") : plain;
}

// "#name=text&…" -> Map, or null when it is no state of ours; throws Error with a sentence when it is damaged.
/**
 * @param {string} hash
 * @returns {Map<string, string> | null}
 */
export function read(hash) {
  const body = hash.replace(/^#/, "");
  if (!/(^|&)(open\.question|q|practice|paper)=/.test(body)) return null;
  if (body.length > LONGEST) throw new Error("This link is too long to be one of this booklet's. Ask for it again, or type the numbers.");
  /** @type {[string, string][]} */
  const pairs = [];
  for (const piece of body.split("&")) {
    const cut = piece.indexOf("=");
    if (cut < 1) continue;
    try {
      pairs.push([decodeURIComponent(piece.slice(0, cut)), decodeURIComponent(piece.slice(cut + 1))]);
    } catch {
      throw new Error("This link is damaged: a part of it cannot be read. Ask for it again, or type the numbers.");
    }
  }
  if (!pairs.some(([name]) => name === QUESTION)) nameTheQuestion(pairs);
  return new Map(pairs);
}

// An older link says q for the question, and for a box q besides. A question's key tells itself by its
// form; where none has it, the first q is the question.
/** @param {[string, string][]} pairs */
function nameTheQuestion(pairs) {
  const called = pairs.filter(([name]) => name === OLD_QUESTION);
  const pair = called.find(([, text]) => /^[a-z][a-z-]*\.[a-z][a-z0-9-]*$/.test(text)) || called[0];
  if (pair) pair[0] = QUESTION;
}

// A cell that holds a parting sign keeps it as its code.
/** @param {string[][]} rows */
export function rowsToText(rows) {
  return rows.map((row) => row.map((cell) => tight(cell).replaceAll("~", "%7E").replaceAll("_", "%5F")).join("_")).join("~");
}

/** @param {string} text */
export function textToRows(text) {
  return text.split("~").slice(0, 50).map((row) => row.split("_").map((cell) => cell.replaceAll("%7E", "~").replaceAll("%5F", "_")));
}
