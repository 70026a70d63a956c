// Fingers, pen and mouse on the floor: drag a player to where his move ends, or tap him and tap there.
import { aimedAt, DROP_CM, playerAt, tapped, targetsOf } from "./choice.js";
import { toFloor, viewOf } from "./geometry.js";

/** @typedef {import("./types.js").Cell} Cell */
/** @typedef {import("./types.js").Hand} Hand */
/** @typedef {import("./types.js").Parts} Parts */
/** @typedef {import("./types.js").Place} Place */
/** @typedef {import("./types.js").State} State */
/** @typedef {import("./types.js").Target} Target */

// A finger that shakes has not moved yet (estimate).
const SHAKE_PX = 8;

/**
 * @param {Parts} parts
 * @param {State} state
 * @param {Hand} hand
 * @param {(targets: Target[], aimed?: Target | null, from?: Place | null, to?: Place | null) => void} show
 * @param {Document} root
 * @param {AbortSignal} signal
 */
export function listenToDrags(parts, state, hand, show, root, signal) {
  const { svg } = parts;
  /** @type {{ pointer: number, x: number, y: number, cell: Cell | null, moved: boolean, aimed: Target | null } | null} */
  let grab = null;

  /** @param {{ clientX: number, clientY: number }} event */
  const placeOf = (event) => toFloor(viewOf(svg), event.clientX, event.clientY);
  const rest = () => {
    const chosen = hand.chosen();
    show(chosen === null ? [] : targetsOf(hand.cans(), hand.cells(), chosen));
  };
  const letGo = () => {
    if (!grab) return;
    grab = null;
    rest();
  };

  /** @param {PointerEvent} event */
  const press = (event) => {
    if (!event.isPrimary || event.button > 0 || /** @type {Element} */ (event.target).closest(".handle")) return;
    const cell = playerAt(hand.cells(), placeOf(event));
    grab = { pointer: event.pointerId, x: event.clientX, y: event.clientY, cell, moved: false, aimed: null };
    if (!cell) return;
    svg.setPointerCapture(event.pointerId);
    // A hand on a player holds the possession, so that nobody runs away from under it.
    if (state.now.playing) state.set({ playing: false });
  };
  /** @param {PointerEvent} event */
  const drag = (event) => {
    if (!grab || grab.pointer !== event.pointerId) return;
    grab.moved = grab.moved || Math.hypot(event.clientX - grab.x, event.clientY - grab.y) > SHAKE_PX;
    if (!grab.moved || !grab.cell || grab.cell.player === null) return;
    const cells = hand.cells();
    const at = placeOf(event);
    const targets = targetsOf(hand.cans(), cells, grab.cell.player);
    grab.aimed = aimedAt(targets, at, DROP_CM);
    show(targets, grab.aimed, [grab.cell.x, grab.cell.y], at);
  };
  /** @param {PointerEvent} event */
  const drop = (event) => {
    if (!grab || grab.pointer !== event.pointerId) return;
    const { moved, aimed } = grab;
    letGo();
    const act = moved ? aimed && { do: aimed.can } : tapped(hand.cells(), hand.cans(), hand.chosen(), placeOf(event));
    if (act) hand.act(act);
  };
  // A finger that starts on a player drags that player; on the empty floor it scrolls the page, two fingers zoom.
  /** @param {TouchEvent} event */
  const touch = (event) => {
    if (event.touches.length === 1 && event.cancelable && playerAt(hand.cells(), placeOf(event.touches[0]))) event.preventDefault();
  };
  /** @param {KeyboardEvent} event */
  const cancel = (event) => {
    if (event.key !== "Escape" || !grab) return;
    event.stopPropagation();
    letGo();
  };

  svg.addEventListener("pointerdown", press, { signal });
  svg.addEventListener("touchstart", touch, { signal, passive: false });
  svg.addEventListener("pointermove", drag, { signal });
  svg.addEventListener("pointerup", drop, { signal });
  svg.addEventListener("pointercancel", letGo, { signal });
  root.addEventListener("keydown", cancel, { signal, capture: true });
  return { rest };
}
