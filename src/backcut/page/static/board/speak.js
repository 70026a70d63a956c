/** @typedef {import("./types.js").Now} Now */
/** @typedef {import("./types.js").Parts} Parts */
/** @typedef {import("./types.js").Story} Story */

/**
 * The caption is the live region: it speaks at each decision, but not while the game runs past the reader.
 * @param {Parts} parts
 * @param {Now} now
 */
export function hush(parts, now) {
  const quick = now.playing && now.speed !== "still";
  parts.caption.setAttribute("aria-live", quick ? "off" : "polite");
}

/**
 * @param {Parts} parts
 * @param {Story} story
 * @param {Now} now
 */
export function speak(parts, story, now) {
  hush(parts, now);
  parts.caption.innerHTML = story.moments[now.moment].caption;
  parts.count.textContent = story.word[0].toUpperCase() + story.word.slice(1) + placeText(story, now);
  parts.slider.setAttribute("aria-valuetext", timeText(story, now));
}

/**
 * @param {Story} story
 * @param {Now} now
 */
export function placeText(story, now) {
  return " " + (now.moment + 1) + " of " + story.moments.length;
}

/**
 * @param {Story} story
 * @param {Now} now
 */
export function timeText(story, now) {
  const seconds = (now.t / 100).toFixed(1) + " of " + (story.tracks.end / 100).toFixed(1) + " seconds";
  return seconds + ", " + story.word + placeText(story, now);
}

/**
 * A long book is scrolled to the sentence that won, where the floor stays in sight beside it.
 * @param {Parts} parts
 */
export function showWon(parts) {
  const won = parts.habits.find((habit) => habit.classList.contains("won"));
  const floor = parts.slider.getBoundingClientRect();
  const beside = getComputedStyle(parts.court).position === "sticky" && floor.top < innerHeight && floor.bottom > 0;
  if (won && beside) won.scrollIntoView({ block: "nearest" });
}

// A screen reader hears what changes in a live region it knows already (estimate).
const KNOWN_MS = 150;

/**
 * Speaks the decision of a caption that has just been put on the page.
 * @param {Parts} parts
 * @param {AbortSignal} signal
 */
export function sayAgain(parts, signal) {
  const { caption } = parts;
  const timer = setTimeout(() => {
    caption.setAttribute("aria-live", "polite");
    caption.replaceChildren(...caption.cloneNode(true).childNodes);
  }, KNOWN_MS);
  signal.addEventListener("abort", () => clearTimeout(timer));
}
