// On a chapter's page: an address that holds a question's numbers was made when the chapter held its forms. The
// question is opened on its own page, with the same numbers. Read before anything is laid out, served and from disk.

import { QUESTION, read } from "./address.js";
import { tell } from "./notice.js";
import { sentenceOf } from "./sentence.js";

export function forwardOldAddress() {
  const listed = document.getElementById("question-pages");
  if (!listed) return;
  /** @type {Record<string, string>} */
  const addresses = JSON.parse(listed.textContent);
  const pages = new Map(Object.entries(addresses));

  function forward() {
    const { hash } = location;
    /** @type {string | undefined} */
    let asked;
    let told = "";
    try {
      asked = read(hash)?.get(QUESTION);
    } catch (problem) {
      told = sentenceOf(problem);
    }
    // A frame is for one form: the first of the chapter says what is wrong with the link.
    const alone = /[#&]only=form(&|$)/.test(hash);
    const to = (asked === undefined ? undefined : pages.get(asked)) ?? (alone ? [...pages.values()][0] : "");
    if (to) {
      location.replace(`${to}${hash}`);
      return;
    }
    if (asked !== undefined) told = "This link asks for a question that is not on this page. Look for it in the contents.";
    const say = () => {
      tell(told ? [told] : []);
      document.querySelector(".notice.link-problem")?.scrollIntoView({ block: "center" });
    };
    if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", say);
    else say();
  }

  window.addEventListener("hashchange", forward);
  forward();
}
