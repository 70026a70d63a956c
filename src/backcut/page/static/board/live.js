// A floor that can be played on: cells for the keyboard, drags for the hand, and one choice for both.
import { makeCells } from "./cells.js";
import { listenToDrags } from "./drag.js";
import { makeHints } from "./hints.js";
import { giveFocus, keepFocus } from "./keep.js";
import { pose } from "./pose.js";
import { sayAgain } from "./speak.js";

/** @typedef {import("./types.js").Board} Board */
/** @typedef {import("./types.js").Hand} Hand */
/** @typedef {import("./types.js").Live} Live */

/**
 * @param {Document} root
 * @param {Board} board
 * @param {Live} live
 * @param {number | null} first who is chosen when it begins
 * @returns {(player: number | null) => void} shows another choice, without telling anybody
 */
export function makeLive(root, board, live, first) {
  const { parts, state, story, tracks, signal } = board;
  let chosen = first;

  const moment = () => story.moments[state.now.moment];
  /** @type {Hand} */
  const hand = {
    cells: () => {
      const { players } = pose(tracks, story.held, state.now.t);
      return (moment().cells || []).map((cell) => {
        const now = cell.player === null ? undefined : players[cell.player];
        return now ? { ...cell, x: now[0], y: now[1] } : cell;
      });
    },
    cans: () => (live.can ? live.can() : moment().can || []),
    chosen: () => chosen,
    act: (act) => {
      if ("do" in act) {
        choose(null);
        live.do(act.do);
      } else {
        choose(act.choose);
        live.choose(act.choose);
      }
    },
  };
  const cells = makeCells(parts, state, hand);
  const hints = makeHints(parts);
  const { rest } = listenToDrags(parts, state, hand, hints.show, root, signal);
  const draw = () => {
    cells.draw();
    rest();
  };
  /** @param {number | null} player */
  const choose = (player) => {
    if (player === chosen) return;
    chosen = player;
    draw();
  };

  rest();
  state.listen(draw);
  giveFocus(parts.court);
  keepFocus(parts.court, signal);
  sayAgain(parts, signal);
  return choose;
}
