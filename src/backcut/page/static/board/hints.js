// What a hand is about to do: where the move can end, the line from the player to the finger, the move in words.
import { scaleOf, viewOf } from "./geometry.js";
import { svgNode } from "./svg.js";

/** @typedef {import("./types.js").Parts} Parts */
/** @typedef {import("./types.js").Place} Place */
/** @typedef {import("./types.js").Target} Target */

const DISC_CM = 62;
const RING_CM = 78;
const WORD_UP_CM = 112;
const LETTER_CM = 18;

/**
 * @param {Parts} parts
 * @returns {{ show: (targets: Target[], aimed?: Target | null, from?: Place | null, to?: Place | null) => void }}
 */
export function makeHints(parts) {
  const under = svgNode("g", { id: "hints", "aria-hidden": "true" });
  const words = svgNode("g", { id: "hint-words", "aria-hidden": "true" });
  parts.under.after(under);
  parts.over.after(words);

  /** @param {Target} target @param {boolean} aimed */
  const ring = (target, aimed) => {
    const node = svgNode("g", { transform: `translate(${target.place[0].toFixed(1)} ${target.place[1].toFixed(1)})` });
    const mark = svgNode("g", { class: "m" });
    mark.append(svgNode("circle", { class: aimed ? "target aimed" : "target", r: String(RING_CM) }));
    node.append(mark);
    return node;
  };
  /** @param {Place} from @param {Place} to @param {boolean} ends */
  const line = ([ax, ay], [bx, by], ends) => {
    const far = Math.hypot(bx - ax, by - ay);
    const tail = DISC_CM / far;
    const head = ends ? 1 - RING_CM / far : 1;
    if (tail >= head) return [];
    const at = (/** @type {number} */ share) => (ax + (bx - ax) * share).toFixed(1) + " " + (ay + (by - ay) * share).toFixed(1);
    return [svgNode("path", { class: "from", d: "M" + at(tail) + "L" + at(head) })];
  };
  /** @param {Target} target */
  const word = ({ can, place: [x, y] }) => {
    const view = viewOf(parts.svg);
    const half = (can.words.length * LETTER_CM) / 2;
    const shown = view.height / scaleOf(view);
    const up = view.turned ? -1 : 1;
    const above = y - up * WORD_UP_CM;
    const fits = above > view.y + LETTER_CM * 2 && above < view.y + shown - LETTER_CM;
    const left = view.x + half;
    const right = view.x + view.w - half;
    const across = Math.min(Math.max(x, left), right);
    return svgNode("text", { class: "say mid", x: across.toFixed(1), y: (fits ? above : y + up * (WORD_UP_CM + LETTER_CM)).toFixed(1) }, can.words);
  };

  return {
    show: (targets, aimed = null, from = null, to = null) => {
      const end = aimed ? aimed.place : to;
      under.replaceChildren(...(from && end ? line(from, end, Boolean(aimed)) : []), ...targets.map((target) => ring(target, target === aimed)));
      words.replaceChildren(...(aimed ? [word(aimed)] : []));
    },
  };
}
