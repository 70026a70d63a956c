// Hands on the page: buttons, the strip, the speeds, the list of decisions.

/** @typedef {import("./types.js").Parts} Parts */
/** @typedef {import("./types.js").Player} Player */
/** @typedef {import("./types.js").Size} Size */
/** @typedef {import("./types.js").Speed} Speed */
/** @typedef {import("./types.js").State} State */

/**
 * @param {Parts} parts
 * @param {State} state
 * @param {Player} player
 * @param {() => Size} size
 * @param {AbortSignal} signal
 */
export function listenToHands(parts, state, player, size, signal) {
  const { before, next, play, slider, speeds, links } = parts;
  before.addEventListener("click", () => state.goMoment(stepBack(state)), { signal });
  next.addEventListener("click", () => state.goMoment(state.now.moment + 1), { signal });
  play.addEventListener("click", player.toggle, { signal });
  speeds.forEach((radio) => radio.addEventListener("change", () => state.set({ speed: /** @type {Speed} */ (radio.value) }), { signal }));
  links.forEach((link) => link.addEventListener("click", () => state.goMoment(Number(link.dataset.go)), { signal }));

  let left = 0;
  /** @param {PointerEvent} event */
  const scrub = (event) => {
    const x = event.clientX - left + size().shift;
    state.goTime((x / size().second) * 100, { playing: false });
  };
  /** @param {PointerEvent} event */
  const press = (event) => {
    if (event.button > 0) return;
    slider.setPointerCapture(event.pointerId);
    left = slider.getBoundingClientRect().left + parseFloat(getComputedStyle(slider).paddingLeft);
    scrub(event);
  };
  slider.addEventListener("pointerdown", press, { signal });
  /** @param {PointerEvent} event */
  const drag = (event) => {
    if (slider.hasPointerCapture(event.pointerId)) scrub(event);
  };
  slider.addEventListener("pointermove", drag, { signal });
}

/**
 * Back goes to the start of this decision first, when the ball has rolled on from it.
 * @param {State} state
 */
export function stepBack(state) {
  const { moment, t } = state.now;
  return t > state.times[moment] + 1 ? moment : moment - 1;
}
