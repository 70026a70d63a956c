// What the tests of the board share: where its modules are, the contract Python wrote, and a small floor.
import { readFileSync } from "node:fs";

export const contract = JSON.parse(readFileSync(new URL("./contract/possession.json", import.meta.url), "utf8"));

/** Five-out on the FIBA court, 1 at the top with the ball, 5 cutting through the lane: cells as Python makes them. */
export const cells = [
  { id: "p1", x: 0, y: 710, label: "top, 1, has the ball", player: 1, ball: true },
  { id: "p2", x: 571, y: 423, label: "right wing, 2", player: 2, ball: false },
  { id: "p3", x: -571, y: 423, label: "left wing, 3", player: 3, ball: false },
  { id: "p4", x: 695, y: -30, label: "right corner, 4", player: 4, ball: false },
  { id: "p5", x: -40, y: 150, label: "rim, 5", player: 5, ball: false },
  { id: "LC", x: -695, y: -30, label: "left corner, empty", player: null, ball: false },
];

const can = (move, kind, player, to, spot, key) => ({ move, words: move, kind, player, to, spot, key });
export const cans = [
  can("1>2", "pass", 1, 2, "RW", "Enter"),
  can("1>3", "pass", 1, 3, "LW", "Enter"),
  can("skip 1>4", "skip", 1, 4, "RC", "Enter"),
  can("hand 1>2", "hand-off", 1, 2, "RW", ""),
  can("dribble LC", "dribble", 1, null, "LC", "g"),
  can("dribble RW", "dribble", 1, null, "RW", "g"),
  can("deny 2", "deny", 2, null, null, "d"),
  can("deny 3", "deny", 3, null, null, "d"),
];
