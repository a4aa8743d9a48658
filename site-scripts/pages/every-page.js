// What each page needs, whatever stands on it.

import { startFormulas } from "./formulas.js";
import "./print-link.js";

startFormulas();

if (location.protocol === "file:") {
  // A copy from disk does not hold itself.
  for (const link of document.querySelectorAll('a[href$="booklet-offline.zip"]')) link.closest("p").hidden = true;
}
