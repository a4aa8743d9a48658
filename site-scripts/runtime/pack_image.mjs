// The memory image as the page gets it: only what a freshly started core does not have anyway.
//
// Little-endian 32-bit words: heap size, head size, check, number of pages,
// size of the core's data. Then the head (what
// Pyodide put before the heap), one kind per page of 4096 bytes, and the content of each page of
// kind STORED or CHANGED; all of it begins at a multiple of four. engine.js reads it.
export const PAGE = 4096;
export const ZERO = 0; // all zero
export const STORED = 1; // content as it is
export const SAME = 2; // as in a fresh core
export const CHANGED = 3; // XOR with a fresh core, which leaves mostly zeros

/** Bytes that belong in front of the heap in an image made by Pyodide: its second word. */
export function headSize(image) {
  return new DataView(image.buffer, image.byteOffset).getUint32(4, true);
}

/**
 * Zero what freed objects and ended calls left behind in a heap: it would be packed and shipped.
 *
 * base, end: what the allocator shares out. stackEnd, stack: the part of the stack that is not in use.
 * The allocator is dlmalloc, the usual one of Emscripten: blocks follow each other without a gap, each begins with the
 * size of the one before where that is free, then its own, whose lowest bits tell that the one before (1) and
 * it itself (2) are in use. A free block keeps its links at its beginning.
 */
export function clearFree(heap, { base, end, stackEnd, stack }) {
  heap.fill(0, stackEnd, stack);
  const view = new DataView(heap.buffer, heap.byteOffset, heap.byteLength);
  let cleared = 0;
  let at = base;
  while (at < end - 64) {
    const head = view.getUint32(at + 4, true);
    const size = head & ~7;
    if (size < 16 || at + size > end) throw new Error(`No block of the allocator begins at ${at}: is it another one now?`);
    const links = size < 256 ? 16 : 32;
    if (!(head & 2) && size > links) {
      heap.fill(0, at + links, at + size);
      cleared += size - links;
    }
    at += size;
  }
  return cleared;
}

/**
 * data: the start of the heap as a fresh core has it, all addresses set and no code run yet. It
 * follows from the core alone, whatever the browser; the check, over every
 * 16th word, tells a page that it did.
 */
export function packImage(image, data) {
  const head = image.subarray(0, headSize(image));
  const heap = image.subarray(head.length);
  const count = heap.length / PAGE;
  const kinds = new Uint8Array(count);
  const contents = [];
  let check = 0;
  for (let page = 0; page < count; page++) {
    const at = page * PAGE;
    const words = wordsOf(heap, at);
    const base = at + PAGE <= data.length ? wordsOf(data, at) : [];
    if (base.some((word) => word !== 0)) {
      for (let i = 0; i < base.length; i += 16) check = Math.imul(check ^ base[i], 16777619);
      const change = words.map((word, i) => word ^ base[i]);
      kinds[page] = change.some((word) => word !== 0) ? CHANGED : SAME;
      if (kinds[page] === CHANGED) contents.push(change);
    } else if (words.some((word) => word !== 0)) {
      kinds[page] = STORED;
      contents.push(words);
    }
  }
  const words = Uint32Array.of(heap.length, head.length, check >>> 0, count, data.length);
  const parts = [words, head, kinds, ...contents];
  return Buffer.concat(parts.map((p) => Buffer.from(p.buffer, p.byteOffset, p.byteLength)));
}

function wordsOf(heap, at) {
  return new Uint32Array(heap.slice(at, at + PAGE).buffer);
}
