// Freeze and ask: everybody's answer is hidden; the players point at the spot they go to; then it is shown.
import { button, byId, el, who } from "./dom.js";

/** @typedef {import("./store.js").Store} Store */

/**
 * @param {Store} store
 * @param {() => number | null} you the player whose view it is, or null for everybody
 */
export function freeze(store, you) {
  /** @type {Map<number, string>} */
  const told = new Map();
  const draw = () => {
    document.body.classList.toggle("asking", store.view.hidden);
    const old = document.getElementById("asking");
    if (old) old.remove();
    if (!store.view.hidden) return told.clear();
    const stop = store.floor.play.stops[store.view.stop];
    const numbers = you() === null ? store.floor.book.numbers : [/** @type {number} */ (you())];
    const spots = [...new Set(stop.cells.map((cell) => cell.label.split(",")[0]))].sort();
    const line = (/** @type {number} */ n) => {
      const pick = el("select", { "aria-label": "Where does " + n + " go?", onchange: () => told.set(n, pick.value) }, el("option", { value: "" }, "says …"), ...spots.map((spot) => el("option", { value: spot }, spot)));
      pick.value = told.get(n) || "";
      return el("li", {}, who(n), pick);
    };
    byId("now").before(el("div", { id: "asking" }, el("p", { class: "note" }, "Where do you go? Say it, then look."), el("ul", { class: "asked-all" }, ...numbers.map(line)), button("Show the answers", reveal, { class: "full" })));
  };
  const reveal = () => {
    const stop = store.floor.play.stops[store.view.stop];
    const said = [...told].filter(([, spot]) => spot);
    store.view.hidden = false;
    document.body.classList.remove("asking");
    document.getElementById("asking")?.remove();
    const wrong = said.filter(([n, spot]) => !(stop.right[n] || []).includes(spot));
    const words = said.length ? (wrong.length ? said.length - wrong.length + " of " + said.length + " as the book says; " + wrong.map(([n, spot]) => n + " said " + spot).join(", ") + "." : "All " + said.length + " as the book says.") : "";
    told.clear();
    store.look({ hidden: false });
    store.say(words);
  };
  store.listen((_, what) => {
    if (["floor", "stop", "hidden"].includes(what)) draw();
  });
}
