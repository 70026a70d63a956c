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
    sessionStorage.setItem(KEPT, next.id);
    localStorage.setItem(KEPT, JSON.stringify({ text: next.book.text, start: next.play.moves.length ? "" : next.play.start, moves: next.play.moves.map((move) => move.text).join(", ") }));
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
        say(refusal.message);
        if (refusal.code === 409 && floor) take((await ask("/floors/" + floor.id)).data);
        if (refusal.code === 404 && floor) await reopen();
        return null;
      }
    });
    last = mine.catch(() => null);
    return mine;
  };

  // The server was started again: what this window shows is put on a new floor, so nothing is lost.
  const reopen = async () => {
    const kept = localStorage.getItem(KEPT);
    if (kept) take((await ask("/floors", { method: "POST", body: JSON.parse(kept) })).data);
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
    find: (id) => inTurn(() => ask("/floors/" + id)),
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
        say(refusal.message);
        return null;
      }
    },
    remembered: () => sessionStorage.getItem(KEPT),
  };
}
