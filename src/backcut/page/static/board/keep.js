// The markup of the floor is swapped when the possession changes; the focus stays where it was.

/** @type {string} */
let kept = "";

/** @param {Element} node */
function selectorOf(node) {
  for (const name of ["data-cell", "data-handle"]) {
    const value = node.getAttribute(name);
    if (value) return `[${name}="${CSS.escape(value)}"]`;
  }
  if (node.id) return "#" + CSS.escape(node.id);
  if (node instanceof HTMLInputElement) return `[name="${CSS.escape(node.name)}"][value="${CSS.escape(node.value)}"]`;
  return "";
}

/**
 * Remembers, when the board ends, what had the focus inside `part`.
 * @param {Element} part
 * @param {AbortSignal} signal
 */
export function keepFocus(part, signal) {
  signal.addEventListener("abort", () => {
    const active = document.activeElement;
    kept = active && part.contains(active) ? selectorOf(active) : "";
  });
}

/**
 * Gives the focus back, unless it has gone elsewhere. What is put on the floor right after may call it again.
 * @param {Element} part
 */
export function giveFocus(part) {
  if (!kept || document.activeElement !== document.body) return;
  /** @type {(Element & HTMLOrSVGElement) | null} */
  const node = part.querySelector(kept);
  if (node) node.focus({ preventScroll: true });
  setTimeout(() => {
    kept = "";
  });
}
