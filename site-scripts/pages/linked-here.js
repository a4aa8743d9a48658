// What the page's address asks of it. A damaged link is said in a notice, and settings that it brings hold from here on.

import { read } from "./address.js";
import { tell } from "./notice.js";
import { sentenceOf } from "./sentence.js";
import { take } from "./settings.js";

// The state of the address where it has `key`; null where it asks for nothing of the kind, or cannot be read.
/**
 * @param {string} key
 * @returns {Map<string, string> | null}
 */
export function linkedHere(key) {
  tell([]);
  try {
    const linked = read(location.hash);
    if (!linked?.has(key)) return null;
    take(linked);
    return linked;
  } catch (problem) {
    tell([sentenceOf(problem)]);
    return null;
  }
}
