// A grip on the floor that is dragged by finger, pen, mouse or arrow keys: a mark or a spot that a coach moves.
import { scaleOf, toFloor, viewOf } from "./geometry.js";
import { giveFocus } from "./keep.js";
import { move, put } from "./render.js";
import { svgNode } from "./svg.js";

/** @typedef {import("./types.js").Grip} Grip */
/** @typedef {import("./types.js").Parts} Parts */
/** @typedef {import("./types.js").Place} Place */

const STEP_CM = 10;
const STRIDE_CM = 50;
const ARROWS = /** @type {Record<string, Place>} */ ({ ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] });
// Drawn in pixels, half the grip's width: a leaf with two strokes to hold it by.
const SHAPE =
  '<rect class="reach" x="-22" y="-22" width="44" height="44"/><rect class="gap" x="-17" y="-17" width="34" height="34" rx="4"/>' +
  '<rect class="square" x="-17" y="-17" width="34" height="34" rx="4"/><rect class="grip" x="-11" y="-11" width="22" height="22" rx="3"/><path class="grip-lines" d="M-5-3H5M-5 3H5"/>';

/**
 * Puts a handle on the floor. Arrow keys go 10 cm on the screen, with Shift 50; Enter, or going elsewhere, drops;
 * Escape gives back the place it had.
 * @param {Parts} parts
 * @param {Grip} spec
 * @returns {{ node: SVGElement, put: (x: number, y: number) => void, remove: () => void }}
 */
export function handle(parts, spec) {
  const { svg } = parts;
  const ends = new AbortController();
  const { signal } = ends;
  const node = svgNode("g", { class: "handle", role: "slider", tabindex: "0", "data-handle": spec.id, "aria-label": spec.label, "aria-valuemin": "0" });
  const shape = svgNode("g");
  shape.innerHTML = SHAPE;
  node.append(shape);
  svg.append(node);

  /** @type {Place} */
  let kept = [spec.x, spec.y];
  /** @type {Place} */
  let at = kept;
  /** @type {{ pointer: number, dx: number, dy: number } | null} */
  let grab = null;

  const draw = () => {
    const [x, y] = at;
    const right = x < 0 ? " m left, " : " m right, ";
    move(node, x, y);
    put(shape, "transform", "scale(" + (1 / scaleOf(viewOf(svg))).toFixed(3) + ")");
    put(node, "aria-valuenow", String(Math.round(Math.hypot(x, y))));
    put(node, "aria-valuetext", spec.said ? spec.said(x, y) : (Math.abs(x) / 100).toFixed(1) + right + (y / 100).toFixed(1) + " m out");
  };
  /** @param {Place} place */
  const go = ([x, y]) => {
    const next = spec.limit(x, y);
    if (next[0] === at[0] && next[1] === at[1]) return;
    at = next;
    draw();
    spec.move(at[0], at[1]);
  };
  const drop = () => {
    if (at[0] === kept[0] && at[1] === kept[1]) return;
    kept = at;
    spec.drop(at[0], at[1]);
  };
  const giveBack = () => {
    grab = null;
    if (at[0] === kept[0] && at[1] === kept[1]) return false;
    at = kept;
    draw();
    spec.move(at[0], at[1]);
    return true;
  };

  /** @param {PointerEvent} event */
  const press = (event) => {
    if (!event.isPrimary || event.button > 0) return;
    const [x, y] = toFloor(viewOf(svg), event.clientX, event.clientY);
    grab = { pointer: event.pointerId, dx: at[0] - x, dy: at[1] - y };
    node.setPointerCapture(event.pointerId);
    node.focus({ preventScroll: true });
  };
  /** @param {PointerEvent} event */
  const drag = (event) => {
    if (!grab || grab.pointer !== event.pointerId) return;
    const [x, y] = toFloor(viewOf(svg), event.clientX, event.clientY);
    go([x + grab.dx, y + grab.dy]);
  };
  /** @param {PointerEvent} event */
  const lift = (event) => {
    if (!grab || grab.pointer !== event.pointerId) return;
    grab = null;
    drop();
  };
  /** @param {KeyboardEvent} event */
  const key = (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const toward = ARROWS[event.key];
    if (toward) {
      const by = (event.shiftKey ? STRIDE_CM : STEP_CM) * (svg.classList.contains("turned") ? -1 : 1);
      go([at[0] + toward[0] * by, at[1] + toward[1] * by]);
    } else if (event.key === "Enter") drop();
    else if (event.key !== "Escape" || !giveBack()) return;
    event.preventDefault();
    event.stopPropagation();
  };
  node.addEventListener("touchstart", (event) => event.cancelable && event.preventDefault(), { passive: false });
  node.addEventListener("pointerdown", press);
  node.addEventListener("pointermove", drag);
  node.addEventListener("pointerup", lift);
  node.addEventListener("pointercancel", giveBack);
  node.addEventListener("keydown", key);
  node.addEventListener("blur", drop, { signal });
  addEventListener("resize", draw, { signal });
  put(node, "aria-valuemax", String(Math.round(Math.hypot(svg.viewBox.baseVal.width, svg.viewBox.baseVal.height))));
  draw();
  giveFocus(parts.court);
  return {
    node,
    put: (x, y) => {
      kept = at = [x, y];
      draw();
    },
    remove: () => {
      ends.abort();
      node.remove();
    },
  };
}
