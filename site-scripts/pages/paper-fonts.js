// The fonts of papers as style rules that hold the fonts themselves, for files that are saved: a script, as a page opened
// from disk may read no other file. It is fetched when a first file is saved.

const HERE = /** @type {HTMLScriptElement} */ (document.currentScript).src;
/** @type {Promise<string> | null} */
let fetched = null;

// Resolves with the rules; with none where the script does not come: the file is saved without.
export function paperFonts() {
  fetched ??= /** @type {Promise<string>} */ (new Promise((resolve) => {
    const script = document.createElement("script");
    script.src = new URL(PAPER_FONTS, HERE).href;
    script.onload = () => resolve(window.bookletPaperFonts ?? "");
    script.onerror = () => resolve("");
    document.head.append(script);
  }));
  return fetched;
}
