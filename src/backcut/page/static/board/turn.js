// The floor seen from the player's own end: turned by half, with everything that is read upright.

/** @typedef {import("./types.js").Parts} Parts */

/**
 * Style turns the floor and turns the lettering back; only lettering along a line needs its line the other way round.
 * @param {Parts} parts
 * @param {boolean} on
 */
export function turnFloor(parts, on) {
  const { svg } = parts;
  if (svg.classList.contains("turned") === on) return;
  svg.classList.toggle("turned", on);
  const title = svg.querySelector("title");
  if (title) title.textContent = (title.textContent || "").replace(on ? "at the top" : "at the foot", on ? "at the foot" : "at the top");
  for (const run of svg.querySelectorAll("textPath")) {
    const guide = svg.querySelector(run.getAttribute("href") || "");
    const text = run.parentElement;
    if (!guide || !text) continue;
    guide.setAttribute("d", reversedArc(guide.getAttribute("d") || ""));
    run.setAttribute("startOffset", 100 - parseFloat(run.getAttribute("startOffset") || "0") + "%");
    // Below the line one way is above it the other way: a capital is 22 cm high at this size.
    text.setAttribute("dy", String(22 - Number(text.getAttribute("dy"))));
  }
}

/**
 * The same arc from its other end; anything but one arc stays as it is.
 * @param {string} data
 */
export function reversedArc(data) {
  return data.replace(
    /^M(\S+ \S+)A(\S+) (\S+) (\S+) ([01]) ([01]) (\S+ \S+)$/,
    (_, start, rx, ry, tilt, large, sweep, end) => `M${end}A${rx} ${ry} ${tilt} ${large} ${1 - Number(sweep)} ${start}`,
  );
}
