import { begin } from "./begin.js";
import { makeLive } from "./live.js";
import { turnFloor } from "./turn.js";
import { markYou } from "./you.js";

/** @typedef {import("./types.js").LiveBoard} LiveBoard */
/** @typedef {import("./types.js").Options} Options */

/**
 * Starts the possession that is on the live page. End the board before its markup is swapped, and start it again after:
 * with `at` and `playing` nothing jumps, and the focus stays.
 * @param {Document} root
 * @param {Options} [options]
 * @returns {LiveBoard}
 */
export function start(root, options = {}) {
  const board = begin(root, options);
  const { parts, state } = board;
  const choose = options.live ? makeLive(root, board, options.live, options.chosen ?? null) : () => undefined;
  let who = options.you ?? null;
  /** @param {number | null} player */
  const you = (player) => {
    who = player;
    markYou(parts, who);
  };
  turnFloor(parts, Boolean(options.turned));
  you(who);
  state.listen((now, before) => {
    if (who !== null && now.moment !== before.moment) you(who);
  });
  return { ...board, choose, turn: (on) => turnFloor(parts, on), you, trails: (whole) => state.set({ whole }) };
}
