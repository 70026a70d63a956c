// Before and after a change of the book: two small floors, both at the first moment that differs.
import { button, byId, el, fill } from "./dom.js";

/**
 * @param {import("./store.js").Store} store
 * @param {(stop: number) => void} go to this stop on the floor
 */
export function differs(store, go) {
  const root = byId("differs");
  /** @param {{ head: string, still: string, said: string }} side @param {string} style */
  const small = (side, style) => {
    const picture = el("div", { class: "picture" });
    fill(picture, side.still);
    return el("figure", { class: "side " + style }, el("figcaption", {}, el("b", {}, side.head), " " + side.said + "."), picture);
  };
  store.listen((floor, what) => {
    if (what !== "floor") return;
    const found = floor.differs;
    root.hidden = !found;
    if (!found) return;
    store.say(found.said);
    root.replaceChildren(
      el("h2", { id: "dh" }, "What that changed"),
      el("p", { class: "soft" }, "The first moment of this possession that goes otherwise."),
      el("div", { class: "sides" }, small(found.before, "old"), small(found.after, "new")),
      el("div", { class: "acts" }, button("Show it on the floor", () => go(found.stop), { class: "full" }), button("Undo the change", () => store.undo()), button("Close", () => (root.hidden = true), { class: "text" })),
    );
  });
}
