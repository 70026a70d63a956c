// Court, squad, formation, exceptions, and the places of the spots with the distances between them.
import { ask } from "./api.js";
import { button, el } from "./dom.js";

/** @typedef {import("./contract").OptionData} Option */

/** @type {Promise<Record<string, Option[]>> | null} */
let known = null;

/** @type {import("./dialogs.js").Sheet} */
export const ground = {
  title: "Court, squad, formation",
  fill: async (store, root, close, has) => {
    known ??= ask("/options").then((told) => told.data);
    const options = await known;
    /** @param {string} key @param {string} words */
    const line = (key, words) => {
      const now = store.floor.book.lines[key];
      const pick = el("select", { id: "line-" + key, onchange: async () => { await store.change({ kind: "line", key, value: pick.value }); draw(); } }, ...options[key].map((one) => el("option", { value: one.name }, one.title)));
      if (!options[key].some((one) => one.name === now)) pick.append(el("option", { value: now }, now));
      pick.value = now;
      return el("div", { class: "line-field" }, el("label", { for: "line-" + key }, words), pick);
    };
    const draw = () => {
      const { book } = store.floor;
      const title = el("input", { type: "text", id: "line-title", maxlength: 80, onchange: () => store.change({ kind: "line", key: "title", value: title.value }) });
      title.value = book.title;
      root.replaceChildren(
        el("div", { class: "line-field" }, el("label", { for: "line-title" }, "Title"), title),
        line("formation", "Formation"),
        line("court", "Court"),
        line("squad", "Squad"),
        el("p", { class: "note" }, store.floor.play.notes.join(" ")),
        el("h3", {}, "Spots"),
        el("p", { class: "soft" }, "Drag them on the floor, or with the arrow keys. What you move is written into the book."),
        el("div", { class: "acts" }, button("Move spots on the floor", () => (close(), has && has.arrange()), { class: "edged" })),
        el("table", { class: "pairs" }, el("thead", {}, el("tr", {}, el("th", { scope: "col" }, "Neighbours"), el("th", { scope: "col" }, "apart"), el("th", { scope: "col" }, "usual"), el("th", { scope: "col" }, "fits"))), el("tbody", {}, ...book.pairs.map((pair) => el("tr", {}, el("th", { scope: "row" }, pair.spots), el("td", {}, pair.distance), el("td", {}, pair.band), el("td", {}, pair.within ? "yes" : "no"))))),
        el("h3", {}, "Exceptions"),
        el("div", { class: "roles" }, ...book.numbers.flatMap((n) => ["never cuts", "never fills a corner", "stays inside"].map((what) => role(n + " " + what)))),
      );
    };
    /** @param {string} role */
    const role = (role) => {
      const box = el("input", { type: "checkbox", onchange: async () => { await store.change({ kind: "role", role, on: box.checked }); draw(); } });
      box.checked = store.floor.book.roles.includes(role);
      return el("label", { class: "tick" }, box, el("span", {}, role));
    };
    draw();
  },
};
