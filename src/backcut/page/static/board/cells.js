// The floor as places that can be walked to: a button on every player and every empty spot, with its words.
import { isArrow, keyed, walked } from "./choice.js";
import { stepBack } from "./events.js";
import { move, put } from "./render.js";
import { svgNode } from "./svg.js";

/** @typedef {import("./types.js").Cell} Cell */
/** @typedef {import("./types.js").Hand} Hand */
/** @typedef {import("./types.js").Parts} Parts */
/** @typedef {import("./types.js").State} State */

const SHAPES =
  '<circle class="reach" r="90"/><g class="m"><path class="gap" d="M-84-84H84V84H-84Z"/><path class="square" d="M-84-84H84V84H-84Z"/>' +
  '<path class="corners" d="M-84-50V-84H-50M50-84H84V-50M84 50V84H50M-50 84H-84V50"/></g>';

/**
 * @param {Parts} parts
 * @param {State} state
 * @param {Hand} hand
 * @returns {{ draw: () => void }} `draw` puts every cell where it is now; the focus stays on the cell of the same id
 */
export function makeCells(parts, state, hand) {
  const { svg } = parts;
  const group = svgNode("g", { id: "cells", role: "application", "aria-label": "Players and spots: arrow keys walk" });
  /** @type {Map<string, SVGElement>} */
  const nodes = new Map();
  /** @type {Cell[]} */
  let cells = [];
  let here = "";

  /** @param {string} id */
  const cellOf = (id) => cells.find((cell) => cell.id === id);
  /** @param {Event} event */
  const cellUnder = (event) => {
    const node = /** @type {Element} */ (event.target).closest("[data-cell]");
    return node ? cellOf(node.getAttribute("data-cell") || "") : undefined;
  };
  const rove = () => nodes.forEach((node, id) => put(node, "tabindex", id === here ? "0" : "-1"));
  /** @param {Cell} cell */
  const goTo = (cell) => {
    const node = nodes.get(cell.id);
    if (node) node.focus({ preventScroll: true });
  };

  /** @param {Cell} cell */
  const make = (cell) => {
    const node = svgNode("g", { class: "cell", role: "button", "data-cell": cell.id, tabindex: "-1" });
    node.innerHTML = SHAPES;
    nodes.set(cell.id, node);
    return node;
  };
  const draw = () => {
    const before = cellOf(here);
    const held = group.contains(document.activeElement);
    cells = hand.cells();
    const ids = new Set(cells.map((cell) => cell.id));
    for (const [id, node] of nodes) {
      if (ids.has(id)) continue;
      nodes.delete(id);
      node.remove();
    }
    for (const cell of cells) {
      const node = nodes.get(cell.id) || make(cell);
      if (!node.parentNode) group.append(node);
      put(node, "aria-label", cell.label);
      if (cell.player !== null) put(node, "aria-pressed", String(cell.player === hand.chosen()));
      move(node, cell.x, cell.y);
    }
    if (cellOf(here)) return;
    const near = before ? nearestTo(before, cells) : cells.find((cell) => cell.ball) || cells[0];
    here = near ? near.id : "";
    rove();
    if (held && near) goTo(near);
  };

  group.addEventListener("focusin", (event) => {
    const cell = cellUnder(event);
    if (!cell) return;
    here = cell.id;
    rove();
  });
  group.addEventListener("keydown", (event) => {
    const cell = cellUnder(event);
    if (!cell || event.ctrlKey || event.metaKey || event.altKey) return;
    const { key } = event;
    if (isArrow(key)) {
      const next = walked(cells, cell, key, svg.classList.contains("turned"));
      if (next) goTo(next);
    } else if (key === ",") state.goMoment(stepBack(state));
    else if (key === ".") state.goMoment(state.now.moment + 1);
    else {
      const act = keyed(cells, hand.cans(), hand.chosen(), cell, key);
      if (!act) return;
      hand.act(act);
    }
    event.preventDefault();
    event.stopPropagation();
  });
  // A click without a pointer comes from a program that reads or acts for somebody: it is the same as Enter.
  group.addEventListener("click", (event) => {
    const cell = cellUnder(event);
    const act = cell && event.detail === 0 ? keyed(cells, hand.cans(), hand.chosen(), cell, "Enter") : null;
    if (act) hand.act(act);
  });

  // The picture was one image with a description; now its places are read one by one, and the drawing itself is silent.
  svg.setAttribute("role", "group");
  for (const child of svg.children) if (child.matches("g")) child.setAttribute("aria-hidden", "true");
  svg.append(group);
  draw();
  return { draw };
}

/**
 * @param {Cell} from
 * @param {Cell[]} cells
 */
function nearestTo(from, cells) {
  const away = (/** @type {Cell} */ cell) => Math.hypot(cell.x - from.x, cell.y - from.y);
  return [...cells].sort((a, b) => away(a) - away(b))[0];
}
