// How the floor is looked at: from the other end, as one player, with whole ways run, answers hidden, on the projector.
import { byId, button, el } from "./dom.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {{ turn: (on: boolean) => void, you: (player: number | null) => void, trails: (whole: boolean) => void }} Looks */

/**
 * The row of ways to look under the time line; they hold when the floor is put on anew.
 * @param {Store} store
 * @param {() => Looks | null} board
 * @param {() => void} mark opens the denial mark
 */
export function views(store, board, mark) {
  const now = { turned: false, whole: false, you: /** @type {number | null} */ (null) };

  const apply = () => {
    const looks = board();
    if (!looks) return;
    looks.turn(now.turned);
    looks.trails(now.whole);
    looks.you(now.you);
  };
  /** @param {string} words @param {boolean} on @param {() => void} act */
  const toggle = (words, on, act) => button(words, () => (act(), draw()), { class: "toggle", "aria-pressed": String(on) });

  const draw = () => {
    apply();
    const time = document.querySelector("#stage .time");
    if (!time) return;
    const numbers = store.floor.book.numbers;
    const pick = el("select", { "aria-label": "One player's view", onchange: () => { now.you = pick.value ? +pick.value : null; now.turned = now.you !== null; draw(); } }, el("option", { value: "" }, "Everybody"), ...numbers.map((n) => el("option", { value: String(n) }, "As " + n)));
    pick.value = now.you === null ? "" : String(now.you);
    const row = el(
      "div",
      { class: "looks", role: "group", "aria-label": "How to look" },
      toggle("Other end", now.turned, () => (now.turned = !now.turned)),
      toggle("Ways run", now.whole, () => (now.whole = !now.whole)),
      pick,
      toggle("Freeze and ask", store.view.hidden, () => store.look({ hidden: !store.view.hidden })),
      button("Again from the start", () => store.change({ kind: "show" }), { class: "text" }),
      button("A possession drawn", () => store.change({ kind: "draw", seed: Math.floor(Math.random() * 1e6) }), { class: "text" }),
      button("Denial mark", mark, { class: "text" }),
    );
    const old = time.querySelector(".looks");
    if (old) old.replaceWith(row);
    else time.querySelector(".deck")?.after(row);
  };
  store.listen((_, what) => {
    if (what === "floor" || what === "hidden") draw();
  });

  byId("projector").addEventListener("click", () => projector(true));
  return { you: () => now.you };
}

/**
 * Full screen, the floor as tall as the screen, only the sentence that won beside it; Escape leaves.
 * @param {boolean} on
 */
export async function projector(on) {
  const root = document.documentElement;
  root.classList.toggle("projector", on);
  if (on) {
    root.dataset.lightBefore = root.dataset.light || "";
    root.dataset.light = "day";
    const step = document.querySelector("[name=speed][value=step]");
    if (step instanceof HTMLElement) step.click();
    await root.requestFullscreen?.().catch(() => undefined);
    addEventListener("keydown", leave);
    document.addEventListener("fullscreenchange", left);
  } else {
    root.dataset.light = root.dataset.lightBefore || "";
    if (!root.dataset.light) delete root.dataset.light;
    if (document.fullscreenElement) await document.exitFullscreen();
    removeEventListener("keydown", leave);
    document.removeEventListener("fullscreenchange", left);
  }
  dispatchEvent(new Event("resize"));
}

/** @param {KeyboardEvent} event */
function leave(event) {
  if (event.key === "Escape") projector(false);
}

function left() {
  if (!document.fullscreenElement) projector(false);
}
