// Shared by loader, worker and engine, put in front of each by the build.

/** A file of the site. A page in its place, as a network's sign-in is, counts as damage. */
async function fetched(address) {
  let response;
  try {
    response = await fetch(address);
  } catch (error) {
    throw new Error(`${address} could not be fetched (${error})`);
  }
  if (!response.ok) throw new Error(`${address} answered ${response.status}`);
  if (/text\/html/i.test(response.headers.get("Content-Type"))) throw new Error(`${address} is damaged`);
  return response;
}

/** A response of the file's own bytes, whether or not the server has undone the gzip. */
async function unpacked(given) {
  const response = typeof given === "string" ? new Response(decode(given)) : given;
  const reader = response.body.getReader();
  const { value: head = new Uint8Array(0) } = await reader.read();
  const rest = new ReadableStream({
    start: (into) => into.enqueue(head),
    async pull(into) {
      const { value, done } = await reader.read();
      if (done) into.close();
      else into.enqueue(value);
    },
    cancel: (reason) => reader.cancel(reason),
  });
  const gzip = head[0] === 0x1f && head[1] === 0x8b;
  return new Response(gzip ? rest.pipeThrough(new DecompressionStream("gzip")) : rest, {
    headers: { "Content-Type": "application/wasm" },
  });
}

/** The core, compiled while its file arrives. */
async function compiled(given, name) {
  const file = await unpacked(given);
  return WebAssembly.compileStreaming(file).catch((error) => {
    throw error instanceof RangeError ? error : new Error(`${name} is damaged (${error})`);
  });
}

function decode(base64) {
  if (Uint8Array.fromBase64) return Uint8Array.fromBase64(base64);
  const text = atob(base64);
  const found = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) found[i] = text.charCodeAt(i);
  return found;
}
