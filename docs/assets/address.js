// The state of a page in its address, after #: "#q=coulomb.force&Q1=+8nC&r=12cm&find=F".
// Rows of a table are parted by ~ and their cells by _ . Nothing here is trusted: what comes out is
// text, and goes into boxes as text.
(function () {
  "use strict";

  const LONGEST = 4000;
  const PLAIN = /%(2B|2C|2F|3A|40|C2%B7|CE%A9|C2%B5|C2%B0)/g;

  // [[name, text], …] -> "name=text&…"; spaces are left out, quantities read the same without.
  function write(pairs) {
    return pairs
      .filter(([, text]) => text !== "")
      .map(([name, text]) => `${encodeURIComponent(name)}=${lighten(text)}`)
      .join("&");
  }

  function lighten(text) {
    return encodeURIComponent(text.replace(/\s+/g, "")).replace(PLAIN, (code) => decodeURIComponent(code));
  }

  // "#name=text&…" -> Map, or null when it is no state of ours; throws Error with a sentence when it is damaged.
  function read(hash) {
    const body = hash.replace(/^#/, "");
    if (!/(^|&)(q|practice|paper)=/.test(body)) return null;
    if (body.length > LONGEST) throw new Error("This link is too long to be one of this booklet's. Ask for it again, or type the numbers.");
    const state = new Map();
    for (const piece of body.split("&")) {
      const cut = piece.indexOf("=");
      if (cut < 1) continue;
      try {
        state.set(decodeURIComponent(piece.slice(0, cut)), decodeURIComponent(piece.slice(cut + 1)));
      } catch {
        throw new Error("This link is damaged: a part of it cannot be read. Ask for it again, or type the numbers.");
      }
    }
    return state;
  }

  function rowsToText(rows) {
    return rows.map((row) => row.join("_")).join("~");
  }

  function textToRows(text) {
    return text.split("~").slice(0, 50).map((row) => row.split("_"));
  }

  // Puts the state into the address bar without a step in the history; a form alone in a frame stays alone.
  function show(state) {
    if (state && document.documentElement.classList.contains("only-form")) state += "&only=form";
    history.replaceState(null, "", state ? `#${state}` : location.pathname.split("/").pop() || ".");
  }

  window.bookletAddress = { write, read, rowsToText, textToRows, show };
})();
