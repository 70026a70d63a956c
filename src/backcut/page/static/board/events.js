// Hands on the page: buttons, the strip, the speeds, the list of decisions.
export function listenToHands(parts, state, player, size) {
  parts.before.addEventListener("click", () => state.goMoment(stepBack(state)));
  parts.next.addEventListener("click", () => state.goMoment(state.now.moment + 1));
  parts.play.addEventListener("click", player.toggle);
  parts.speeds.forEach((radio) => radio.addEventListener("change", () => state.set({ speed: radio.value })));
  parts.links.forEach((link) => link.addEventListener("click", () => state.goMoment(+link.dataset.go)));

  let left = 0;
  const scrub = (event) => {
    const x = event.clientX - left + size().shift;
    state.goTime((x / size().second) * 100, { playing: false });
  };
  parts.slider.addEventListener("pointerdown", (event) => {
    if (event.button > 0) return;
    const slider = parts.slider;
    slider.setPointerCapture(event.pointerId);
    left = slider.getBoundingClientRect().left + parseFloat(getComputedStyle(slider).paddingLeft);
    scrub(event);
  });
  parts.slider.addEventListener("pointermove", (event) => {
    if (parts.slider.hasPointerCapture(event.pointerId)) scrub(event);
  });
}

// Back goes to the start of this decision first, when the ball has rolled on from it.
export function stepBack(state) {
  const { moment, t } = state.now;
  return t > state.times[moment] + 1 ? moment : moment - 1;
}
