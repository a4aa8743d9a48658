// The memory image: what is zeroed before it is packed.

import assert from "node:assert/strict";
import { test } from "node:test";
import { clearFree } from "../../site-scripts/runtime/pack_image.mjs";

const STACK = 64;
const BASE = 128;

/** A heap full of ones, its blocks one after the other: [size, in use]. */
function heapOf(blocks) {
  const end = BASE + blocks.reduce((sum, [size]) => sum + size, 0) + 64;
  const heap = new Uint8Array(end).fill(1);
  const view = new DataView(heap.buffer);
  let at = BASE;
  let before = 1;
  for (const [size, used] of blocks) {
    view.setUint32(at + 4, size | (used ? 2 : 0) | before, true);
    before = used ? 1 : 0;
    at += size;
  }
  return { heap, room: { base: BASE, end, stackEnd: 16, stack: STACK } };
}

test("what a free block held is zeroed, its links and its neighbours are kept", () => {
  const { heap, room } = heapOf([[48, true], [40, false], [400, false], [24, true]]);
  assert.equal(clearFree(heap, room), 40 - 16 + 400 - 32);
  const kept = (from, to) => heap.subarray(from, to).every((byte) => byte !== 0);
  assert.ok(kept(BASE + 8, BASE + 48), "the block in use");
  assert.ok(kept(BASE + 56, BASE + 64), "the links of a small free block");
  assert.ok(heap.subarray(BASE + 64, BASE + 88).every((byte) => byte === 0), "the rest of it");
  assert.ok(kept(BASE + 96, BASE + 120), "the links of a large free block");
  assert.ok(heap.subarray(BASE + 120, BASE + 488).every((byte) => byte === 0), "the rest of it");
  assert.ok(kept(BASE + 496, BASE + 512), "the last block in use");
});

test("the part of the stack that is not in use is zeroed, and no more", () => {
  const { heap, room } = heapOf([[48, true]]);
  clearFree(heap, room);
  assert.ok(heap.subarray(16, STACK).every((byte) => byte === 0));
  assert.ok([15, STACK].every((at) => heap[at] === 1));
});

test("a heap of another allocator is refused", () => {
  const { heap, room } = heapOf([[48, true]]);
  heap.fill(0, BASE, BASE + 8);
  assert.throws(() => clearFree(heap, room), /No block of the allocator begins at 128/);
});
