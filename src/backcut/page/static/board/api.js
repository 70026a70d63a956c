/** @typedef {import("./types.js").Story} Story */

/**
 * The story the page carries. The board knows no basketball: everything drawn or said was made before.
 * @param {Document} root
 * @returns {Story}
 */
export function readStory(root) {
  const told = root.getElementById("story");
  return JSON.parse((told && told.textContent) || "null");
}
