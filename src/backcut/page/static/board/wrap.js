// The parts of the page the board moves, found once by their ids.
// The room a drawn element takes, in the drawing's own units.
export function boxOf(node) {
  const { x, y, width, height } = node.getBBox();
  const at = /translate\(([-\d.]+) ([-\d.]+)\)/.exec(node.getAttribute("transform") || "translate(0 0)");
  const left = x + +at[1];
  const top = y + +at[2];
  return { left, top, right: left + width, bottom: top + height };
}

export function findParts(root, numbers) {
  const find = (id) => root.getElementById(id);
  const ids = "before play next play-word count score slider reel past pin pen playhead caption under over trails ball now floor-said";
  const parts = Object.fromEntries(ids.split(" ").map((id) => [id, find(id)]));
  const each = (letter) => Object.fromEntries(numbers.map((n) => [n, find(letter + n)]).filter(([, node]) => node));
  return {
    ...parts,
    box: boxOf,
    court: find("floor"),
    players: each("p"),
    defenders: each("x"),
    hands: each("h"),
    glows: each("g"),
    habits: [...root.querySelectorAll(".habit")],
    said: [...root.querySelectorAll(".said")],
    links: [...root.querySelectorAll("[data-go]")],
    speeds: [...root.querySelectorAll("[name=speed]")],
    placed: [...root.querySelectorAll("[data-t]")],
  };
}
