// In scope for Pyodide's own scripts, in the place of the browser's functions of these names:
// nothing inside the engine can reach an address, every file comes from memory.
"use strict";
let files = {};
let instantiate = null;

async function fetch(address) {
  const name = String(address).split("/").pop();
  if (name === "pyodide.asm.wasm") return new Response();
  if (files[name]) return new Response(files[name]);
  throw new TypeError(`"${name}" is not part of this runtime.`);
}

const WebAssembly = Object.create(globalThis.WebAssembly, {
  instantiateStreaming: { value: (_response, imports) => instantiate(imports) },
});
