// What each page needs, whatever stands on it.

import { around, every } from "./elements.js";
import { startFormulas } from "./formulas.js";
import "./print-link.js";

startFormulas();

if (location.protocol === "file:") {
  // A copy from disk does not hold itself.
  for (const link of every(document, 'a[href$="booklet-offline.zip"]')) {
    const line = around(link, "p");
    if (line) line.hidden = true;
  }
}
