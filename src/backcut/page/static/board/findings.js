// One finding at a time takes the place of the list; the address says which: #2 is finding 2.
import { begin } from "./begin.js";
import { listenToLight } from "./light.js";

const EDGE_PX = 24;

/** @param {Document} root */
export function listenToAddress(root) {
  const stage = /** @type {HTMLElement} */ (root.getElementById("stage"));
  const list = /** @type {HTMLElement} */ (root.getElementById("list"));
  const title = root.title;
  /** @type {{ held: HTMLTemplateElement, ends: AbortController } | null} */
  let open = null;
  let seen = 0;

  const asked = () => {
    const found = /^#(\d+)$/.exec(location.hash);
    return found ? found[1] : "";
  };
  const leave = () => {
    if (open) open.ends.abort();
    else seen = scrollY;
  };
  /**
   * What has nothing to play is still found in the list by its number.
   * @param {string} number
   */
  const reach = (number) => {
    const item = root.getElementById("finding-" + number);
    if (item) item.scrollIntoView();
  };
  /** @param {HTMLTemplateElement} held */
  const enter = (held) => {
    leave();
    stage.replaceChildren(held.content.cloneNode(true));
    for (const [name, value] of Object.entries({ shape: held.dataset.shape, "cut-shape": held.dataset.cutShape, end: held.dataset.end })) {
      stage.style.setProperty("--" + name, value || "");
    }
    open = { held, ends: new AbortController() };
    begin(root, { signal: open.ends.signal });
    const head = /** @type {HTMLElement} */ (stage.querySelector("h1"));
    root.title = (head.textContent || "") + title.slice(title.lastIndexOf(" · "));
    head.tabIndex = -1;
    head.focus({ preventScroll: true });
    scrollTo(0, 0);
  };
  /** @param {HTMLTemplateElement} held */
  const back = (held) => {
    leave();
    stage.replaceChildren(list);
    root.title = title;
    scrollTo(0, seen);
    const item = root.getElementById("finding-" + held.id.replace("possession-", ""));
    const link = item && item.querySelector("a");
    if (item) item.scrollIntoView({ block: "nearest" });
    if (link) link.focus({ preventScroll: true });
    open = null;
    rest();
  };
  const follow = () => {
    const number = asked();
    const held = /** @type {HTMLTemplateElement | null} */ (root.getElementById("possession-" + number));
    if (held && !(open && open.held === held)) enter(held);
    else if (!held && open) back(open.held);
    else if (!held && number) reach(number);
  };

  // The book stays beside the findings: a long one with its end at the foot of the screen.
  const book = /** @type {HTMLElement} */ (list.querySelector(".book"));
  const rest = () => {
    if (!open) book.style.setProperty("--top", Math.min(EDGE_PX, innerHeight - book.offsetHeight - EDGE_PX) + "px");
  };
  rest();
  addEventListener("resize", rest);
  addEventListener("hashchange", follow);
  root.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && open) location.hash = "finding-" + open.held.id.replace("possession-", "");
  });
  // Links to the floor stay on this finding: they move the time, not the address.
  root.addEventListener("click", (event) => {
    const floor = root.getElementById("floor");
    if (!floor || !(/** @type {Element} */ (event.target).closest("a[data-go]"))) return;
    event.preventDefault();
    floor.scrollIntoView({ block: "nearest" });
  });
  follow();
}

document.documentElement.classList.remove("no-script");
listenToLight(document);
listenToAddress(document);
