// For practice: what the book gives for tonight, on paper and for the phone; every file is made when it is asked for.
import { el } from "./dom.js";

/** @typedef {import("./store.js").Store} Store */

/**
 * A link that saves a file.
 * @param {string} words
 * @param {string} address
 */
const save = (words, address) => el("a", { class: "button edged", href: address, download: "" }, words);

/**
 * A field and its label, which stay together.
 * @param {HTMLElement} label
 * @param {HTMLElement} field
 */
const pair = (label, field) => el("span", { class: "pair" }, label, field);

/**
 * What there is of one sentence.
 * @param {Store} store
 * @param {number} rank
 */
export function ofOne(store, rank) {
  const base = "/practice/" + store.floor.id;
  return [save("Drill cards", base + "/card.pdf?rank=" + rank), save("Handout", base + "/handout.pdf?rank=" + rank), save("Clip", base + "/clip.mp4?rank=" + rank)];
}

/** @type {import("./dialogs.js").Sheet} */
export const practice = {
  title: "For practice",
  fill: (store, root) => {
    const base = "/practice/" + store.floor.id;
    const one = (/** @type {string} */ id, /** @type {string} */ words, /** @type {number} */ value) => {
      const field = el("input", { type: "number", id, min: 0, max: 60, value, oninput: () => draw() });
      return { field, row: pair(el("label", { for: id }, words), field) };
    };
    const fields = { players: one("practice-players", "Players", 8), baskets: one("practice-baskets", "Baskets", 1), balls: one("practice-balls", "Balls", 4), minutes: one("practice-minutes", "Minutes", 60) };
    fields.minutes.field.max = "150";
    const paper = el("select", { id: "practice-paper", onchange: () => draw() }, el("option", { value: "a4" }, "A4"), el("option", { value: "letter" }, "Letter"));
    const spoken = store.floor.book.sentences.filter((sentence) => sentence.rank !== null);
    const won = Object.entries(store.floor.play.story.moments[store.view.stop].book).find(([, state]) => state[0] === "won");
    const sentence = el("select", { id: "practice-sentence", onchange: () => draw() }, ...spoken.map((each) => el("option", { value: String(each.rank) }, each.letter + " " + (each.cue || each.text))));
    const first = spoken.find((each) => won && each.letter === won[0]);
    if (first) sentence.value = String(first.rank);
    const tonight = el("div", { class: "acts" });
    const each = el("div", { class: "acts" });
    const whole = el("div", { class: "acts" });
    const draw = () => {
      const on = "paper=" + paper.value;
      const hall = Object.entries(fields).map(([name, { field }]) => "&" + name + "=" + (Number(field.value) || 0)).join("");
      const rank = "rank=" + sentence.value;
      tonight.replaceChildren(save("Tonight's page", base + "/tonight.pdf?" + on + hall));
      each.replaceChildren(
        save("Drill cards", base + "/card.pdf?" + rank + "&" + on + hall.replace(/&minutes=\d+/, "")),
        save("Handout", base + "/handout.pdf?" + rank + "&" + on),
        save("Clip", base + "/clip.mp4?" + rank),
      );
      whole.replaceChildren(save("Poster", base + "/sheet.pdf?kind=poster&" + on), save("Bench sheet", base + "/sheet.pdf?kind=bench&" + on), save("Booklet", base + "/sheet.pdf?kind=booklet&" + on), save("Quiz on paper", base + "/sheet.pdf?kind=quiz&" + on), save("Quiz for the phone", base + "/quiz.html"));
    };
    root.append(
      el("div", { class: "acts" }, ...Object.values(fields).map(({ row }) => row), pair(el("label", { for: "practice-paper" }, "Paper"), paper)),
      tonight,
      el("div", { class: "acts" }, el("label", { for: "practice-sentence" }, "One sentence"), sentence),
      each,
      el("p", { class: "note" }, "The clip takes a few seconds to make."),
      el("h3", {}, "The whole book"),
      whole,
      el("p", { class: "note" }, "Numbers only: nobody's name is in any of it. The usual cautions stand on everything with running; local rules and medical staff decide."),
    );
    draw();
  },
};
