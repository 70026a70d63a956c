// What the page is doing: the time, the decision, whether it plays and how fast. Whoever listens is told after a change.
// A time counts as a decision's own within this much of it, so that rounding never hides a decision.
export const SAME_CS = 0.5;

export function makeState(times, end) {
  const now = { t: times[0], moment: 0, playing: false, speed: "still" };
  const listeners = [];
  const set = (patch) => {
    const before = { ...now };
    Object.assign(now, patch);
    listeners.forEach((listen) => listen(now, before));
  };
  const momentAt = (t) => {
    let i = 0;
    while (i + 1 < times.length && times[i + 1] <= t + SAME_CS) i += 1;
    return i;
  };
  return {
    now,
    times,
    end,
    set,
    listen: (listener) => listeners.push(listener),
    goTime: (t, patch) => {
      const place = Math.min(Math.max(t, 0), end);
      set({ t: place, moment: momentAt(place), ...patch });
    },
    goMoment: (i, patch) => {
      const moment = Math.min(Math.max(i, 0), times.length - 1);
      set({ t: times[moment], moment, playing: false, ...patch });
    },
  };
}
