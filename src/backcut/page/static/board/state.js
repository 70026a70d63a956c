// What the page is doing: the time, the decision, whether it plays and how fast. Whoever listens is told after a change.

/** @typedef {import("./types.js").Now} Now */
/** @typedef {import("./types.js").Options} Options */
/** @typedef {import("./types.js").State} State */

// A time counts as a decision's own within this much of it, so that rounding never hides a decision.
export const SAME_CS = 0.5;

/**
 * Opens at the first decision, or at `options.at`: a time, a decision, or both. Two decisions may share a time; where
 * the named one does not fit the time, the last decision before the time is taken.
 * @param {number[]} times of the decisions, rising, in hundredths of a second
 * @param {number} end
 * @param {Options} [options]
 * @returns {State}
 */
export function makeState(times, end, options = {}) {
  /** @type {((now: Now, before: Now) => void)[]} */
  const listeners = [];
  /** @param {number} t */
  const momentAt = (t) => {
    let i = 0;
    while (i + 1 < times.length && times[i + 1] <= t + SAME_CS) i += 1;
    return i;
  };
  /** @param {number} t */
  const within = (t) => Math.min(Math.max(t, 0), end);
  /** @param {number} t @param {number} moment */
  const fits = (t, moment) => times[moment] <= t + SAME_CS && !(times[moment + 1] < t - SAME_CS);

  const { at, speed = "still", whole = false } = options;
  const meant = at && at.moment !== undefined ? Math.min(Math.max(at.moment, 0), times.length - 1) : 0;
  const t = at && at.t !== undefined ? within(at.t) : times[meant];
  const moment = fits(t, meant) ? meant : momentAt(t);
  /** @type {Now} */
  const now = { t, moment, playing: false, speed, whole };

  /** @param {Partial<Now>} patch */
  const set = (patch) => {
    const before = { ...now };
    Object.assign(now, patch);
    listeners.forEach((listen) => listen(now, before));
  };
  return {
    now,
    times,
    end,
    set,
    listen: (listener) => listeners.push(listener),
    goTime: (time, patch) => {
      const place = within(time);
      set({ t: place, moment: momentAt(place), ...patch });
    },
    goMoment: (index, patch) => {
      const asked = Math.min(Math.max(index, 0), times.length - 1);
      set({ t: times[asked], moment: asked, playing: false, ...patch });
    },
  };
}
