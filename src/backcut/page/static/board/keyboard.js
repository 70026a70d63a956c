import { stepBack } from "./events.js";

/** @typedef {import("./types.js").Parts} Parts */
/** @typedef {import("./types.js").Player} Player */
/** @typedef {import("./types.js").State} State */

const NUDGE_CS = 20;
// Where somebody writes or picks, every key is theirs.
const WRITING = "textarea, select, [contenteditable], [role=listbox], [role=option], [role=combobox], dialog, dialog *";

/**
 * Space plays, arrows and a clicker's page keys step, Home and End go to the ends; on the strip arrows move the time.
 * @param {Parts} parts
 * @param {State} state
 * @param {Player} player
 * @param {Document} root
 * @param {AbortSignal} signal
 */
export function listenToKeys(parts, state, player, root, signal) {
  /** @type {Record<string, () => void>} */
  const step = {
    ArrowLeft: () => state.goMoment(stepBack(state)),
    ArrowRight: () => state.goMoment(state.now.moment + 1),
    PageUp: () => state.goMoment(stepBack(state)),
    PageDown: () => state.goMoment(state.now.moment + 1),
    Home: () => state.goMoment(0),
    End: () => state.goMoment(state.times.length - 1),
    " ": () => player.toggle(),
  };
  /** @param {number} by */
  const nudge = (by) => () => state.goTime(state.now.t + by, { playing: false });
  const slide = { ...step, ArrowLeft: nudge(-NUDGE_CS), ArrowDown: nudge(-NUDGE_CS), ArrowRight: nudge(NUDGE_CS), ArrowUp: nudge(NUDGE_CS) };

  /** @param {KeyboardEvent} event */
  const press = (event) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
    const on = /** @type {Element} */ (event.target);
    if (on.matches(WRITING) || on.matches("input:not([type=radio])")) return;
    if (on.matches("input") && event.key !== " " && !event.key.startsWith("Page")) return;
    if (event.key === " " && on.matches("button, a, input, summary")) return;
    const act = (on === parts.slider ? slide : step)[event.key];
    if (!act) return;
    event.preventDefault();
    act();
  };
  root.addEventListener("keydown", press, { signal });
}
