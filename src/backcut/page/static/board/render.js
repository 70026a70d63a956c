import { pose, trail } from "./pose.js";
import { boxOf } from "./wrap.js";

/** @typedef {import("./types.js").Now} Now */
/** @typedef {import("./types.js").Parts} Parts */
/** @typedef {import("./types.js").Story} Story */
/** @typedef {import("./types.js").Tracks} Tracks */

const MOVED_CS = 10;
const TRAIL_CS = 150;
const TRAIL_LEAST_CM = 60;
const RUN_REACH_CM = 120;
const WORD_REACH_CM = 50;
const RUN_PIECES = 32;

/**
 * An attribute is written only when it changes: a drawing that stands still costs nothing.
 * @param {Element} node
 * @param {string} name
 * @param {string} value
 */
export function put(node, name, value) {
  if (node.getAttribute(name) !== value) node.setAttribute(name, value);
}

/**
 * @param {Element & ElementCSSInlineStyle} node
 * @param {string} name
 * @param {string} value
 */
export function style(node, name, value) {
  if (node.style.getPropertyValue(name) !== value) node.style.setProperty(name, value);
}

/**
 * @param {Element} node
 * @param {number} x
 * @param {number} y
 */
export function move(node, x, y) {
  put(node, "transform", "translate(" + x.toFixed(1) + " " + y.toFixed(1) + ")");
}

/**
 * The `use` of a mark: there is one in each.
 * @param {Element} node
 */
function symbolOf(node) {
  return /** @type {SVGUseElement} */ (node.querySelector("use"));
}

/**
 * The symbol of a mark, changed only when it is another.
 * @param {Element} node
 * @param {string} symbol
 * @param {number} [turn]
 */
export function draw(node, symbol, turn) {
  const use = symbolOf(node);
  if (use.getAttribute("href") !== "#m-" + symbol) {
    use.setAttribute("href", "#m-" + symbol);
    const text = node.querySelector("text");
    if (text) text.classList.toggle("rev", symbol === "denies");
  }
  if (turn !== undefined) put(use, "transform", "rotate(" + turn.toFixed(0) + ")");
}

/**
 * @param {Parts} parts
 * @param {Tracks} tracks
 * @param {Story} story
 * @param {Now} now
 */
export function renderBodies(parts, tracks, story, now) {
  const moment = story.moments[now.moment];
  const here = pose(tracks, story.held, now.t);
  const holder = here.held ? String(here.held[0]) : "";
  const [bx, by] = here.ball;
  for (const [n, node] of Object.entries(parts.players)) {
    const [x, y] = here.players[n];
    move(node, x, y);
    move(parts.glows[n], x, y);
    draw(node, n === holder ? "holder" : "attacker");
  }
  for (const [n, node] of Object.entries(parts.defenders)) {
    const [x, y] = here.defenders[n];
    move(node, x, y);
    move(parts.hands[n], x, y);
    draw(node, n === holder ? "arms" : moment.plates[n] || "plain", story.turn[0] + story.turn[1] * here.facing[n][0]);
    draw(parts.hands[n], "hand-free", (Math.atan2(bx - x, y - by) * 180) / Math.PI);
    symbolOf(parts.hands[n]).classList.toggle("away", n === holder || !moment.free.includes(Number(n)));
  }
  const use = symbolOf(parts.ball);
  if (here.held) {
    const [x, y] = here.players[holder];
    move(parts.ball, x, y);
    put(use, "x", String(here.held[3]));
    put(use, "y", String(here.held[4]));
  } else {
    move(parts.ball, bx, by);
    put(use, "x", "0");
    put(use, "y", "0");
  }
  const moved = now.t > moment.t + MOVED_CS;
  renderRuns(parts, here.players, moved);
  renderWords(parts, [...Object.values(here.players), ...Object.values(here.defenders)], moved);
  const from = now.whole ? 0 : Math.max(now.t - TRAIL_CS, 0);
  for (const path of parts.trails.children) put(path, "d", trail(tracks.p[path.getAttribute("data-player") || ""], from, now.t, TRAIL_LEAST_CM));
}

/**
 * Lines of running are wiped away behind the runner: what is left is what he has still to run.
 * @param {Parts} parts
 */
export function sampleRuns(parts) {
  /** @type {NodeListOf<SVGPathElement>} */
  const paths = parts.under.querySelectorAll("[data-runner]");
  parts.runs = Array.from(paths, (path) => {
    const length = path.getTotalLength();
    const points = Array.from({ length: RUN_PIECES + 1 }, (_, i) => path.getPointAtLength((length * i) / RUN_PIECES));
    return { path, runner: path.dataset.runner || "", points };
  });
}

/**
 * @param {Parts} parts
 * @param {Record<string, number[]>} players
 * @param {boolean} moved
 */
export function renderRuns(parts, players, moved) {
  for (const { path, runner, points } of parts.runs) {
    const [x, y] = players[runner];
    const away = points.map((point) => Math.hypot(point.x - x, point.y - y));
    const nearest = Math.min(...away);
    const done = moved && nearest < RUN_REACH_CM ? away.indexOf(nearest) / (points.length - 1) : 0;
    style(path, "visibility", done > 0.96 ? "hidden" : "visible");
    style(path, "stroke-dasharray", done > 0 ? "1, 2" : "none");
    style(path, "stroke-dashoffset", String(-done));
  }
}

/**
 * Lettering steps aside for whoever runs through it, and a shut lane is true only at its moment.
 * @param {Parts} parts
 */
export function sampleWords(parts) {
  const drawn = /** @type {HTMLCollectionOf<SVGGraphicsElement>} */ (/** @type {unknown} */ (parts.over.children));
  parts.words = Array.from(drawn, (node) => ({ node, box: boxOf(node) }));
}

/**
 * @param {Parts} parts
 * @param {number[][]} bodies
 * @param {boolean} moved
 */
export function renderWords(parts, bodies, moved) {
  for (const { node, box } of parts.words) {
    /** @param {number[]} place */
    const over = ([x, y]) => {
      const dx = Math.max(box.left - x, x - box.right, 0);
      const dy = Math.max(box.top - y, y - box.bottom, 0);
      return Math.hypot(dx, dy) < WORD_REACH_CM;
    };
    style(node, "visibility", moved && bodies.some(over) ? "hidden" : "visible");
  }
  parts.under.classList.toggle("rolling", moved);
}

const TABS = { won: "tab on", work: "tab", rest: "tab bare" };

/**
 * @param {Parts} parts
 * @param {Story} story
 * @param {number} index
 */
export function renderMoment(parts, story, index) {
  const moment = story.moments[index];
  parts.under.innerHTML = moment.under;
  sampleRuns(parts);
  parts.over.innerHTML = moment.over;
  sampleWords(parts);
  if (parts.now) parts.now.innerHTML = moment.now;
  parts.floorSaid.textContent = moment.floor;
  for (const [n, node] of Object.entries(parts.glows)) symbolOf(node).classList.toggle("away", !moment.lit.includes(Number(n)));
  for (const habit of parts.habits) {
    const [state, remarks] = moment.book[habit.dataset.letter || ""] || ["rest", ""];
    habit.className = "habit " + state;
    const tab = habit.querySelector(".tab");
    if (tab) tab.className = TABS[state];
    const under = habit.querySelector(".remarks");
    if (under) under.innerHTML = remarks;
    if (state === "won") habit.setAttribute("aria-current", "true");
    else habit.removeAttribute("aria-current");
  }
  for (const link of parts.links) {
    if (Number(link.dataset.go) === index) link.setAttribute("aria-current", "step");
    else link.removeAttribute("aria-current");
  }
}
