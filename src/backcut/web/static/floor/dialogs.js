// Dialogs: one at a time, closed by Escape or Close; each is filled when it opens.
import { byId, button, el } from "./dom.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {{ title: string, fill: (store: Store, root: HTMLElement, close: () => void, has?: any) => void | Promise<void> }} Sheet */

/**
 * @param {Store} store
 * @param {Record<string, Sheet>} sheets
 * @returns {(name: string, has?: any) => Promise<void>}
 */
export function dialogs(store, sheets) {
  return async (name, has) => {
    const sheet = sheets[name];
    const root = el("div", { class: "sheet-in" });
    const dialog = el("dialog", { class: "sheet " + name, "aria-labelledby": "sheet-title" });
    const close = () => dialog.close();
    dialog.append(el("header", {}, el("h2", { id: "sheet-title" }, sheet.title), button("Close", close, { class: "text" })), root, el("p", { class: "said-line", role: "status" }));
    dialog.addEventListener("close", () => dialog.remove());
    dialog.addEventListener("keydown", (event) => event.stopPropagation());
    byId("dialogs").replaceChildren(dialog);
    dialog.showModal();
    await sheet.fill(store, root, close, has);
  };
}
