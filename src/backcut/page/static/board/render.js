import { pose, trail } from "./pose.js";

const MOVED_CS = 10;
const TRAIL_CS = 150;
const TRAIL_LEAST_CM = 60;
const RUN_REACH_CM = 120;
const WORD_REACH_CM = 50;

// An attribute is written only when it changes: a drawing that stands still costs nothing.
export function put(node, name, value) {
  if (node.getAttribute(name) !== value) node.setAttribute(name, value);
}

export function style(node, name, value) {
  if (node.style.getPropertyValue(name) !== value) node.style.setProperty(name, value);
}

export function move(node, x, y) {
  put(node, "transform", "translate(" + x.toFixed(1) + " " + y.toFixed(1) + ")");
}

// The symbol of a mark, changed only when it is another.
export function draw(node, symbol, turn) {
  const use = node.querySelector("use");
  if (use.getAttribute("href") !== "#m-" + symbol) {
    use.setAttribute("href", "#m-" + symbol);
    const text = node.querySelector("text");
    if (text) text.classList.toggle("rev", symbol === "denies");
  }
  if (turn !== undefined) put(use, "transform", "rotate(" + turn.toFixed(0) + ")");
}

export function renderBodies(parts, tracks, story, state) {
  const moment = story.moments[state.moment];
  const here = pose(tracks, story.held, state.t);
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
    parts.hands[n].querySelector("use").classList.toggle("away", n === holder || !moment.free.includes(+n));
  }
  const use = parts.ball.querySelector("use");
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
  const moved = state.t > moment.t + MOVED_CS;
  renderRuns(parts, here.players, moved);
  renderWords(parts, [...Object.values(here.players), ...Object.values(here.defenders)], moved);
  [...parts.trails.children].forEach((path) => {
    put(path, "d", trail(tracks.p[path.dataset.player], Math.max(state.t - TRAIL_CS, 0), state.t, TRAIL_LEAST_CM));
  });
}

// Lines of running are wiped away behind the runner: what is left is what he has still to run.
export function sampleRuns(parts) {
  const count = 32;
  parts.runs = [...parts.under.querySelectorAll("[data-runner]")].map((path) => {
    const length = path.getTotalLength();
    const at = (i) => path.getPointAtLength((length * i) / count);
    return { path, runner: path.dataset.runner, points: Array.from({ length: count + 1 }, (_, i) => at(i)) };
  });
}

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

// Lettering steps aside for whoever runs through it, and a shut lane is true only at its moment.
export function sampleWords(parts) {
  parts.words = [...parts.over.children].map((node) => ({ node, box: parts.box(node) }));
}

export function renderWords(parts, bodies, moved) {
  for (const { node, box } of parts.words) {
    const over = ([x, y]) => {
      const dx = Math.max(box.left - x, x - box.right, 0);
      const dy = Math.max(box.top - y, y - box.bottom, 0);
      return Math.hypot(dx, dy) < WORD_REACH_CM;
    };
    style(node, "visibility", moved && bodies.some(over) ? "hidden" : "visible");
  }
  parts.under.classList.toggle("rolling", moved);
}

export function renderMoment(parts, story, index) {
  const moment = story.moments[index];
  parts.under.innerHTML = moment.under;
  sampleRuns(parts);
  parts.over.innerHTML = moment.over;
  sampleWords(parts);
  parts.now.innerHTML = moment.now;
  parts["floor-said"].textContent = moment.floor;
  for (const [n, node] of Object.entries(parts.glows)) node.querySelector("use").classList.toggle("away", !moment.lit.includes(+n));
  for (const habit of parts.habits) {
    const [state, remarks] = moment.book[habit.dataset.letter] || ["rest", ""];
    habit.className = "habit " + state;
    habit.querySelector(".tab").className = { won: "tab on", work: "tab", rest: "tab bare" }[state];
    habit.querySelector(".remarks").innerHTML = remarks;
    if (state === "won") habit.setAttribute("aria-current", "true");
    else habit.removeAttribute("aria-current");
  }
  for (const link of parts.links) {
    if (+link.dataset.go === index) link.setAttribute("aria-current", "step");
    else link.removeAttribute("aria-current");
  }
}
