// Copying a text. Clipboards are refused on some pages, those from disk among them: then the text is shown, selected.

// near: the node that says what was done; the text is shown after it. label: what the text is, for a screen reader.
// Returns the sentence to say: `done` when it was copied.
/**
 * @param {string} text
 * @param {{ near: HTMLElement, label: string, done: string, advice?: string }} how
 */
export async function copied(text, { near, label, done, advice = "" }) {
  forgetCopy(near);
  try {
    await navigator.clipboard.writeText(text);
    return `${done} ${advice}`.trim();
  } catch {
    const box = document.createElement("textarea");
    box.className = "copy-box";
    box.readOnly = true;
    box.rows = Math.min(12, Math.max(3, text.split("\n").length));
    box.value = text;
    box.setAttribute("aria-label", label);
    forgetCopy(near);
    near.after(box);
    box.focus();
    box.select();
    return `Copy the marked text below. ${advice}`.trim();
  }
}

// Takes away a text shown before.
/** @param {HTMLElement} near */
export function forgetCopy(near) {
  if (near.nextElementSibling?.matches(".copy-box")) near.nextElementSibling.remove();
}
