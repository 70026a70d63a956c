// The floor: everybody at a time, and the moves played slowly. It knows no rule of the offence.

const SLOW = 0.45;

/** @typedef {import("./types.js").Question} Question */
/** @typedef {import("./types.js").Track} Track */

/** @param {string} id @returns {any} */
export function part(id) {
  return document.getElementById(id);
}

/** @param {Track} columns @returns {Track} */
function unpacked(columns) {
  return columns.map((steps) => {
    let sum = 0;
    return steps.map((step) => (sum += step));
  });
}

/**
 * @param {Track} track unpacked
 * @param {number} t
 */
export function placeAt(track, t) {
  const times = track[0];
  let i = 0;
  while (i < times.length - 1 && times[i + 1] <= t) i += 1;
  const last = i >= times.length - 1 || t <= times[0];
  const share = last ? 0 : (t - times[i]) / (times[i + 1] - times[i]);
  return track.slice(1).map((column) => (last ? column[i] : column[i] + (column[i + 1] - column[i]) * share));
}

/** @param {Element} node @param {string} name */
function draw(node, name) {
  const use = node.querySelector("use");
  if (!use) return;
  use.setAttribute("href", "#m-" + name);
  use.setAttributeNS("http://www.w3.org/1999/xlink", "xlink:href", "#m-" + name);
}

/** @param {Element} node @param {number} x @param {number} y */
function put(node, x, y) {
  node.setAttribute("transform", "translate(" + x.toFixed(1) + " " + y.toFixed(1) + ")");
}

/**
 * The tracks of a question, and the same with the mistake in the place of what is right.
 * @param {Question} question
 */
export function tracksOf(question) {
  /** @param {Object<string, Track>} group */
  const each = (group) => {
    /** @type {Object<string, Track>} */
    const out = {};
    Object.keys(group).forEach((name) => (out[name] = unpacked(group[name])));
    return out;
  };
  const told = question.tracks;
  return { p: each(told.p), x: each(told.x), f: each(told.f), b: unpacked(told.b) };
}

/**
 * @param {Question} question
 * @param {ReturnType<typeof tracksOf>} tracks
 * @param {number[]} turn
 * @param {number} t
 * @param {boolean} wrong play the mistake
 */
export function drawAt(question, tracks, turn, t, wrong) {
  const held = question.held.filter((stretch) => stretch[1] <= t && t <= stretch[2])[0];
  const holder = held ? String(held[0]) : "";
  /** @type {Object<string, number[]>} */
  const places = {};
  const deed = wrong ? question.deed : null;
  Object.keys(tracks.p).forEach((n) => {
    places[n] = placeAt(tracks.p[n], t);
    if (deed && String(deed[0]) === n && t > deed[1]) {
      const share = deed[2] > deed[1] ? Math.min((t - deed[1]) / (deed[2] - deed[1]), 1) : 0;
      places[n] = [deed[3] + (deed[5] - deed[3]) * share, deed[4] + (deed[6] - deed[4]) * share];
    }
    put(part("p" + n), places[n][0], places[n][1]);
    put(part("g" + n), places[n][0], places[n][1]);
    draw(part("p" + n), n === holder ? "holder" : "attacker");
  });
  const ball = placeAt(tracks.b, t);
  Object.keys(tracks.x).forEach((n) => {
    let at = placeAt(tracks.x[n], t);
    let faces = t;
    if (deed && String(deed[0]) === n && t > deed[1]) {
      const then = placeAt(tracks.x[n], deed[1]);
      at = [then[0] + places[n][0] - deed[3], then[1] + places[n][1] - deed[4]];
      faces = deed[1];
    }
    put(part("x" + n), at[0], at[1]);
    put(part("h" + n), at[0], at[1]);
    const plate = n === holder ? "arms" : question.plates[n] || "plain";
    draw(part("x" + n), plate);
    const text = part("x" + n).querySelector("text");
    if (text) text.setAttribute("class", plate === "denies" ? "x rev" : "x");
    part("x" + n).querySelector("use").setAttribute("transform", "rotate(" + (turn[0] + turn[1] * placeAt(tracks.f[n], faces)[0]).toFixed(0) + ")");
    part("h" + n).setAttribute("class", n === holder || question.free.indexOf(Number(n)) < 0 ? "away" : "");
    part("h" + n).querySelector("use").setAttribute("transform", "rotate(" + ((Math.atan2(ball[0] - at[0], at[1] - ball[1]) * 180) / Math.PI).toFixed(0) + ")");
  });
  const use = part("ball").querySelector("use");
  const on = held ? places[holder] : ball;
  put(part("ball"), on[0], on[1]);
  use.setAttribute("x", held ? String(held[3]) : "0");
  use.setAttribute("y", held ? String(held[4]) : "0");
}

/**
 * Plays from one time to another, slowly; where motion is not wanted it shows the end, with the way there as a line.
 * @param {{ from: number, to: number, draw: (t: number) => void, done: () => void }} told
 * @returns {() => void} stops it
 */
export function playSlowly(told) {
  let begun = 0;
  let asked = 0;
  const still = window.matchMedia && window.matchMedia("(prefers-reduced-motion: reduce)").matches;
  if (still) {
    told.draw(told.to);
    told.done();
    return () => {};
  }
  /** @param {number} now */
  const step = (now) => {
    begun = begun || now;
    const t = told.from + ((now - begun) / 10) * SLOW;
    told.draw(Math.min(t, told.to));
    if (t < told.to) asked = window.requestAnimationFrame(step);
    else told.done();
  };
  asked = window.requestAnimationFrame(step);
  return () => window.cancelAnimationFrame(asked);
}

/**
 * The way of one player between two times, as path data.
 * @param {Track} track
 * @param {number} from
 * @param {number} to
 */
export function way(track, from, to) {
  const points = [placeAt(track, from)];
  track[0].forEach((t, i) => {
    if (t > from && t < to) points.push([track[1][i], track[2][i]]);
  });
  points.push(placeAt(track, to));
  return "M" + points.map((point) => point[0].toFixed(0) + " " + point[1].toFixed(0)).join("L");
}
