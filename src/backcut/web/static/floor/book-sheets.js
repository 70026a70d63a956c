// Dialogs about the book: add a sentence, edit as text, all choices, keep, open another.
import { ask } from "./api.js";
import { button, el } from "./dom.js";
import { picker, wordsField } from "./sentence.js";

/** @typedef {import("./dialogs.js").Sheet} Sheet */
/** @typedef {import("./contract").KeptData} Kept */

/** @type {Sheet} */
export const add = {
  title: "Add a sentence",
  fill: (store, root, close) => {
    const { book } = store.floor;
    const end = book.sentences.length;
    /** @param {string} words @param {number} place */
    const put = async (words, place) => {
      if (await store.change({ kind: "sentence", do: "add", place, words })) close();
    };
    // What speaks only when nothing else does stays last.
    const before = Math.max(end - 1, 0);
    root.append(
      wordsField("", "A sentence in your words", (words) => put(words, before)),
      el("p", { class: "soft" }, "Or take one that the book does not say yet. It is asked just before the last; move it with “asks earlier”."),
      el("ul", { class: "phrases" }, ...book.phrases.filter((one) => !one.said).map((one) => el("li", {}, el("p", { class: "says" }, el("b", {}, one.cue + "."), " " + one.text), el("p", { class: "note" }, one.why), button("Add", () => put(one.cue + ". " + one.text, before), { class: "edged", "aria-label": "Add " + one.cue })))),
    );
  },
};

/** @type {Sheet} */
export const text = {
  title: "The book as text",
  fill: (store, root, close) => {
    const area = el("textarea", { class: "whole", "aria-label": "The whole book", spellcheck: "true", rows: 24 });
    area.value = store.floor.book.text;
    const file = el("input", { type: "file", accept: ".txt,text/plain", class: "unseen", id: "book-file", onchange: async () => { if (file.files && file.files[0]) area.value = await file.files[0].text(); } });
    root.append(
      area,
      el("div", { class: "acts" }, button("Use this text", async () => { if (await store.change({ kind: "text", text: area.value })) close(); }, { class: "full" }), el("label", { class: "button edged", for: "book-file" }, "From a file"), file, el("a", { class: "button edged", href: "/share/" + store.floor.id + "/book.txt", download: "" }, "To a file")),
    );
  },
};

/** @type {Sheet} */
export const choices = {
  title: "All choices",
  fill: (store, root) => {
    const draw = () => {
      const { choices } = store.floor.book;
      const read = choices.filter((one) => one.read);
      const rest = choices.filter((one) => !one.read);
      root.replaceChildren(
        el("p", { class: "soft" }, "Coaches differ. Each choice has a default; what you pick stands in the sentence that says it, or on a line of its own."),
        ...read.map((one) => picker(store, one.name) || ""),
        el("p", { class: "note" }, rest.length ? "No sentence of this book asks for: " + rest.map((one) => one.name).join(", ") + "." : ""),
      );
    };
    draw();
  },
};

/** @type {Sheet} */
export const keep = {
  title: "Keep the book",
  fill: (store, root, close) => {
    const { floor } = store;
    const name = el("input", { type: "text", maxlength: 60, id: "keep-name", autocomplete: "off" });
    name.value = floor.name || floor.book.title;
    const go = async () => {
      if (await store.keep(name.value.trim())) close();
    };
    root.append(
      el("form", { class: "acts", onsubmit: (/** @type {Event} */ event) => (event.preventDefault(), go()) }, el("label", { for: "keep-name" }, "Name"), name, el("button", { type: "submit", class: "full" }, "Keep")),
      el("p", { class: "note" }, "It is kept on this computer, as a text file. What stood there before stays among its versions."),
      el("p", {}, el("a", { class: "button edged", href: "/share/" + floor.id + "/book.txt", download: "" }, "To a file elsewhere")),
    );
    name.select();
  },
};

/** @type {Sheet} */
export const books = {
  title: "Books",
  fill: async (store, root, close) => {
    const { data } = await ask("/books").catch(() => ({ data: [] }));
    /** @param {Kept} book */
    const row = (book) => {
      const called = book.shipped ? book.title : book.title + ", " + book.name;
      const open = button("Open", async () => { if (await store.open({ book: book.name })) close(); }, { class: "edged", "aria-label": "Open " + called });
      const before = button("Versions", () => versions(book), { class: "text", "aria-label": "Versions of " + called });
      return el("li", {}, el("span", {}, el("b", {}, book.title), el("small", {}, book.shipped ? "comes with Backcut, invented" : book.name)), open, before);
    };
    /** @param {Kept} book */
    const versions = async (book) => {
      const path = "/books/" + encodeURIComponent(book.name) + "/versions";
      const told = await ask(path).catch(() => ({ data: [] }));
      root.replaceChildren(
        el("p", { class: "soft" }, "Versions of " + book.title + ", the newest first."),
        el("ul", { class: "books" }, ...told.data.map((/** @type {string} */ stamp) => el("li", {}, el("span", {}, stamp), button("Open", async () => { const version = await ask(path + "/" + encodeURIComponent(stamp)); if (await store.open({ book: book.name, text: version.data, stands: book.digest })) close(); }, { class: "edged" })))),
        told.data.length ? "" : el("p", { class: "note" }, "None yet. Each change of the book puts one by."),
        button("Back to the books", draw, { class: "text" }),
      );
    };
    const draw = () => {
      const mine = data.filter((/** @type {Kept} */ book) => !book.shipped);
      const left = store.left();
      const away = left && left.text !== store.floor.book.text;
      root.replaceChildren(
        away ? button("Where you left off", async () => { if (await store.open(left)) close(); }, { class: "full" }) : "",
        mine.length ? el("ul", { class: "books" }, ...mine.map(row)) : el("p", { class: "note" }, "None of your own yet. Open one of these, change a sentence, and keep it."),
        el("h3", {}, "To begin with"),
        el("ul", { class: "books" }, ...data.filter((/** @type {Kept} */ book) => book.shipped).map(row)),
        el("div", { class: "acts" }, button("An empty book", async () => { if (await store.open({ text: "Title: Our team\nFormation: five-out\n\nWide. Otherwise I hold, wide, feet set.\n" })) close(); }, { class: "edged" })),
      );
    };
    draw();
  },
};
