// The caption is the live region: it speaks at each decision, but not while the game runs past the reader.
export function hush(parts, state) {
  const quick = state.playing && state.speed !== "still";
  parts.caption.setAttribute("aria-live", quick ? "off" : "polite");
}

export function speak(parts, story, state) {
  hush(parts, state);
  parts.caption.innerHTML = story.moments[state.moment].caption;
  parts.count.textContent = story.word[0].toUpperCase() + story.word.slice(1) + placeText(story, state);
  parts.slider.setAttribute("aria-valuetext", timeText(story, state));
}

export function placeText(story, state) {
  return " " + (state.moment + 1) + " of " + story.moments.length;
}

export function timeText(story, state) {
  const seconds = (state.t / 100).toFixed(1) + " of " + (story.tracks.end / 100).toFixed(1) + " seconds";
  return seconds + ", " + story.word + placeText(story, state);
}

// A long book is scrolled to the sentence that won, where the floor stays in sight beside it.
export function showWon(parts) {
  const won = parts.habits.find((habit) => habit.classList.contains("won"));
  const floor = parts.slider.getBoundingClientRect();
  const beside = getComputedStyle(parts.court).position === "sticky" && floor.top < innerHeight && floor.bottom > 0;
  if (won && beside) won.scrollIntoView({ block: "nearest" });
}
