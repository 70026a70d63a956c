/**
 * Day or night, once somebody chooses; until then the system says.
 * @param {Document} root
 */
export function listenToLight(root) {
  /** @type {NodeListOf<HTMLInputElement>} */
  const radios = root.querySelectorAll("[name=light]");
  radios.forEach((radio) =>
    radio.addEventListener("change", () => {
      root.documentElement.dataset.light = radio.value;
    }),
  );
}
