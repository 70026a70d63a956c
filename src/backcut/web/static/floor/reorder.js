// A sentence is moved by its letter: dragged up it is asked earlier, down it is asked later. Keys do it in its editor.

const LEAST_PX = 6;

/**
 * @param {HTMLElement} list one child for each sentence, its letter a `button.tab`
 * @param {(place: number, to: number) => void} move
 */
export function reorder(list, move) {
  /** @type {{ row: HTMLElement, pointer: number, from: number, moved: boolean, to: number } | null} */
  let held = null;
  const rows = () => /** @type {HTMLElement[]} */ ([...list.children]);

  const unmark = () => {
    for (const row of rows()) row.classList.remove("dragged", "drop-above", "drop-below");
  };
  /** @param {number} y */
  const mark = (y) => {
    if (!held) return;
    const { row } = held;
    const others = rows().filter((one) => one !== row);
    held.to = others.filter((one) => one.getBoundingClientRect().top + one.offsetHeight / 2 < y).length;
    unmark();
    row.classList.add("dragged");
    if (held.to === rows().indexOf(row)) return;
    if (held.to < others.length) others[held.to].classList.add("drop-above");
    else others[held.to - 1].classList.add("drop-below");
  };
  const letGo = () => {
    held = null;
    unmark();
  };

  list.addEventListener("pointerdown", (event) => {
    const letter = event.target instanceof Element && event.target.closest("button.tab");
    const row = letter && /** @type {HTMLElement} */ (letter.closest("li"));
    if (row && event.button === 0) held = { row, pointer: event.pointerId, from: event.clientY, moved: false, to: rows().indexOf(row) };
  });
  list.addEventListener("pointermove", (event) => {
    if (!held || event.pointerId !== held.pointer) return;
    if (!held.moved && Math.abs(event.clientY - held.from) < LEAST_PX) return;
    if (!held.moved) list.setPointerCapture(event.pointerId);
    held.moved = true;
    mark(event.clientY);
  });
  list.addEventListener("pointerup", (event) => {
    if (!held || event.pointerId !== held.pointer) return;
    const { row, moved, to } = held;
    const place = rows().indexOf(row);
    letGo();
    if (moved && to !== place) move(place, to);
  });
  list.addEventListener("pointercancel", letGo);
  addEventListener("keydown", (event) => {
    if (event.key === "Escape") letGo();
  });
}
