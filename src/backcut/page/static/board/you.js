// One player's view: a heavy disc and the word at it; the letters of the others step back.
import { svgNode } from "./svg.js";

/** @typedef {import("./types.js").Parts} Parts */

const BELOW_CM = 102;

/**
 * @param {Parts} parts
 * @param {number | null} player
 */
export function markYou(parts, player) {
  const name = player === null ? "" : String(player);
  for (const [n, node] of Object.entries(parts.players)) {
    const word = node.querySelector(".you-word");
    node.classList.toggle("you", n === name);
    if (n !== name && word) word.remove();
    else if (n === name && !word) (node.querySelector(".m") || node).append(svgNode("text", { class: "say mid you-word", y: String(BELOW_CM) }, "you"));
  }
  // Lines and tabs that name their runner; one that names nobody is everybody's.
  for (const node of [...parts.under.children, ...parts.over.children]) {
    const runner = node.getAttribute("data-runner");
    node.classList.toggle("other", name !== "" && runner !== null && runner !== name);
  }
}
