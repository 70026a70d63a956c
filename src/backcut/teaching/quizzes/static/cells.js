// The places on the floor that can be taken: a finger takes the nearest, arrow keys walk, Enter takes.

/** @typedef {import("./types.js").Cell} Cell */

const SVG = "http://www.w3.org/2000/svg";
const REACH_CM = 130;
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/**
 * @param {any} svg
 * @param {any} group
 * @param {(place: number) => void} take
 */
export function makeCells(svg, group, take) {
  /** @type {Cell[]} */
  let cells = [];
  /** @type {Element[]} */
  let nodes = [];

  /** @param {number} here */
  const rove = (here) => nodes.forEach((node, i) => node.setAttribute("tabindex", i === here ? "0" : "-1"));

  svg.addEventListener("click", (/** @type {MouseEvent} */ event) => {
    const matrix = group.getScreenCTM();
    if (!cells.length || !matrix || event.detail === 0) return;
    const point = svg.createSVGPoint();
    point.x = event.clientX;
    point.y = event.clientY;
    const at = point.matrixTransform(matrix.inverse());
    const away = cells.map((cell) => Math.sqrt(Math.pow(cell[0] - at.x, 2) + Math.pow(cell[1] - at.y, 2)));
    const nearest = away.indexOf(Math.min.apply(null, away));
    if (away[nearest] <= REACH_CM) take(nearest);
  });
  // A click without a pointer comes from a program that reads or acts for somebody.
  group.addEventListener("click", (/** @type {MouseEvent} */ event) => {
    const here = nodes.indexOf(/** @type {Element} */ (event.target));
    if (event.detail === 0 && here >= 0) take(here);
  });
  group.addEventListener("keydown", (/** @type {KeyboardEvent} */ event) => {
    const here = nodes.indexOf(/** @type {Element} */ (event.target));
    if (here < 0) return;
    const arrow = /** @type {Object<string, number[]>} */ (ARROWS)[event.key];
    if (arrow) {
      const sign = svg.classList.contains("turned") ? -1 : 1;
      const next = toward(cells, here, arrow[0] * sign, arrow[1] * sign);
      rove(next);
      /** @type {any} */ (nodes[next]).focus();
    } else if (event.key === "Enter" || event.key === " ") take(here);
    else return;
    event.preventDefault();
  });

  return {
    /** @param {Cell[]} told */
    set(told) {
      cells = told;
      group.textContent = "";
      nodes = told.map((cell) => {
        const node = document.createElementNS(SVG, "g");
        node.setAttribute("class", "cell");
        node.setAttribute("role", "button");
        node.setAttribute("aria-label", cell[2]);
        node.setAttribute("transform", "translate(" + cell[0] + " " + cell[1] + ")");
        node.innerHTML = '<circle class="reach" r="115"/><path class="gap" d="M-84-84H84V84H-84Z"/><path class="square" d="M-84-84H84V84H-84Z"/>';
        group.appendChild(node);
        return node;
      });
      rove(0);
    },
    /** @param {number} taken */
    mark(taken) {
      const right = cells.map((cell) => cell[3]);
      nodes.forEach((node, i) => {
        node.removeAttribute("role");
        node.removeAttribute("tabindex");
        node.setAttribute("aria-hidden", "true");
        if (!right[i] && i !== taken) return;
        node.setAttribute("class", right[i] ? "cell right" : "cell wrong");
        node.innerHTML = right[i] ? '<circle class="here" r="84"/>' : '<circle class="there" r="84"/><path class="there" d="M-59 59L59-59"/>';
      });
      cells = [];
    },
  };
}

/**
 * The nearest place that way; where there is none, the same.
 * @param {Cell[]} cells
 * @param {number} here
 * @param {number} dx
 * @param {number} dy
 */
function toward(cells, here, dx, dy) {
  let best = here;
  let least = Infinity;
  cells.forEach((cell, i) => {
    const ahead = (cell[0] - cells[here][0]) * dx + (cell[1] - cells[here][1]) * dy;
    const aside = Math.abs((cell[0] - cells[here][0]) * dy) + Math.abs((cell[1] - cells[here][1]) * dx);
    if (i !== here && ahead > 20 && ahead + 2 * aside < least) {
      least = ahead + 2 * aside;
      best = i;
    }
  });
  return best;
}
