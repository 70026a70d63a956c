import { SAME_CS } from "./state.js";

// The playhead is state; the clock of the screen only moves it on.
const RATE = { step: 1 / 3, slow: 1 / 3, game: 1 };
const DWELL_MS = 1600;
const DWELL_LETTER_MS = 42;

export function makePlayer(state, story, calm) {
  let last = 0;
  let stood = 0;
  const stand = () => calm() || state.now.speed === "still";
  const dwell = () => DWELL_MS + DWELL_LETTER_MS * story.moments[state.now.moment].words;

  const stepOn = (passed) => {
    stood += passed;
    if (stood < dwell()) return;
    stood = 0;
    if (state.now.moment + 1 < state.times.length) state.goMoment(state.now.moment + 1, { playing: state.now.moment + 2 < state.times.length });
    else state.set({ playing: false });
  };

  const runOn = (passed) => {
    const { now, times, end } = state;
    const next = now.moment + 1 < times.length ? times[now.moment + 1] : end;
    const t = now.t + (passed / 10) * RATE[now.speed];
    if (now.speed === "step" && t >= next - SAME_CS) {
      if (now.moment + 1 < times.length) state.goMoment(now.moment + 1);
      else state.goTime(end, { playing: false });
    } else state.goTime(t, { playing: t < end });
  };

  const tick = (time) => {
    if (!state.now.playing) return;
    const passed = Math.min(time - last, 100);
    last = time;
    if (stand()) stepOn(passed);
    else runOn(passed);
    if (state.now.playing) requestAnimationFrame(tick);
  };

  return {
    toggle: () => {
      if (state.now.playing) return state.set({ playing: false });
      const over = stand() ? state.now.moment + 1 >= state.times.length : state.now.t >= state.end;
      if (over) state.goMoment(0);
      else if (stand()) state.goMoment(state.now.moment + 1);
      if (stand() && state.now.moment + 1 >= state.times.length) return undefined;
      stood = 0;
      state.set({ playing: true });
      last = performance.now();
      return requestAnimationFrame(tick);
    },
  };
}
