// What a tap, a drop or a key comes to. Pure, and without a rule of the game: all that can be done is in the list.
import { apart } from "./geometry.js";

/** @typedef {import("./types.js").Act} Act */
/** @typedef {import("./types.js").Can} Can */
/** @typedef {import("./types.js").Cell} Cell */
/** @typedef {import("./types.js").Place} Place */
/** @typedef {import("./types.js").Target} Target */

// A finger takes what is this near; a drop may be less exact (the look: an unseen circle of radius 90).
export const REACH_CM = 90;
export const DROP_CM = 120;

/**
 * The nearest within reach; of two that are equally near, the first.
 * @template T
 * @param {T[]} things
 * @param {(thing: T) => Place} placeOf
 * @param {Place} at
 * @param {number} reach
 * @returns {T | null}
 */
export function nearest(things, placeOf, at, reach) {
  let best = null;
  let least = reach;
  for (const thing of things) {
    const away = apart(placeOf(thing), at);
    if (away < least || (best === null && away === least)) [best, least] = [thing, away];
  }
  return best;
}

/**
 * Whether a move ends at a cell: with its player, or on its empty spot.
 * @param {Can} can
 * @param {Cell} cell
 */
function endsAt(can, cell) {
  return cell.player !== null ? can.to === cell.player : can.to === null && can.spot === cell.id;
}

/**
 * Where the moves of a player end, each place once, with the plainest move that ends there.
 * @param {Can[]} cans
 * @param {Cell[]} cells
 * @param {number} player
 * @returns {Target[]}
 */
export function targetsOf(cans, cells, player) {
  /** @type {Target[]} */
  const targets = [];
  for (const cell of cells) {
    const can = cans.find((one) => one.player === player && cell.player !== player && endsAt(one, cell));
    if (can) targets.push({ can, place: [cell.x, cell.y] });
  }
  return targets;
}

/**
 * @param {Target[]} targets
 * @param {Place} at
 * @param {number} reach
 */
export function aimedAt(targets, at, reach) {
  return nearest(targets, (target) => target.place, at, reach);
}

/**
 * @param {Cell[]} cells
 * @param {Place} at
 */
export function playerAt(cells, at) {
  const players = cells.filter((cell) => cell.player !== null);
  return nearest(players, (cell) => [cell.x, cell.y], at, REACH_CM);
}

/**
 * A tap chooses a player, and then a target of his; anywhere else lets go.
 * @param {Cell[]} cells
 * @param {Can[]} cans
 * @param {number | null} chosen
 * @param {Place} at
 * @returns {Act | null}
 */
export function tapped(cells, cans, chosen, at) {
  const cell = playerAt(cells, at);
  const aimed = chosen === null ? null : aimedAt(targetsOf(cans, cells, chosen), at, REACH_CM);
  if (aimed && (!cell || apart(aimed.place, at) <= apart([cell.x, cell.y], at))) return { do: aimed.can };
  if (cell) return { choose: cell.player === chosen ? null : cell.player };
  return chosen === null ? null : { choose: null };
}

/**
 * Enter does what the chosen player can do there, else the only move that Enter does to this player, else it chooses
 * him; a letter does the player's own move; Escape lets go.
 * @param {Cell[]} cells
 * @param {Can[]} cans
 * @param {number | null} chosen
 * @param {Cell} cell
 * @param {string} key
 * @returns {Act | null}
 */
export function keyed(cells, cans, chosen, cell, key) {
  if (key === "Escape") return chosen === null ? null : { choose: null };
  if (key === "Enter") {
    const theirs = chosen === null || chosen === cell.player ? undefined : cans.find((can) => can.player === chosen && endsAt(can, cell));
    if (theirs) return { do: theirs };
    if (cell.player === null) return null;
    const here = cans.filter((can) => can.key === "Enter" && can.to === cell.player);
    if (here.length === 1) return { do: here[0] };
    return { choose: cell.player === chosen ? null : cell.player };
  }
  const own = cans.filter((can) => can.key.length === 1 && can.player === cell.player && can.key === key.toLowerCase());
  if (own.length > 1) return { choose: cell.player };
  return own.length === 1 ? { do: own[0] } : null;
}

const TOWARD = /** @type {Record<string, Place>} */ ({ ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] });
// What lies steeply to the side comes only where nothing else lies that way (own design).
const STEEP = 2;
const LAST_CM = 1e5;

/**
 * The next cell in an arrow's direction on the screen, or null: there is none, or the key is no arrow.
 * @param {Cell[]} cells
 * @param {Cell} from
 * @param {string} key
 * @param {boolean} turned
 * @returns {Cell | null}
 */
export function walked(cells, from, key, turned) {
  if (!TOWARD[key]) return null;
  const [dx, dy] = TOWARD[key].map((part) => (turned ? -part : part));
  let best = null;
  let least = Infinity;
  for (const cell of cells) {
    const along = (cell.x - from.x) * dx + (cell.y - from.y) * dy;
    const aside = Math.abs((cell.x - from.x) * dy - (cell.y - from.y) * dx);
    const cost = Math.hypot(along, aside) + aside + (aside > STEEP * along ? LAST_CM : 0);
    if (cell.id !== from.id && along > 1 && cost < least) [best, least] = [cell, cost];
  }
  return best;
}

export const isArrow = (/** @type {string} */ key) => key in TOWARD;
