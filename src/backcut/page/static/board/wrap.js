// The parts of the page the board moves, found once by their ids.

/** @typedef {import("./types.js").Box} Box */
/** @typedef {import("./types.js").Parts} Parts */

/**
 * The room a drawn element takes, in the drawing's own units.
 * @param {SVGGraphicsElement} node
 * @returns {Box}
 */
export function boxOf(node) {
  const { x, y, width, height } = node.getBBox();
  const at = /translate\(([-\d.]+) ([-\d.]+)\)/.exec(node.getAttribute("transform") || "") || ["", "0", "0"];
  const left = x + Number(at[1]);
  const top = y + Number(at[2]);
  return { left, top, right: left + width, bottom: top + height };
}

/**
 * @param {Document} root
 * @param {string[]} numbers of the players
 * @returns {Parts}
 */
export function findParts(root, numbers) {
  /** @template {Element} E @param {string} id @returns {E} */
  const find = (id) => {
    const node = root.getElementById(id);
    if (!node) throw new Error("The page has no part #" + id + ".");
    return /** @type {E} */ (/** @type {unknown} */ (node));
  };
  /** @param {string} letter @returns {Record<string, SVGGElement>} */
  const each = (letter) => Object.fromEntries(numbers.filter((n) => root.getElementById(letter + n)).map((n) => [n, find(letter + n)]));
  /** @template {Element} E @param {string} selector @returns {E[]} */
  const all = (selector) => Array.from(/** @type {NodeListOf<E>} */ (root.querySelectorAll(selector)));
  /** @type {SVGGElement} */
  const under = find("under");
  return {
    svg: /** @type {SVGSVGElement} */ (under.ownerSVGElement),
    court: find("floor"),
    before: find("before"),
    play: find("play"),
    playWord: find("play-word"),
    next: find("next"),
    count: find("count"),
    slider: find("slider"),
    reel: find("reel"),
    past: find("past"),
    pin: find("pin"),
    pen: find("pen"),
    playhead: find("playhead"),
    caption: find("caption"),
    now: root.getElementById("now"),
    under,
    over: find("over"),
    trails: find("trails"),
    ball: find("ball"),
    floorSaid: find("floor-said"),
    players: each("p"),
    defenders: each("x"),
    hands: each("h"),
    glows: each("g"),
    habits: all(".habit"),
    said: all(".said"),
    links: all("[data-go]"),
    speeds: all("[name=speed]"),
    placed: all("[data-t]"),
    runs: [],
    words: [],
  };
}
