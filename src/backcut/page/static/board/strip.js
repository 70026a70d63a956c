import { heldAt } from "./pose.js";
import { style } from "./render.js";

/** @typedef {import("./types.js").Now} Now */
/** @typedef {import("./types.js").Parts} Parts */
/** @typedef {import("./types.js").Size} Size */
/** @typedef {import("./types.js").Story} Story */

const DISC_PX = 26;

/**
 * Everything that depends on the width is measured once, and again when the window changes.
 * @param {Parts} parts
 * @returns {Size}
 */
export function measureStrip(parts) {
  const { slider, reel } = parts;
  const rem = parseFloat(getComputedStyle(reel).fontSize);
  const room = slider.clientWidth - 2 * parseFloat(getComputedStyle(slider).paddingLeft);
  const end = Number(reel.dataset.end) || 1;
  const second = Math.max(room / end, Number(reel.dataset.rem) * rem);
  style(reel, "--u", second + "px");
  return { room, second, most: Math.max(end * second - room, 0), shift: 0 };
}

/**
 * A long possession is seen through a window that moves only when the playhead nears its edge.
 * @param {Parts} parts
 * @param {Story} story
 * @param {Now} now
 * @param {Size} size
 */
export function renderStrip(parts, story, now, size) {
  const at = (now.t / 100) * size.second;
  const kept = Math.min(Math.max(size.shift, at - size.room * 0.7), at - size.room * 0.12);
  size.shift = Math.min(Math.max(kept, 0), size.most);
  style(parts.reel, "transform", "translateX(" + (-size.shift).toFixed(1) + "px)");
  style(parts.playhead, "transform", "translateX(" + at.toFixed(1) + "px)");
  style(parts.past, "width", at.toFixed(1) + "px");
  parts.slider.setAttribute("aria-valuenow", (now.t / 100).toFixed(1));
  const first = heldAt(story.held, (size.shift / size.second) * 100);
  const pinned = first && (first[1] / 100) * size.second < size.shift - DISC_PX ? first : null;
  parts.pin.hidden = !pinned;
  if (pinned) parts.pin.textContent = String(pinned[0]);
}

/**
 * @param {Parts} parts
 * @param {Story} story
 * @param {Now} now
 */
export function renderSaid(parts, story, now) {
  const lit = story.moments[now.moment].lit.length > 0;
  parts.said.forEach((mark, i) => {
    const tab = mark.querySelector(".tab");
    if (!tab) return;
    const here = i === now.moment;
    const mute = tab.textContent === "·" ? "mute " : "";
    tab.className = mute + (here ? (lit ? "tab hot" : "tab on") : i < now.moment ? "tab" : "tab bare");
    if (here) parts.pen.style.setProperty("--t", mark.dataset.t || "0");
  });
  parts.pen.hidden = !lit;
}
