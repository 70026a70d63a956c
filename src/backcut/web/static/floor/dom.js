// Small pieces of page: words always go in as text, never as markup.

/**
 * An element with its properties and children.
 * @template {keyof HTMLElementTagNameMap} Name
 * @param {Name} name
 * @param {Record<string, any>} [has] class, text, properties beginning "on", and attributes
 * @param {...(Node | string | null | undefined | false)} inner
 * @returns {HTMLElementTagNameMap[Name]}
 */
export function el(name, has = {}, ...inner) {
  const node = document.createElement(name);
  for (const [key, value] of Object.entries(has)) {
    if (value === null || value === undefined || value === false) continue;
    if (key === "class") node.className = value;
    else if (key.startsWith("on")) node.addEventListener(key.slice(2), value);
    else node.setAttribute(key, value === true ? "" : String(value));
  }
  node.append(...inner.filter((one) => one !== null && one !== undefined && one !== false).map((one) => /** @type {Node | string} */ (one)));
  return node;
}

/**
 * A button that does something.
 * @param {string} words
 * @param {(event: MouseEvent) => void} act
 * @param {Record<string, any>} [has]
 */
export function button(words, act, has = {}) {
  return el("button", { type: "button", onclick: act, ...has }, words);
}

/**
 * The element with this id, which is in the frame.
 * @param {string} id
 * @returns {HTMLElement}
 */
export function byId(id) {
  const node = document.getElementById(id);
  if (!node) throw new Error("The frame has no " + id);
  return node;
}

/**
 * Markup made by the server, which has escaped every word in it.
 * @param {Element} node
 * @param {string} markup
 */
export function fill(node, markup) {
  node.innerHTML = markup;
}

/**
 * The letter of a sentence in its tab.
 * @param {string} letter
 * @param {string} [style]
 */
export function tab(letter, style = "") {
  return el("span", { class: ("tab " + style).trim() }, letter);
}

/**
 * A player's number in its circle.
 * @param {number} player
 */
export function who(player) {
  return el("span", { class: "who" }, String(player));
}
