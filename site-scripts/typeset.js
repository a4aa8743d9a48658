// Set formulas with KaTeX, all of a build in one process.
// stdin: JSON list of {tex, display}. stdout: JSON list of {html} or {error}, in the same order.
"use strict";
const katex = require("katex");

let input = "";
process.stdin.setEncoding("utf8");
process.stdin.on("data", (chunk) => { input += chunk; });
process.stdin.on("end", () => {
  const answers = JSON.parse(input).map(({ tex, display }) => {
    try {
      const options = { displayMode: display, throwOnError: true, trust: false, strict: "ignore" };
      return { html: katex.renderToString(tex, options) };
    } catch (error) {
      return { error: error.message };
    }
  });
  process.stdout.write(JSON.stringify(answers));
});
