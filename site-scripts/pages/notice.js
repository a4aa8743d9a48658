/** @typedef {{ words: string, act: () => void }} Offer */

// What is wrong with a link or a setting, as a notice in the page's text: before the node `near`, or below
// the title. offers: {words, act} each, a button. Nothing said: the notice goes.
/**
 * @param {string[]} sentences
 * @param {{ near?: Element | null, offers?: Offer[], kind?: string }} options
 */
export function tell(sentences, { near = null, offers = [], kind = "link-problem" } = {}) {
  const before = document.querySelector(`.notice.${kind}`);
  before?.remove();
  if (!sentences.length) return;
  const notice = document.createElement("div");
  notice.className = `notice ${kind}`;
  notice.setAttribute("role", "alert");
  for (const sentence of [sentences].flat()) {
    const line = document.createElement("p");
    line.textContent = sentence;
    notice.append(line);
  }
  for (const { words, act } of offers) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = words;
    button.addEventListener("click", act);
    notice.append(button);
  }
  const column = document.querySelector(".md-content__inner") || document.body;
  const title = column.querySelector(":scope > h1");
  if (near) {
    near.before(notice);
    if (!before) notice.scrollIntoView({ block: "start" });
  }
  else if (title) title.after(notice);
  else column.prepend(notice);
}
