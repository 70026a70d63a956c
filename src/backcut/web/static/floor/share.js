// Share: this moment as a picture or a drawing, the possession as one page, the book as text, and where it opens again.
import { button, el } from "./dom.js";

const WIDE_PX = 1600;

/** @type {import("./dialogs.js").Sheet} */
export const share = {
  title: "Share",
  fill: (store, root) => {
    const base = "/share/" + store.floor.id;
    const stop = store.view.stop;
    const address = location.origin + store.floor.address;
    const moment = store.floor.play.story.moments[stop];
    const moves = store.floor.play.moves.map((move) => move.text).join(", ");
    /** @param {string} light */
    const drawing = (light) => base + "/moment.svg?stop=" + stop + "&light=" + light;
    const seen = el("img", { class: "shared", src: drawing("day"), alt: "The floor as it will be shared. " + moment.floor });
    const show = () => {
      seen.src = drawing(light.value);
      file.href = drawing(light.value) + "&save=true";
    };
    const light = el("select", { id: "share-light", onchange: show }, el("option", { value: "day" }, "Day"), el("option", { value: "night" }, "Night"), el("option", { value: "print" }, "Black and white"));
    const file = el("a", { class: "button edged", href: drawing("day") + "&save=true", download: "" }, "Drawing");

    const png = async () => {
      const name = store.floor.book.title + " " + (stop + 1) + ".png";
      const blob = await pictureOf(drawing(light.value)).catch(() => null);
      if (!blob) return store.say("The picture did not come. Close this, look at the floor again, then share it.");
      const link = el("a", { href: URL.createObjectURL(blob), download: name });
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
    };
    /** @param {string} id @param {string} words @param {string} text */
    const copyRow = (id, words, text) => {
      const field = el("input", { type: "text", id, readonly: true });
      field.value = text;
      const done = el("span", { role: "status", class: "note" });
      const copy = async () => {
        const copied = await (navigator.clipboard ? navigator.clipboard.writeText(text).then(() => true, () => false) : false);
        field.select();
        done.textContent = copied ? "Copied." : "It is marked: copy it from here.";
      };
      return el("div", { class: "copy" }, el("label", { for: id }, words), field, button("Copy", copy, { class: "edged", "aria-label": "Copy: " + words }), done);
    };

    root.append(
      seen,
      el("div", { class: "acts" }, el("label", { for: "share-light" }, "This moment"), light, button("Picture", png, { class: "full" }), file),
      el("p", { class: "note" }, "A picture (PNG) goes into any chat; a drawing (SVG) stays sharp at any size."),
      el("div", { class: "acts" }, el("a", { class: "button edged", href: base + "/page.html", download: "" }, "Whole possession"), el("a", { class: "button edged", href: base + "/book.txt", download: "" }, "Book"), button("Print", () => print(), { class: "edged" })),
      el("p", { class: "note" }, "The possession is one page that plays without network; the book is a text file."),
      copyRow("share-address", "Where it opens on this machine", address),
      store.floor.kept ? "" : el("p", { class: "note" }, "It opens the book as it was kept last; keep it first."),
      copyRow("share-moves", "The moves", moves || "none yet"),
    );
  },
};

/**
 * The drawing at this address as a PNG.
 * @param {string} address
 * @returns {Promise<Blob>}
 */
export async function pictureOf(address) {
  const image = new Image();
  image.src = address;
  await image.decode();
  const canvas = el("canvas", { width: WIDE_PX, height: Math.round((WIDE_PX * image.naturalHeight) / image.naturalWidth) });
  const pen = canvas.getContext("2d");
  if (!pen) throw new Error("This browser cannot draw pictures.");
  pen.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) => canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("No picture came."))), "image/png"));
}
