import { SAME_CS } from "./state.js";

/** @typedef {import("./types.js").Player} Player */
/** @typedef {import("./types.js").State} State */
/** @typedef {import("./types.js").Story} Story */

// The playhead is state; the clock of the screen only moves it on.
const RATE = { still: 0, step: 1 / 3, slow: 1 / 3, game: 1 };
const DWELL_MS = 1600;
const DWELL_LETTER_MS = 42;

/**
 * @param {State} state
 * @param {Story} story
 * @param {() => boolean} calm
 * @returns {Player}
 */
export function makePlayer(state, story, calm) {
  let last = 0;
  let stood = 0;
  let ticking = false;
  const stand = () => calm() || state.now.speed === "still";
  const dwell = () => DWELL_MS + DWELL_LETTER_MS * story.moments[state.now.moment].words;

  /** @param {number} passed */
  const stepOn = (passed) => {
    stood += passed;
    if (stood < dwell()) return;
    stood = 0;
    if (state.now.moment + 1 < state.times.length) state.goMoment(state.now.moment + 1, { playing: state.now.moment + 2 < state.times.length });
    else state.set({ playing: false });
  };

  /** @param {number} passed */
  const runOn = (passed) => {
    const { now, times, end } = state;
    const next = now.moment + 1 < times.length ? times[now.moment + 1] : end;
    const t = now.t + (passed / 10) * RATE[now.speed];
    if (now.speed === "step" && t >= next - SAME_CS) {
      if (now.moment + 1 < times.length) state.goMoment(now.moment + 1);
      else state.goTime(end, { playing: false });
    } else state.goTime(t, { playing: t < end });
  };

  /** @param {number} time */
  const tick = (time) => {
    ticking = false;
    if (!state.now.playing) return;
    const passed = Math.min(Math.max(time - last, 0), 100);
    last = time;
    if (stand()) stepOn(passed);
    else runOn(passed);
    if (state.now.playing) ask();
  };
  // One tick at a time: stopped and started within a frame, the clock still runs once.
  const ask = () => {
    if (ticking) return;
    ticking = true;
    requestAnimationFrame(tick);
  };

  const play = () => {
    stood = 0;
    state.set({ playing: true });
    last = performance.now();
    ask();
  };
  return {
    play,
    toggle: () => {
      if (state.now.playing) return state.set({ playing: false });
      const over = stand() ? state.now.moment + 1 >= state.times.length : state.now.t >= state.end;
      if (over) state.goMoment(0);
      else if (stand()) state.goMoment(state.now.moment + 1);
      if (stand() && state.now.moment + 1 >= state.times.length) return undefined;
      return play();
    },
  };
}
