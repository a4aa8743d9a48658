// Formulas. Pages arrive with theirs already set (site-scripts/typeset.py); this sets the ones that
// live answers add. An element is <span class="tex" data-tex="…">plain text</span>, with the class
// "display" too for a formula on a line of its own.
(function () {
  "use strict";

  function typeset(root) {
    if (window.katex) {
      for (const node of select(root, ".tex[data-tex]")) {
        if (node.querySelector(".katex, .katex-error")) continue;
        window.katex.render(node.dataset.tex, node, {
          displayMode: node.classList.contains("display"),
          throwOnError: false,
          trust: false,
          strict: "ignore",
        });
      }
    }
    markWide(root);
  }

  // A formula wider than its column scrolls, and whatever scrolls must be reachable by keyboard.
  // One that fits is no stop on the way through the page.
  function markWide(root) {
    for (const node of select(root, ".tex.display")) {
      if (node.scrollWidth > node.clientWidth + 1) {
        node.tabIndex = 0;
        node.setAttribute("role", "region");
        node.setAttribute("aria-label", "Wide formula, scrolls sideways");
      } else {
        for (const name of ["tabindex", "role", "aria-label"]) node.removeAttribute(name);
      }
    }
  }

  function select(root, selector) {
    const inside = [...root.querySelectorAll(selector)];
    return root.matches && root.matches(selector) ? [root, ...inside] : inside;
  }

  window.bookletMaths = { typeset };
  typeset(document);
  document.fonts.ready.then(() => markWide(document));
  let pending = 0;
  window.addEventListener("resize", () => {
    cancelAnimationFrame(pending);
    pending = requestAnimationFrame(() => markWide(document));
  });
})();
