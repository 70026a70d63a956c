// The floor: what the server says is put on the page, and the board is started on it; the panels listen.
import { start } from "../board/start.js";
import { listenToLight } from "../board/light.js";
import { book } from "./book.js";
import { adjust } from "./adjust.js";
import { answers } from "./answers.js";
import { add, books, choices, keep, text } from "./book-sheets.js";
import { dialogs } from "./dialogs.js";
import { differs } from "./differs.js";
import { byId, el, fill } from "./dom.js";
import { findings } from "./findings.js";
import { freeze } from "./freeze.js";
import { ground } from "./ground.js";
import { hints } from "./hints.js";
import { practice } from "./practice.js";
import { share } from "./share.js";
import { makeStore } from "./store.js";
import { views } from "./views.js";
import { walked } from "./walked.js";
import { cans, doIt, whatIf } from "./what-if.js";

const store = makeStore();
const show = dialogs(store, { add, text, choices, keep, books, answers, ground, practice, share });
/** @type {(which: "spots" | "mark") => void} */
let arrange = () => undefined;
/** @type {ReturnType<typeof start> | null} */
let board = null;
let ends = new AbortController();
let drawnGround = "";
/** @type {import("../board/types.js").Speed} */
const FIRST = "slow";

/** @param {number} stop */
const go = (stop) => {
  if (!board) return;
  board.state.goMoment(stop);
  byId("stage").scrollIntoView({ block: "nearest" });
};

/**
 * The server's story with what the board needs to be live: cells, moves, steps. It knows no rule.
 * @param {import("./contract").FloorData} floor
 * @returns {import("../board/types.js").Story}
 */
const story = (floor) => {
  const told = /** @type {import("../board/types.js").Story} */ (/** @type {unknown} */ (floor.play.story));
  const moments = told.moments.map((moment, i) => {
    const stop = floor.play.stops[i];
    return { ...moment, cells: stop.cells, can: stop.can };
  });
  return { ...told, moments };
};

/** @param {import("./contract").FloorData} floor */
const putOn = (floor) => {
  const { play } = floor;
  const was = board ? { ...board.state.now } : null;
  const running = was !== null && was.playing;
  ends.abort();
  ends = new AbortController();
  const stage = byId("stage");
  fill(stage, play.floor);
  stage.querySelector(".time")?.append(el("p", { class: "said-line", id: "said-line", role: "status" }));
  if (play.ground !== drawnGround) fill(byId("ground"), (drawnGround = play.ground));
  const court = /** @type {HTMLElement} */ (stage.firstElementChild);
  for (const [name, value] of Object.entries(play.shape)) court.style.setProperty("--" + name, value);
  fill(byId("below"), play.below);
  byId("notes").replaceChildren(...play.notes.map((note) => el("p", {}, note)), el("p", {}, "The squads and books that come with Backcut are invented."));
  byId("stamp").textContent = [floor.book.title, new Date().toISOString().slice(0, 10), floor.book.court].join(", ");
  const stop = floor.stop;
  const times = play.story.moments.map((/** @type {any} */ moment) => moment.t);
  const t = stop !== null ? times[stop] : was ? Math.min(was.t, play.story.tracks.end) : 0;
  const moment = stop ?? Math.max(times.findLastIndex((/** @type {number} */ time) => time <= t + 0.5), 0);
  board = start(document, {
    story: story(floor),
    signal: ends.signal,
    speed: was ? was.speed : FIRST,
    at: { t, moment },
    playing: floor.runs || running,
    live: {
      can: () => cans(store),
      choose: (/** @type {number | null} */ player) => store.look({ chosen: player }),
      do: (/** @type {any} */ can) => doIt(store, can),
    },
  });
  board.state.listen((/** @type {any} */ now, /** @type {any} */ before) => {
    if (now.moment !== before.moment) store.look({ stop: now.moment, chosen: null });
  });
  store.view.stop = board.state.now.moment;
  store.view.chosen = null;
};

// The book is drawn before the board is started on it.
book(store, (name) => show(name, { arrange: () => arrange("spots") }));
store.listen((floor, what) => {
  if (what === "chosen" && board) board.choose(store.view.chosen);
  if (what !== "floor") return;
  putOn(floor);
  for (const [id, done] of [["undo", floor.undo], ["redo", floor.redo]]) {
    const one = /** @type {HTMLButtonElement} */ (byId(id));
    one.disabled = !done;
    one.title = done;
  }
  history.replaceState(null, "", floor.address + location.hash);
});
store.hear((said) => {
  // A dialog hides the floor: what is said is said in it as well.
  for (const line of document.querySelectorAll("#said-line, dialog .said-line")) line.textContent = said;
});

whatIf(store, show);
const look = views(store, () => board, () => arrange("mark"));
freeze(store, look.you);
hints(store);
arrange = adjust(store, () => board);
walked(store);
findings(byId("findings"), store);
differs(store, go);
byId("undo").addEventListener("click", () => store.undo());
byId("redo").addEventListener("click", () => store.redo());
byId("open-books").addEventListener("click", () => show("books"));
byId("open-share").addEventListener("click", () => show("share"));
addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || event.target instanceof HTMLTextAreaElement || event.target instanceof HTMLInputElement) return;
  const key = event.key.toLowerCase();
  if (key === "z") (event.shiftKey ? store.redo : store.undo)();
  else if (key === "y") store.redo();
  else if (key === "s") show("keep");
  else return;
  event.preventDefault();
});
listenToLight(document);
document.documentElement.classList.remove("no-script");

const asked = Object.fromEntries(new URLSearchParams(location.search));
const known = store.remembered();
const opened = known ? await store.find(known) : null;
if (!opened || (asked.book && asked.book !== opened.name)) await store.open(asked);
