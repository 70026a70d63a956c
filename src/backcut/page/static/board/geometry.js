// From the screen to the floor and back. The floor fills its box like "xMidYMin slice": from the top, cut at the foot;
// turned, the whole box is turned, so it is cut at the head.

/** @typedef {import("./types.js").Place} Place */
/** @typedef {import("./types.js").View} View */

/**
 * @param {SVGSVGElement} svg
 * @returns {View}
 */
export function viewOf(svg) {
  const { left, top, width, height } = svg.getBoundingClientRect();
  const { x, y, width: w, height: h } = svg.viewBox.baseVal;
  return { left, top, width, height, x, y, w, h, turned: svg.classList.contains("turned") };
}

/**
 * Pixels a centimetre.
 * @param {View} view
 */
export function scaleOf(view) {
  return Math.max(view.width / view.w, view.height / view.h);
}

/**
 * @param {View} view
 * @param {number} clientX
 * @param {number} clientY
 * @returns {Place}
 */
export function toFloor(view, clientX, clientY) {
  const right = clientX - view.left;
  const down = clientY - view.top;
  const [px, py] = view.turned ? [view.width - right, view.height - down] : [right, down];
  const scale = scaleOf(view);
  return [view.x + view.w / 2 + (px - view.width / 2) / scale, view.y + py / scale];
}

/**
 * @param {View} view
 * @param {Place} place
 * @returns {[clientX: number, clientY: number]}
 */
export function toScreen(view, [x, y]) {
  const scale = scaleOf(view);
  const px = view.width / 2 + (x - view.x - view.w / 2) * scale;
  const py = (y - view.y) * scale;
  const [right, down] = view.turned ? [view.width - px, view.height - py] : [px, py];
  return [view.left + right, view.top + down];
}

/**
 * @param {Place} a
 * @param {Place} b
 */
export function apart([ax, ay], [bx, by]) {
  return Math.hypot(ax - bx, ay - by);
}
