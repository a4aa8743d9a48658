// What stands in a page, found by its selector, with the type it has there.

/** @typedef {HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement} Box what a reader fills in */

/**
 * Everything of a kind that a selector finds.
 * @template {Element} [E=HTMLElement]
 * @param {ParentNode} root
 * @param {string} selector
 * @param {new () => E} [kind]
 * @returns {E[]}
 */
export function every(root, selector, kind) {
  return [...root.querySelectorAll(selector)].flatMap((node) => of(node, kind) ?? []);
}

/**
 * The first that a selector finds; null where it finds nothing of the kind.
 * @template {Element} [E=HTMLElement]
 * @param {ParentNode} root
 * @param {string} selector
 * @param {new () => E} [kind]
 * @returns {E | null}
 */
export function first(root, selector, kind) {
  return of(root.querySelector(selector), kind);
}

/**
 * What the build always puts there.
 * @template {Element} [E=HTMLElement]
 * @param {ParentNode} root
 * @param {string} selector
 * @param {new () => E} [kind]
 * @returns {E}
 */
export function one(root, selector, kind) {
  const node = first(root, selector, kind);
  if (!node) throw new Error(`This page has no ${selector} where its scripts look for one. Reload the page.`);
  return node;
}

/**
 * The element of an event, or of a node, that a selector finds there or around it.
 * @template {Element} [E=HTMLElement]
 * @param {EventTarget | null} target
 * @param {string} selector
 * @param {new () => E} [kind]
 * @returns {E | null}
 */
export function around(target, selector, kind) {
  return target instanceof Element ? of(target.closest(selector), kind) : null;
}

/**
 * @template {Element} E
 * @param {Element | null} node
 * @param {(new () => E) | undefined} kind
 * @returns {E | null}
 */
function of(node, kind) {
  return node instanceof (kind ?? HTMLElement) ? /** @type {E} */ (node) : null;
}

/**
 * @param {EventTarget | null} node
 * @returns {node is Box}
 */
export function isBox(node) {
  return node instanceof HTMLInputElement || node instanceof HTMLSelectElement || node instanceof HTMLTextAreaElement;
}

/**
 * The boxes that a selector finds.
 * @param {ParentNode} root
 * @param {string} selector
 */
export function boxesIn(root, selector) {
  return [...root.querySelectorAll(selector)].filter(isBox);
}

/**
 * The box that a selector finds first.
 * @param {ParentNode} root
 * @param {string} selector
 */
export function boxIn(root, selector) {
  return boxesIn(root, selector)[0] ?? null;
}

/** @param {HTMLInputElement} box a box that is ticked, alone or one of several */
export function isTicked(box) {
  return box.type === "radio" || box.type === "checkbox";
}
