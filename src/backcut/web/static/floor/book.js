// The book beside the floor: set like a book at rest; one sentence at a time opens to be changed.
import { byId, button, el } from "./dom.js";
import { reorder } from "./reorder.js";
import { sentenceEditor } from "./sentence.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {import("./contract").SentenceData} Sentence */

const LONG = 6;

/**
 * @param {Store} store
 * @param {(dialog: string, has?: any) => void} show opens a dialog
 */
export function book(store, show) {
  const list = byId("sentences");
  /** @type {{ place: number, choice: string | null } | null} */
  let open = null;
  /** @type {string} */
  let drawn = "";

  /** @param {number | null} place @param {string | null} [choice] */
  const edit = (place, choice = null) => {
    const from = open;
    open = place === null ? null : { place, choice };
    draw(true);
    const target = place === null ? from && list.querySelector('[data-place="' + from.place + '"] .tab') : list.querySelector(choice ? ".editor .pick-one input:checked" : ".editor textarea");
    if (target instanceof HTMLElement) target.focus();
  };

  /** @param {Sentence} one */
  const says = (one) => {
    const words = el("span", {});
    if (one.cue) words.append(el("b", {}, one.cue + "."), " ");
    if (one.waves.length || one.rank === null) words.append(...waved(one));
    else for (const piece of one.pieces) words.append(piece.choice ? choiceWords(piece.text, () => edit(one.place, piece.choice)) : piece.text);
    return el("p", { class: "says" }, words);
  };

  /** @param {Sentence} one */
  const row = (one) => {
    const letter = one.letter || (one.off ? "off" : "?");
    return el(
      "li",
      { class: "habit rest", "data-off": one.off, "data-letter": one.letter || "", "data-place": String(one.place) },
      button(letter, () => edit(one.place), { class: "tab bare", "aria-label": "Change " + (one.letter ? one.letter + ", " : "") + (one.cue || one.text), "aria-expanded": "false" }),
      says(one),
      ...one.waves.map((wave) => el("p", { class: "note wrong" }, triangle(), el("span", {}, el("b", {}, wave.wrong), " ", wave.right))),
      el("div", { class: "remarks" }),
    );
  };

  /** @param {boolean} [force] */
  const draw = (force = false) => {
    const { book } = store.floor;
    byId("title").textContent = book.title;
    byId("subtitle").textContent = book.subtitle;
    document.title = book.title + " · Backcut";
    const fingerprint = book.digest + JSON.stringify(open);
    if (!force && fingerprint === drawn) return;
    drawn = fingerprint;
    byId("book").classList.toggle("long", book.sentences.length > LONG);
    list.replaceChildren(
      ...book.sentences.map((one) => (open && open.place === one.place ? sentenceEditor(store, one, open.choice, () => edit(null), (place) => edit(place)) : row(one))),
      ...(book.sentences.length ? [] : [empty()]),
    );
    drawEnds();
  };

  const empty = () => {
    const first = "Cut. When I pass to the next spot, I cut to the rim.";
    return el("li", { class: "habit" }, el("p", { class: "says soft" }, "No sentences yet. Most books start here: ", el("i", {}, first.slice(5))), button("Use it", () => store.change({ kind: "sentence", do: "add", place: 0, words: first }), { class: "full" }));
  };

  const drawEnds = () => {
    const { book } = store.floor;
    const loose = book.problems.filter((problem) => !book.sentences.some((one) => one.waves.some((wave) => wave.wrong === problem.wrong)));
    // On a phone the sentence that won comes first, so what is done to the whole book stands below it.
    const whole = () => [
      button("For practice", () => show("practice"), { class: "text" }),
      button("Court and squad", () => show("ground"), { class: "text" }),
      button(store.floor.kept ? "Kept" : "Keep", () => show("keep"), { class: "text" }),
      button("Open another", () => show("books"), { class: "text" }),
    ];
    byId("book-does").replaceChildren(
      ...loose.map((problem) => el("p", { class: "note wrong" }, triangle(), el("span", {}, "Line " + problem.line + ": ", el("b", {}, problem.wrong), " ", problem.right))),
      el("div", { class: "acts" }, button("Add a sentence", () => show("add"), { class: "edged" }), button("Edit as text", () => show("text"), { class: "text" }), button("All choices", () => show("choices"), { class: "text" })),
      el("div", { class: "acts phone-only" }, ...whole()),
    );
    byId("head-does").replaceChildren(...whole());
  };

  reorder(list, (place, to) => store.change({ kind: "sentence", do: "move", place, to }));
  store.listen((_, what) => {
    if (what === "floor") {
      if (open && !store.floor.book.sentences.some((one) => open && one.place === open.place)) open = null;
      draw();
    }
  });
  return { edit };
}

/**
 * The words of a choice: a button that wraps like the sentence it stands in, which a button element cannot.
 * @param {string} words
 * @param {() => void} act
 */
function choiceWords(words, act) {
  const press = (/** @type {KeyboardEvent} */ event) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    event.stopPropagation();
    act();
  };
  return el("span", { role: "button", tabindex: "0", class: "choice", onclick: act, onkeydown: press }, words);
}

/** @param {Sentence} one */
function waved(one) {
  const text = one.text;
  const skip = one.written.length - text.length;
  /** @type {Array<Node | string>} */
  const out = [];
  let at = 0;
  for (const wave of one.waves) {
    const start = Math.max(wave.start - skip, at);
    const end = Math.max(wave.end - skip, start);
    out.push(text.slice(at, start), el("span", { class: "wave" }, text.slice(start, end)));
    at = end;
  }
  out.push(text.slice(at));
  return out;
}

function triangle() {
  const sign = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  sign.setAttribute("viewBox", "0 0 20 20");
  sign.setAttribute("class", "sign");
  sign.setAttribute("aria-hidden", "true");
  const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
  path.setAttribute("d", "M10 2.5L18.5 17.5H1.5ZM10 8v5M10 14.5v1.6");
  path.setAttribute("class", "warn");
  sign.append(path);
  return sign;
}
