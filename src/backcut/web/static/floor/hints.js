// Three hints at most, one at a time, under the floor; each goes when it has been done, or is let go.
import { button, el } from "./dom.js";

const KEPT = "backcut-hints";

/** @param {import("./store.js").Store} store */
export function hints(store) {
  const hints = [
    { words: "Stop it anywhere. Then drag the ball to a team-mate, or tap the ball, then the team-mate.", done: (/** @type {string} */ undo) => /\d>\d/.test(undo) },
    { words: "Tap a player without the ball, and let the defender deny under “What if”.", done: (/** @type {string} */ undo) => undo.startsWith("deny") },
    { words: "Change a dotted word of the book: the same possession is played again at once.", done: (/** @type {string} */ undo) => Boolean(undo) && !/[>\d]/.test(undo) },
  ];
  let at = +(localStorage.getItem(KEPT) || 0);
  const draw = () => {
    while (at < hints.length && hints[at].done(store.floor.undo)) at += 1;
    localStorage.setItem(KEPT, String(at));
    document.getElementById("hint")?.remove();
    if (at >= hints.length) return;
    const line = el("p", { id: "hint", class: "hint" }, hints[at].words, " ", button("Got it", () => ((at += 1), draw()), { class: "text" }));
    // On a phone the sentence that won stands right under the floor; a hint waits below the book.
    const small = matchMedia("(max-width: 40rem)").matches;
    document.querySelector(small ? "#book" : "#stage .time")?.append(line);
  };
  store.listen((_, what) => {
    if (what === "floor") draw();
  });
}
