// Day or night, once somebody chooses; until then the system says.
export function listenToLight(root) {
  root.querySelectorAll("[name=light]").forEach((radio) =>
    radio.addEventListener("change", () => {
      root.documentElement.dataset.light = radio.value;
    }),
  );
}
