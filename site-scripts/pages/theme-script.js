// The theme's own script, which a page names and does not run (theme/main.html). It measures the whole page several
// times over, which takes longer than all scripts of ours together: it comes when forms are live. What it serves, the
// menu on a narrow screen and the find box, is opened by a reader and not by the page.

export function startThemeLate() {
  document.addEventListener("DOMContentLoaded", () => {
    const named = document.querySelector("script.theme-script");
    if (!(named instanceof HTMLScriptElement)) return;
    const script = document.createElement("script");
    script.src = named.src;
    // It waits for the page to be parsed, which it was before it came: what belongs to the text is set up only then.
    script.onload = () => window.document$?.next(document);
    document.body.append(script);
  });
}
