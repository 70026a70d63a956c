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

// Starts the possession that is on the page; an ended signal lets go of the page again.
export function start(root, signal) {
  const story = readStory(root);
  const tracks = unpackAll(story.tracks);
  const parts = findParts(root, Object.keys(tracks.p));
  const state = makeState(story.moments.map((moment) => moment.t), tracks.end);
  const still = matchMedia("(prefers-reduced-motion: reduce)");
  const player = makePlayer(state, story, () => still.matches);

  let size = null;

  const renderPlaying = (now) => {
    parts.play.classList.toggle("playing", now.playing);
    parts["play-word"].textContent = now.playing ? "Stop" : "Play";
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
  sampleRuns(parts);
  sampleWords(parts);
  parts.placed.forEach((node) => {
    node.style.setProperty("--t", node.dataset.t);
    if (node.dataset.d) node.style.setProperty("--d", node.dataset.d);
  });
  renderSaid(parts, story, state.now);
  const measure = () => {
    size = measureStrip(parts);
    renderStrip(parts, story, state.now, size);
  };
  measure();
  speak(parts, story, state.now);
  addEventListener("resize", measure, { signal });
  listenToHands(parts, state, player, () => size);
  listenToKeys(parts, state, player, root, signal);
  if (signal) signal.addEventListener("abort", () => state.set({ playing: false }));
}
