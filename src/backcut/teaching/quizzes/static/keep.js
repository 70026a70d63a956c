// What stays on this phone: the cards of the questions, the number on the shirt, the light, the end of the floor.

/** @typedef {{ cards: Object<string, number[]>, shirt: number | null, light: string, turned: boolean }} Kept */

/**
 * Some phones keep nothing for a file that was opened from a message: then all of it lasts as long as the page.
 * @param {string} key
 * @returns {Kept}
 */
export function kept(key) {
  /** @type {Kept} */
  const nothing = { cards: {}, shirt: null, light: "", turned: true };
  try {
    const found = JSON.parse(window.localStorage.getItem(key) || "null");
    return found && typeof found === "object" && found.cards ? Object.assign(nothing, found) : nothing;
  } catch (error) {
    return nothing;
  }
}

/**
 * @param {string} key
 * @param {Kept} state
 */
export function keep(key, state) {
  try {
    window.localStorage.setItem(key, JSON.stringify(state));
  } catch (error) {
    // Nothing can be kept here; the quiz goes on without.
  }
}
