// Moving what the coach may move on the floor: spots, and the denial mark with everybody's feet against it.
import { handle } from "../board/handles.js";
import { button, el, tab, who } from "./dom.js";

/** @typedef {import("./store.js").Store} Store */
/** @typedef {import("../board/types.js").Board} Board */

const SVG = "http://www.w3.org/2000/svg";
const WAIT_MS = 60;

/**
 * @param {Store} store
 * @param {() => Board | null} board
 */
export function adjust(store, board) {
  /** @type {"spots" | "mark" | ""} */
  let mode = "";
  /** @type {Array<{ remove: () => void }>} */
  let handles = [];
  /** @type {SVGGElement | null} */
  let layer = null;

  const panel = el("div", { class: "adjust", id: "adjust" });
  const clear = () => {
    handles.forEach((one) => one.remove());
    handles = [];
    layer?.remove();
    layer = null;
    panel.remove();
  };
  const close = () => {
    mode = "";
    clear();
  };

  const spots = () => {
    const here = board();
    if (!here) return;
    const { book } = store.floor;
    const told = Object.entries(book.spots);
    for (const [spot, [x, y]] of told) {
      const name = book.spot_names[spot];
      handles.push(
        handle(here.parts, {
          id: "spot-" + spot,
          label: "Place of the " + name,
          x,
          y,
          limit: (a, b) => [Math.round(a / 5) * 5, Math.round(b / 5) * 5],
          move: () => undefined,
          drop: (a, b) => store.change({ kind: "spot", spot, x_m: a / 100, y_m: b / 100 }),
        }),
      );
    }
    const pairs = book.pairs.map((pair) => el("li", {}, pair.spots + ": " + pair.distance + (pair.within ? "" : ", usual is " + pair.band)));
    panel.replaceChildren(
      el("p", {}, el("b", {}, "Move the spots. "), "Drag a grip, or use the arrow keys on it; the book keeps the place."),
      el("ul", { class: "note" }, ...pairs),
      el("div", { class: "acts" }, button("All back where they were computed", async () => { for (const [spot] of told) await store.change({ kind: "spot", spot }); }, { class: "edged" }), button("Done", close, { class: "full" })),
    );
  };

  const mark = async () => {
    const here = board();
    if (!here) return;
    const t = here.state.now.t / 100;
    let timer = 0;
    /** @param {number | null} depth */
    const look = (depth) => store.api("/mark?t=" + t + (depth === null ? "" : "&mark_m=" + depth.toFixed(2)));
    const first = await look(null);
    if (!first || mode !== "mark") return;
    const far = Math.hypot(first.handle.x_cm, first.handle.y_cm);
    const ux = first.handle.x_cm / far;
    const uy = first.handle.y_cm / far;
    const [low, high] = first.limits_m;
    /** @param {number} x @param {number} y */
    const depthAt = (x, y) => Math.min(Math.max(Math.round((first.mark_m + (x * ux + y * uy - far) / 100) * 20) / 20, low), high);
    /** @param {any} found */
    const draw = (found) => {
      layer?.remove();
      layer = document.createElementNS(SVG, "g");
      layer.setAttribute("class", "mark-layer");
      /** @param {string} style @param {Record<string, string | number>} has @param {string} name */
      const put = (style, has, name) => {
        const node = document.createElementNS(SVG, name);
        node.setAttribute("class", style);
        for (const [key, value] of Object.entries(has)) node.setAttribute(key, String(value));
        layer?.append(node);
      };
      put("mark-line", { d: found.path }, "path");
      put("teeth", { d: found.teeth }, "path");
      for (const foot of found.feet) put(foot.over ? "foot over" : "foot", { cx: foot.x_cm, cy: foot.y_cm, r: 11 }, "circle");
      here.parts.svg.append(layer);
      panel.replaceChildren(
        el("p", {}, found.words),
        el("ul", { class: "all" }, ...found.cuts.map((/** @type {any} */ one) => el("li", {}, who(one.player), one.letter ? tab(one.letter) : "", el("span", {}, one.words)))),
        el("div", { class: "acts" }, button("Write it into the book", async () => { if (await store.change({ kind: "line", key: "denial mark", value: found.line })) close(); }, { class: "full" }), button("Leave it", close, { class: "text" })),
      );
    };
    draw(first);
    handles.push(
      handle(here.parts, {
        id: "denial-mark",
        label: "Denial mark",
        x: first.handle.x_cm,
        y: first.handle.y_cm,
        limit: (x, y) => {
          const along = far + (depthAt(x, y) - first.mark_m) * 100;
          return [ux * along, uy * along];
        },
        move: (x, y) => {
          clearTimeout(timer);
          timer = window.setTimeout(async () => {
            const found = await look(depthAt(x, y));
            if (found && mode === "mark") draw(found);
          }, WAIT_MS);
        },
        drop: () => undefined,
        said: (x, y) => depthAt(x, y).toFixed(2) + " m outside the arc",
      }),
    );
  };

  const draw = () => {
    clear();
    if (!mode) return;
    board()?.state.set({ playing: false });
    document.querySelector("#stage .time")?.before(panel);
    if (mode === "spots") spots();
    else mark();
  };
  store.listen((_, what) => {
    if (what === "floor" || (what === "stop" && mode === "mark")) draw();
  });
  /** @param {"spots" | "mark"} which */
  return (which) => {
    mode = which;
    draw();
    board()?.parts.svg.scrollIntoView({ block: "nearest" });
  };
}
