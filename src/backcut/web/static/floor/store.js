// What the server last said is on the floor, and how the coach looks at it. Panels listen and redraw themselves.
import { ask, Refusal } from "./api.js";

/** @typedef {import("./contract").FloorData} FloorData */
/**
 * @typedef {object} View how the coach looks at the floor
 * @property {number | null} chosen the player in hand
 * @property {boolean} early the ball moves on while players are on the way
 * @property {number} stop the stop of the time line
 * @property {boolean} hidden answers are hidden until the players have said theirs
 */
/** @typedef {ReturnType<typeof makeStore>} Store */

const KEPT = "backcut-floor";
const SHOWN = "backcut-shown";

export function makeStore() {
  /** @type {FloorData | null} */
  let floor = null;
  /** @type {View} */
  const view = { chosen: null, early: false, stop: 0, hidden: false };
  /** @type {Array<(floor: FloorData, what: string) => void>} */
  const listeners = [];
  /** @type {Array<(said: string) => void>} */
  const ears = [];
  /** @type {Promise<unknown>} */
  let last = Promise.resolve();
  const left = localStorage.getItem(KEPT);

  /** @param {string} words */
  const say = (words) => ears.forEach((ear) => ear(words));
  /** @param {string} what "floor" when the server said something, else the name of what changed in the view */
  const tell = (what) => {
    const now = floor;
    if (now) listeners.forEach((listen) => listen(now, what));
  };

  /** @param {FloorData} next */
  const take = (next) => {
    floor = next;
    const start = new URLSearchParams(next.address.slice(2)).get("start") || "";
    const shown = JSON.stringify({ book: next.name, text: next.book.text, stands: next.stands, start, moves: next.play.moves.map((move) => move.text).join(", ") });
    sessionStorage.setItem(KEPT, next.id);
    sessionStorage.setItem(SHOWN, shown);
    localStorage.setItem(KEPT, shown);
    tell("floor");
    return next;
  };

  // One request after the other, so that each is made on what the one before it left.
  /** @param {() => Promise<{ said: string, data: any }>} request */
  const inTurn = (request) => {
    const mine = last.then(async () => {
      try {
        const told = await request();
        const now = take(told.data);
        if (told.said) say(told.said);
        return now;
      } catch (refusal) {
        if (!(refusal instanceof Refusal)) throw refusal;
        if (refusal.code === 404 && floor) return await putBack();
        if (refusal.code === 409 && floor) take((await ask("/floors/" + floor.id)).data);
        say(refusal.message);
        return null;
      }
    });
    last = mine.catch(() => null);
    return mine;
  };

  // The server was started again: what this window shows is put on a new floor, so nothing is lost.
  const again = () => ask("/floors", { method: "POST", body: JSON.parse(sessionStorage.getItem(SHOWN) || "{}") });

  const putBack = async () => {
    take((await again()).data);
    say("The floor was put on anew, just as it was. Do that once more.");
    return null;
  };

  const here = () => {
    if (!floor) throw new Error("Nothing is on the floor yet.");
    return floor;
  };

  return {
    view,
    get floor() {
      return here();
    },
    say,
    /** @param {(said: string) => void} ear */
    hear: (ear) => ears.push(ear),
    /** @param {(floor: FloorData, what: string) => void} listen */
    listen: (listen) => listeners.push(listen),
    /** @param {Partial<View>} patch */
    look: (patch) => {
      Object.assign(view, patch);
      tell(Object.keys(patch)[0]);
    },
    /** @param {Record<string, string>} asked */
    open: (asked) => inTurn(() => ask("/floors", { method: "POST", body: asked })),
    /** @param {string} id */
    find: (id) => inTurn(() => ask("/floors/" + id).catch((gone) => again().catch(() => { throw gone; }))),
    /** @param {Record<string, any>} change */
    change: (change) => inTurn(() => ask("/floors/" + here().id + "/changes", { method: "POST", body: { revision: here().revision, change } })),
    undo: () => inTurn(() => ask("/floors/" + here().id + "/undo", { method: "POST", body: { revision: here().revision } })),
    redo: () => inTurn(() => ask("/floors/" + here().id + "/redo", { method: "POST", body: { revision: here().revision } })),
    /** @param {string} name */
    keep: (name) => inTurn(() => ask("/floors/" + here().id + "/keep", { method: "POST", body: { name } })),
    /**
     * Anything else about this floor; refusals are said, and give null.
     * @param {string} path below the floor
     * @param {{ method?: string, body?: unknown }} [asked]
     */
    api: async (path, asked) => {
      try {
        return (await ask("/floors/" + here().id + path, asked)).data;
      } catch (refusal) {
        if (!(refusal instanceof Refusal)) throw refusal;
        if (refusal.code === 404) return await putBack();
        say(refusal.message);
        return null;
      }
    },
    remembered: () => sessionStorage.getItem(KEPT),
    /** What was on the floor last when this window was opened; null where nothing was. */
    left: () => JSON.parse(left || "null"),
  };
}
