import { readStory } from "./api.js";
import { unpackAll } from "./pose.js";
import { makeState } from "./state.js";
import { findParts } from "./wrap.js";
import { renderBodies, renderMoment, sampleRuns, sampleWords } from "./render.js";
import { measureStrip, renderSaid, renderStrip } from "./strip.js";
import { hush, showWon, speak, timeText } from "./speak.js";
import { makePlayer } from "./anim.js";
import { listenToHands } from "./events.js";
import { listenToKeys } from "./keyboard.js";

/** @typedef {import("./types.js").Board} Board */
/** @typedef {import("./types.js").Now} Now */
/** @typedef {import("./types.js").Options} Options */

/**
 * Begins the possession that is on the page; an ended signal, or `stop`, lets go of the page again.
 * @param {Document} root
 * @param {Options} [options]
 * @returns {Board}
 */
export function begin(root, options = {}) {
  const ends = new AbortController();
  const { signal } = ends;
  const stop = () => ends.abort();
  if (options.signal) options.signal.addEventListener("abort", stop, { signal });
  const story = options.story || readStory(root);
  const tracks = unpackAll(story.tracks);
  const parts = findParts(root, Object.keys(tracks.p));
  const state = makeState(story.moments.map((moment) => moment.t), tracks.end, options);
  const still = matchMedia("(prefers-reduced-motion: reduce)");
  const player = makePlayer(state, story, () => still.matches || Boolean(options.calm));

  /** @type {import("./types.js").Size} */
  let size;

  /** @param {Now} now */
  const renderPlaying = (now) => {
    parts.play.classList.toggle("playing", now.playing);
    parts.playWord.textContent = now.playing ? "Stop" : "Play";
    parts.play.setAttribute("aria-label", now.playing ? "Stop" : "Play");
  };
  state.listen((now, before) => {
    if (now.moment !== before.moment) {
      renderMoment(parts, story, now.moment);
      renderSaid(parts, story, now);
      speak(parts, story, now);
      if (!now.playing || now.speed !== "game") showWon(parts);
    }
    if (now.playing !== before.playing) {
      renderPlaying(now);
      hush(parts, now);
    }
    renderBodies(parts, tracks, story, now);
    renderStrip(parts, story, now, size);
    if (!now.playing) parts.slider.setAttribute("aria-valuetext", timeText(story, now));
  });

  root.documentElement.classList.remove("no-script");
  root.documentElement.classList.add("moving");
  for (const node of parts.placed) {
    node.style.setProperty("--t", node.dataset.t || "0");
    if (node.dataset.d) node.style.setProperty("--d", node.dataset.d);
  }
  for (const radio of parts.speeds) radio.checked = radio.value === state.now.speed;
  // The page comes drawn at its first decision; anywhere else is drawn before it is seen.
  if (options.at || options.live) renderMoment(parts, story, state.now.moment);
  else {
    sampleRuns(parts);
    sampleWords(parts);
  }
  if (options.at || options.whole) renderBodies(parts, tracks, story, state.now);
  renderSaid(parts, story, state.now);
  renderPlaying(state.now);
  const measure = () => {
    size = measureStrip(parts);
    renderStrip(parts, story, state.now, size);
  };
  measure();
  speak(parts, story, state.now);
  addEventListener("resize", measure, { signal });
  listenToHands(parts, state, player, () => size, signal);
  listenToKeys(parts, state, player, root, signal);
  signal.addEventListener("abort", () => state.set({ playing: false }));
  if (options.playing) player.play();
  return { parts, state, player, story, tracks, signal, stop };
}
