// Small signs beside words; each differs by shape, and the word says the same.
const SVG = "http://www.w3.org/2000/svg";

/** @type {Record<string, Array<[string, Record<string, string>]>>} */
const SIGNS = {
  hole: [["circle", { class: "broken", cx: "10", cy: "10", r: "7.5" }]],
  clash: [["circle", { class: "ring-line", cx: "7", cy: "10", r: "5.2" }], ["circle", { class: "ring-line", cx: "13", cy: "10", r: "5.2" }]],
  silent: [["path", { class: "ring-line", d: "M5.7 6.4a4.3 4.3 0 1 1 6.3 3.8c-1.4.8-2 1.3-2 2.2" }], ["circle", { class: "solid", cx: "10", cy: "17.2", r: "1.9" }]],
  late: [["circle", { class: "ring-line", cx: "10", cy: "10", r: "8" }], ["path", { class: "ring-line", d: "M10 5v5.4l3.6 2.2" }]],
  never: [["path", { class: "ring-line", d: "M3 10h14" }], ["circle", { class: "ring-line", cx: "10", cy: "10", r: "8" }]],
  notso: [["path", { class: "ring-line", d: "M2.5 2.5h15v15h-15zM6.5 6.5l7 7M13.5 6.5l-7 7" }]],
  holds: [["circle", { class: "solid", cx: "10", cy: "10", r: "10" }], ["path", { class: "tick", d: "M5.4 10.4l3.2 3.2 6-6.6" }]],
  unseen: [["circle", { class: "solid", cx: "3.2", cy: "10", r: "2.2" }], ["circle", { class: "solid", cx: "10", cy: "10", r: "2.2" }], ["circle", { class: "solid", cx: "16.8", cy: "10", r: "2.2" }]],
};

/**
 * A sign for the eye only.
 * @param {string} name
 */
export function sign(name) {
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("class", "sign");
  svg.setAttribute("viewBox", "0 0 20 20");
  svg.setAttribute("aria-hidden", "true");
  for (const [shape, has] of SIGNS[name] || SIGNS.hole) {
    const part = document.createElementNS(SVG, shape);
    for (const [key, value] of Object.entries(has)) part.setAttribute(key, value);
    svg.append(part);
  }
  return svg;
}
