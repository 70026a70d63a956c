// Where everybody is at a time in hundredths of a second. Pure: the same tracks and time give the same pose.

/** @typedef {import("./types.js").Pose} Pose */
/** @typedef {import("./types.js").Stretch} Stretch */
/** @typedef {import("./types.js").Track} Track */
/** @typedef {import("./types.js").Tracks} Tracks */

/**
 * @param {Track} columns each number the step from the last
 * @returns {Track}
 */
export function unpack(columns) {
  return columns.map((steps) => {
    let sum = 0;
    return steps.map((step) => (sum += step));
  });
}

/**
 * The last knot that is not after `t`, or the first.
 * @param {number[]} times
 * @param {number} t
 */
export function knotBefore(times, t) {
  let low = 0;
  let high = times.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (times[middle] <= t) low = middle;
    else high = middle - 1;
  }
  return low;
}

/**
 * @param {Track} track unpacked
 * @param {number} t
 */
export function placeAt(track, t) {
  const times = track[0];
  const i = knotBefore(times, t);
  const last = i >= times.length - 1 || t <= times[0];
  const share = last ? 0 : (t - times[i]) / (times[i + 1] - times[i]);
  return track.slice(1).map((column) => (last ? column[i] : column[i] + (column[i + 1] - column[i]) * share));
}

/**
 * @param {Tracks} tracks packed
 * @returns {Tracks}
 */
export function unpackAll(tracks) {
  /** @param {Record<string, Track>} group */
  const each = (group) => Object.fromEntries(Object.entries(group).map(([name, track]) => [name, unpack(track)]));
  return { end: tracks.end, p: each(tracks.p), x: each(tracks.x), f: each(tracks.f), b: unpack(tracks.b) };
}

/**
 * @param {Stretch[]} held
 * @param {number} t
 */
export function heldAt(held, t) {
  return held.find((stretch) => stretch[1] <= t && t <= stretch[2]) || null;
}

/**
 * @param {Tracks} tracks unpacked
 * @param {Stretch[]} held
 * @param {number} t
 * @returns {Pose}
 */
export function pose(tracks, held, t) {
  /** @param {Record<string, Track>} group */
  const at = (group) => Object.fromEntries(Object.entries(group).map(([name, track]) => [name, placeAt(track, t)]));
  return { players: at(tracks.p), defenders: at(tracks.x), facing: at(tracks.f), ball: placeAt(tracks.b, t), held: heldAt(held, t) };
}

/**
 * The way a track went from one time to another, as path data; empty when it went less than `least` cm.
 * @param {Track} track
 * @param {number} from
 * @param {number} to
 * @param {number} least
 */
export function trail(track, from, to, least) {
  const times = track[0];
  const points = [placeAt(track, from)];
  for (let i = knotBefore(times, from) + 1; i < times.length && times[i] < to; i += 1) points.push([track[1][i], track[2][i]]);
  points.push(placeAt(track, to));
  let length = 0;
  for (let i = 1; i < points.length; i += 1) length += Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]);
  return length < least ? "" : "M" + points.map(([x, y]) => x.toFixed(1) + " " + y.toFixed(1)).join("L");
}
