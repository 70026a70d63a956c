import { stepBack } from "./events.js";

const NUDGE_CS = 20;

// Space plays, arrows and a clicker's page keys step, Home and End go to the ends; on the strip arrows move the time.
export function listenToKeys(parts, state, player, root, signal) {
  const step = {
    ArrowLeft: () => state.goMoment(stepBack(state)),
    ArrowRight: () => state.goMoment(state.now.moment + 1),
    PageUp: () => state.goMoment(stepBack(state)),
    PageDown: () => state.goMoment(state.now.moment + 1),
    Home: () => state.goMoment(0),
    End: () => state.goMoment(state.times.length - 1),
    " ": () => player.toggle(),
  };
  const nudge = (by) => () => state.goTime(state.now.t + by, { playing: false });
  const slide = { ...step, ArrowLeft: nudge(-NUDGE_CS), ArrowDown: nudge(-NUDGE_CS), ArrowRight: nudge(NUDGE_CS), ArrowUp: nudge(NUDGE_CS) };

  const press = (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const on = event.target;
    if (on.matches("input") && event.key !== " " && !event.key.startsWith("Page")) return;
    if (event.key === " " && on.matches("button, a, input, summary")) return;
    const act = (on === parts.slider ? slide : step)[event.key];
    if (!act) return;
    event.preventDefault();
    act();
  };
  root.addEventListener("keydown", press, { signal });
}
