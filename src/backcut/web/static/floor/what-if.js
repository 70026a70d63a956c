// What if: the moves that can be made now, as sentences; each one branches. They come from the server, none is known here.
import { byId, button, el, who } from "./dom.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {import("./contract").CanData} Can */

const SHOWN = 7;

/**
 * The moves that can be made now; early ones only when the ball moves on while players are on the way.
 * @param {Store} store
 * @returns {Can[]}
 */
export function cans(store) {
  const { early, stop } = store.view;
  const here = store.floor.play.stops[stop];
  const all = here ? here.can : [];
  const onTheWay = early && all.some((can) => can.early);
  return all.filter((can) => can.early === onTheWay || (onTheWay && isPart(can)));
}

/** @param {Can} can */
function isPart(can) {
  return !can.early && ["forget", "jump", "jam"].includes(can.kind);
}

/**
 * Make a move: the rest of the possession is cut off there.
 * @param {Store} store
 * @param {Can} can
 */
export function doIt(store, can) {
  store.look({ chosen: null });
  return store.change({ kind: "happen", keep: can.keep, move: can.move });
}

/**
 * @param {Store} store
 * @param {(dialog: string, has?: any) => void} show
 */
export function whatIf(store, show) {
  const root = byId("what-if");
  let whole = false;

  const draw = () => {
    const { chosen, early, stop } = store.view;
    const here = store.floor.play.stops[stop];
    const list = cans(store).filter((can) => chosen === null || can.player === chosen || can.to === chosen);
    const shown = whole || chosen !== null ? list : list.slice(0, SHOWN);
    const onTheWay = here && here.can.some((can) => can.early);
    root.replaceChildren(
      store.floor.play.moves.length ? "" : el("p", { class: "note" }, "Pass, or let a defender deny: the five answer by the book."),
      el("p", { class: "note", hidden: chosen === null }, chosen === null ? "" : who(chosen), " is in hand. ", button("Let go", () => store.look({ chosen: null }), { class: "text" })),
      el("ul", { class: "cans" }, ...shown.map((can) => el("li", {}, button(can.words, () => doIt(store, can), { class: "can" })))),
    );
    if (!list.length) root.append(el("p", { class: "note" }, here && here.can.length ? "Nothing for this player now." : "The possession is over. Go back to any moment and go on from there."));
    if (list.length > shown.length) root.append(button("All " + list.length, () => ((whole = true), draw()), { class: "text" }));
    if (whole && chosen === null && list.length > SHOWN) root.append(button("Fewer", () => ((whole = false), draw()), { class: "text" }));
    root.append(button("Not in our team", () => show("answers", { player: chosen }), { class: "text" }));
    if (onTheWay) {
      const box = el("input", { type: "checkbox", onchange: () => store.look({ early: box.checked }) });
      box.checked = early;
      root.append(el("label", { class: "tick" }, box, el("span", {}, "while they are on the way")));
    }
  };
  store.listen((_, what) => {
    if (["floor", "chosen", "early", "stop"].includes(what)) draw();
  });
}
