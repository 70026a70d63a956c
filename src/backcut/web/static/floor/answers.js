// Not in our team: another answer for a player at this moment, the sentence that would say it, and what else it changes.
import { button, el } from "./dom.js";

/** @typedef {import("./contract").AnswerData} Answer */
/** @typedef {import("./contract").SayingData} Saying */

/** @type {import("./dialogs.js").Sheet} */
export const answers = {
  title: "Not in our team",
  fill: async (store, root, close, has) => {
    const { stop } = store.view;
    const numbers = store.floor.book.numbers;
    // Whoever does something just now is most likely meant.
    let player = (has && has.player) || store.floor.play.story.moments[stop].lit[0] || numbers[0];

    const pick = async () => {
      /** @type {Answer[] | null} */
      const found = await store.api("/answers?stop=" + stop + "&player=" + player);
      const choose = el("div", { class: "acts", role: "group", "aria-label": "Player" }, ...numbers.map((n) => button(String(n), () => ((player = n), pick()), { class: "who-pick", "aria-pressed": String(n === player) })));
      root.replaceChildren(
        el("p", { class: "soft" }, "Whose answer is another one in your team?"),
        choose,
        el("p", {}, "Here " + player + (found && found.length ? " " + found[0].words : " has no answer") + ". In our team " + player + " …"),
        el("ul", { class: "cans" }, ...(found || []).slice(1).map((one) => el("li", {}, button(one.words, () => say(one), { class: "can" })))),
        found && found.length < 2 ? el("p", { class: "note" }, "No change of one sentence gives another answer here.") : "",
      );
    };

    /** @param {Answer} one */
    const say = async (one) => {
      root.replaceChildren(el("p", { role: "status" }, "Looking for the sentence that says: " + player + " " + one.words + ". Each change is played through every situation of the book."));
      /** @type {Saying[] | null} */
      const found = await store.api("/answers", { method: "POST", body: { stop, player, answer: one.id } });
      root.replaceChildren(
        el("p", {}, player + " " + one.words + ". ", el("span", { class: "soft" }, found && found.length ? "This would say it; what changes least stands first." : "No change of one sentence or one choice says it here.")),
        el("ul", { class: "sayings" }, ...(found || []).map((way) => el("li", {}, el("p", {}, el("b", {}, way.says)), el("p", { class: "note" }, way.changes), button("Write it", async () => { if (await store.change({ kind: "text", text: way.text })) close(); }, { class: "full" })))),
        button("Another answer", pick, { class: "text" }),
      );
    };
    await pick();
  },
};
