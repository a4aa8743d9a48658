// A question alone, for a frame in another page: "coulombs-law/force.html#open.question=coulomb.force&only=form".
// Read before the page is laid out, so that the rest of the page is never seen.

import { QUESTION, read } from "./address.js";
import { every } from "./elements.js";

export function showOnlyForm() {
  const html = document.documentElement;
  if (!/(^|[#&])only=form(&|$)/.test(location.hash)) return;
  html.classList.add("only-form");

  function asked() {
    try {
      return read(location.hash)?.get(QUESTION) ?? "";
    } catch {
      return ""; // the page says what is wrong with the link
    }
  }

  document.addEventListener("DOMContentLoaded", () => {
    const sections = every(document, "section.question");
    const section = sections.find((one) => one.dataset.question === asked()) || sections[0];
    if (!section) {
      html.classList.remove("only-form");
      return;
    }
    section.classList.add("only-this");
    const whole = document.createElement("p");
    whole.className = "whole-page";
    const link = document.createElement("a");
    link.href = location.href.split("#")[0];
    link.target = "_blank";
    link.rel = "noopener";
    link.textContent = "The whole page, with explanations";
    whole.append(link);
    section.append(whole);
    if (window.parent === window) return;
    // The host may fit the frame to its content; all that is sent is a height.
    new ResizeObserver(() => {
      window.parent.postMessage({ bookletHeight: Math.ceil(section.getBoundingClientRect().bottom + window.scrollY + 16) }, "*");
    }).observe(section);
  });
}
