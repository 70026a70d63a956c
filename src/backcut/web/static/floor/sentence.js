// One sentence, open to be changed: as text with completion, by pickers, its place, its notes.
import { ask } from "./api.js";
import { button, el } from "./dom.js";
import { ofOne } from "./practice.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {import("./contract").SentenceData} Sentence */
/** @typedef {import("./contract").CompletionData} Completion */

const WAIT_MS = 90;

/**
 * @param {Store} store
 * @param {Sentence} one
 * @param {string | null} choice the choice whose picker is asked for
 * @param {() => void} close
 * @param {(place: number) => void} follow keeps the sentence open at another place
 */
export function sentenceEditor(store, one, choice, close, follow) {
  /** @param {Record<string, any>} what */
  const change = (what) => store.change({ kind: "sentence", place: one.place, ...what });
  const last = store.floor.book.sentences.length - 1;
  const field = wordsField(one.written, "The sentence", (words) => change({ do: "write", words }).then((done) => done && close()));
  /** @param {number} to */
  const move = async (to) => {
    if (await change({ do: "move", to })) follow(to);
  };
  const pickers = one.pieces.filter((piece) => piece.choice).map((piece) => picker(store, /** @type {string} */ (piece.choice), piece.choice === choice));
  const item = el(
    "li",
    { class: "habit open", "data-letter": "", "data-place": String(one.place) },
    el("span", { class: "tab on" }, one.letter || (one.off ? "–" : "?")),
    el(
      "div",
      { class: "editor", role: "group", "aria-label": "Change this sentence" },
      field,
      ...pickers,
      el(
        "div",
        { class: "acts" },
        button("Asks earlier", () => move(one.place - 1), { disabled: one.place === 0, class: "edged" }),
        button("Asks later", () => move(one.place + 1), { disabled: one.place === last, class: "edged" }),
        button(one.off ? "On again" : "Off", () => change({ do: one.off ? "on" : "off" }).then(close), { class: "edged" }),
        button("Take out", () => change({ do: "out" }).then(close), { class: "edged" }),
        button("Close", close, { class: "text" }),
      ),
      one.rank === null ? null : el("div", { class: "acts" }, ...ofOne(store, one.rank)),
      noteField("Why", one.why, (words) => change({ do: "why", words })),
      noteField("Mistake", one.mistake, (words) => change({ do: "mistake", words })),
    ),
    el("div", { class: "remarks", hidden: true }),
  );
  item.addEventListener("keydown", (event) => {
    event.stopPropagation();
    if (event.key === "Escape") close();
    if (event.altKey && event.key === "ArrowUp" && one.place > 0) move(one.place - 1);
    if (event.altKey && event.key === "ArrowDown" && one.place < last) move(one.place + 1);
  });
  return item;
}

/**
 * The values of one choice, each with who does it and why.
 * @param {Store} store
 * @param {string} name
 * @param {boolean} asked
 */
export function picker(store, name, asked = false) {
  const choice = store.floor.book.choices.find((one) => one.name === name);
  if (!choice) return null;
  const group = "choice-" + name.replace(/\W/g, "-");
  return el(
    "fieldset",
    { class: asked ? "pick-one asked" : "pick-one" },
    el("legend", {}, choice.asks),
    ...choice.values.map((value) => {
      const input = el("input", { type: "radio", name: group, value: value.name, onchange: () => store.change({ kind: "choose", name, value: value.name }) });
      input.checked = value.name === choice.value;
      return el("label", {}, input, el("span", {}, el("b", {}, value.words), el("small", {}, value.who)));
    }),
  );
}

/**
 * A sentence as text: it grows with its words; under it how it can go on; Enter keeps it.
 * @param {string} words
 * @param {string} label
 * @param {(words: string) => unknown} keep
 */
export function wordsField(words, label, keep) {
  const list = el("ul", { class: "ways-on-list", role: "listbox", id: "ways-on", "aria-label": "How it can go on", hidden: true });
  const area = el("textarea", { "aria-label": label, rows: 3, spellcheck: "true", "aria-controls": "ways-on", "aria-autocomplete": "list" });
  area.value = words;
  const done = button("Use these words", () => keep(area.value.trim()), { class: "full" });
  let timer = 0;
  let at = -1;
  /** @type {Completion[]} */
  let ways = [];

  /** @param {Completion} way */
  const take = (way) => {
    area.value = way.whole;
    look();
    area.focus();
  };
  const draw = () => {
    list.hidden = !ways.length;
    list.replaceChildren(...ways.map((way, i) => el("li", { role: "option", id: "way-" + i, "aria-selected": String(i === at), onpointerdown: (/** @type {Event} */ event) => (event.preventDefault(), take(way)) }, el("span", {}, way.whole), el("small", {}, way.who))));
    if (at >= 0) area.setAttribute("aria-activedescendant", "way-" + at);
    else area.removeAttribute("aria-activedescendant");
  };
  const look = () => {
    clearTimeout(timer);
    timer = window.setTimeout(async () => {
      const text = area.value;
      const told = await ask("/words", { method: "POST", body: { text } }).catch(() => ({ data: [] }));
      if (text !== area.value) return;
      ways = told.data.filter((/** @type {Completion} */ way) => way.whole !== text);
      at = -1;
      draw();
    }, WAIT_MS);
  };
  area.addEventListener("input", look);
  area.addEventListener("keydown", (event) => {
    if (event.key === "ArrowDown" && ways.length && !event.altKey) at = Math.min(at + 1, ways.length - 1);
    else if (event.key === "ArrowUp" && ways.length && at >= 0 && !event.altKey) at -= 1;
    else if (event.key === "Enter" && !event.shiftKey) {
      event.preventDefault();
      if (at >= 0) take(ways[at]);
      else keep(area.value.trim());
      return;
    } else return;
    event.preventDefault();
    draw();
  });
  return el("div", { class: "words-field" }, area, list, el("div", { class: "acts" }, done));
}

/**
 * A note of the sentence, kept when it is left.
 * @param {string} label
 * @param {string} words
 * @param {(words: string) => unknown} keep
 */
function noteField(label, words, keep) {
  const input = el("input", { type: "text", maxlength: 300, onchange: () => keep(input.value) });
  input.value = words;
  return el("label", { class: "note-field" }, el("span", {}, label), input);
}
