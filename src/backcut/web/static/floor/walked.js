// Walked through: a row of boxes filled as seen, and the count in words.
import { byId, el } from "./dom.js";

/** @param {import("./store.js").Store} store */
export function walked(store) {
  const root = byId("walked");
  store.listen((floor, what) => {
    if (what !== "floor") return;
    const { boxes, words } = floor.seen;
    root.replaceChildren(
      el("span", { class: "boxes", "aria-hidden": "true" }, ...boxes.map((seen) => el("i", { class: seen ? "seen" : "" }))),
      el("p", { class: "note" }, words),
    );
  });
}
