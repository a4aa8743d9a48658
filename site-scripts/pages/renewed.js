// A worked answer in the place of the one before. What did not change stays, so that the browser does not lay it out
// again and whoever reads or has opened something there keeps it. Lines on view come first; the figures of the answer
// before, and the lines of parts that are folded, stand in their places, marked as waiting, until theirs come.

/**
 * Make an area hold what the markup holds.
 * @param {Element} area
 * @param {string} html rendered and escaped by calc
 */
export function renew(area, html) {
  const template = document.createElement("template");
  template.innerHTML = html;
  const drawn = new Map(places(area).map((place) => [place.dataset.drawing, [...place.children]]));
  const late = new Set(folds(template.content).filter(isHead).map((part) => part.dataset.part));
  children(area, template.content);
  for (const place of places(area)) {
    const before = drawn.get(place.dataset.drawing);
    if (!place.firstElementChild && before) place.append(...before);
    place.classList.add("waiting");
  }
  for (const part of folds(area)) part.classList.toggle("waiting", late.has(part.dataset.part));
  follow(area);
}

/**
 * Put folded parts and figures into their places; a place without one is left empty.
 * @param {Element} area
 * @param {Record<string, string>} drawings by the name of its place: SVG, and a table where the figure has one
 * @param {Record<string, string>} parts html by the key of the part
 */
export function draw(area, drawings, parts = {}) {
  for (const part of folds(area).filter(({ classList }) => classList.contains("waiting"))) {
    const template = document.createElement("template");
    template.innerHTML = parts[part.dataset.part ?? ""] ?? "";
    const whole = template.content.firstElementChild;
    if (whole) one(part, whole);
    else while (!isHead(part)) part.lastChild?.remove();
    part.classList.remove("waiting");
    follow(part);
  }
  for (const place of places(area)) {
    const template = document.createElement("template");
    template.innerHTML = drawings[place.dataset.drawing ?? ""] ?? "";
    children(place, template.content);
    place.classList.remove("waiting");
  }
}

/**
 * @param {Element} area
 * @returns {HTMLElement[]}
 */
function places(area) {
  return [...area.querySelectorAll("figure[data-drawing]")].filter((place) => place instanceof HTMLElement);
}

/**
 * @param {Element | DocumentFragment} root
 * @returns {HTMLDetailsElement[]}
 */
function folds(root) {
  return [...root.querySelectorAll("details.part")].filter((part) => part instanceof HTMLDetailsElement);
}

/**
 * Whether a folded part has no lines: they are still to come.
 * @param {Element} part
 */
function isHead(part) {
  return part.childNodes.length < 2;
}

/**
 * A choice that the reader has made once no longer follows its markup by itself.
 * @param {Element} root
 */
function follow(root) {
  for (const list of root.querySelectorAll("select")) {
    list.selectedIndex = Math.max(0, [...list.options].findIndex((option) => option.defaultSelected));
  }
}

/**
 * Nodes alike from the front and from the back are each other's; what is left between is replaced.
 * @param {Node} old
 * @param {Node} fresh
 */
function children(old, fresh) {
  const [were, are] = [[...old.childNodes], [...fresh.childNodes]];
  /** @type {Node | null} */
  let after = null;
  while (were.length && are.length && alike(were[0], are[0])) one(were.splice(0, 1)[0], are.splice(0, 1)[0]);
  while (were.length && are.length && alike(were[were.length - 1], are[are.length - 1])) {
    const [last] = were.splice(-1);
    after = one(last, are.splice(-1)[0]);
  }
  for (const node of were) node.parentNode?.removeChild(node);
  for (const node of are) old.insertBefore(node, after);
}

/**
 * @param {Node} was
 * @param {Node} is
 */
function alike(was, is) {
  if (!(was instanceof HTMLElement && is instanceof HTMLElement)) return was.nodeName === is.nodeName;
  const name = (/** @type {HTMLElement} */ node) =>
    [node.localName, node.classList[0], node.dataset.part, node.dataset.step, node.dataset.drawing].join(" ");
  return name(was) === name(is);
}

/**
 * Make one node what another one is; returns the node that stands there now.
 * @param {Node} was
 * @param {Node} is
 * @returns {Node}
 */
function one(was, is) {
  if (was.isEqualNode(is)) return was;
  if (!(was instanceof HTMLElement && is instanceof HTMLElement)) {
    was.parentNode?.replaceChild(is, was); // a text, a formula, a drawing
    return is;
  }
  if (is.dataset.drawing && !is.firstElementChild) return was; // the figure is still to come
  for (const { name } of [...was.attributes]) {
    if (!is.hasAttribute(name) && name !== "open") was.removeAttribute(name);
  }
  for (const { name, value } of is.attributes) if (was.getAttribute(name) !== value) was.setAttribute(name, value);
  if (is.matches("details.part") && isHead(is) && was.firstChild && is.firstChild) one(was.firstChild, is.firstChild);
  else children(was, is);
  return was;
}
