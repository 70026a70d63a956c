// The findings of the book on the floor: small still courts with their sentences; each opens as a possession on the floor.
import { button, el, fill, tab } from "./dom.js";
import { sign } from "./signs.js";

/**
 * @typedef {object} Finding
 * @property {number} number
 * @property {string} kind
 * @property {string} word
 * @property {string} property
 * @property {string} title
 * @property {string} when
 * @property {string[]} letters
 * @property {string} begins
 * @property {string[]} lines
 * @property {string} here
 * @property {string} count
 * @property {string} note
 * @property {boolean} plays
 * @property {string} start
 * @property {string} moves
 * @property {number} step
 * @property {number} beat
 * @property {string} still
 */
/** @typedef {{ says: string, text: string, changes: string }} Way */
/** @typedef {{ state: string, said: string, ways: Way[] }} Ways */
/** @typedef {{ kind: string, name: string, sentence: string, verdict: string, findings: number[] }} Holds */
/** @typedef {{ depth: string, said: string }} Unseen */
/**
 * @typedef {object} Proof
 * @property {"none" | "looking" | "done" | "stopped" | "refused"} state
 * @property {string} said
 * @property {number} version
 * @property {string} changed
 * @property {string[]} depths
 * @property {Finding[]} findings
 * @property {string[]} covered
 * @property {Holds[]} holds
 * @property {Unseen[]} not_looked_at
 * @property {Record<string, Ways>} ways
 */

const POLL_MS = 400;
/** What may happen at each depth, as the ticks say it. */
const DEPTHS = [
  ["settled", "Everybody stands before the next pass"],
  ["denied", "Defenders deny"],
  ["overlapped", "The ball moves on early"],
  ["disturbed", "A cut is taken away, or somebody forgets"],
];

/**
 * @param {HTMLElement} root
 * @param {Pick<import("./store.js").Store, "api" | "change" | "listen" | "say">} store
 */
export function findings(root, store) {
  /** @type {Proof | null} */
  let proof = null;
  let floor = "";
  let text = "";
  let drawn = "";
  let timer = 0;
  let asked = 0;
  const wanted = new Set(["settled"]);

  const title = el("h2", { id: "fh" }, "Findings");
  const said = el("p", { class: "soft", role: "status" });
  const progress = el("p", { class: "soft progress" });
  const acts = el("div", { class: "acts" });
  const depths = depthTicks(wanted);
  const body = el("div", { class: "found-body" });
  root.replaceChildren(el("header", { class: "found-head" }, title, el("div", { class: "found-said" }, said, progress), acts), depths, body);

  /** @param {string[]} names */
  const tick = (names) => {
    names.forEach((name) => wanted.add(name));
    for (const box of depths.querySelectorAll("input")) box.checked = wanted.has(box.value);
  };
  const busy = () => proof !== null && (proof.state === "looking" || Object.values(proof.ways).some((ways) => ways.state === "looking"));

  /** @param {Proof | null} next @param {number} mine */
  const take = (next, mine) => {
    if (!next || mine !== asked) return;
    // A page that was opened again looks as far as was looked before.
    if (proof === null || next.state === "looking") tick(next.depths);
    proof = next;
    redraw(next);
    clearTimeout(timer);
    if (busy()) timer = setTimeout(look, POLL_MS);
  };
  /** @param {string} [path] @param {{ method?: string, body?: unknown }} [request] */
  const ask = async (path = "/proof", request) => {
    const mine = ++asked;
    clearTimeout(timer);
    const got = await store.api(path, request);
    if (path === "/proof") take(got, mine);
    else if (mine === asked) await look();
    return got;
  };
  const look = () => ask();
  const start = () => ask("/proof", { method: "POST", body: { depths: [...wanted], apart: false } });
  const stop = () => ask("/proof", { method: "DELETE" });

  /** @param {Finding} finding */
  const showMe = async (finding) => {
    await store.change({ kind: "show", start: finding.start, moves: finding.moves, step: finding.step, beat: finding.beat });
    document.getElementById("spread")?.scrollIntoView({ block: "start" });
  };
  /** @param {Way} way */
  const takeWay = async (way) => {
    if (await store.change({ kind: "text", text: way.text })) store.say(way.says + " It is in the book now; undo takes it back.");
  };

  /** @param {Proof} now */
  const redraw = (now) => {
    const looking = now.state === "looking";
    progress.textContent = looking ? now.said : "";
    const words = looking ? "" : now.changed || (now.state === "none" ? "" : now.said);
    if (said.textContent !== words) said.textContent = words;
    root.classList.toggle("old", now.changed !== "");
    const key = JSON.stringify([now.version, now.changed, now.state, floor]);
    // Words of progress alone change nothing below, and a button that is held must not go away under the finger.
    const shape = looking ? JSON.stringify([now.state, floor, now.changed, now.findings.length]) : key;
    if (shape === drawn) return;
    drawn = shape;
    const held = document.activeElement instanceof HTMLElement ? document.activeElement.dataset.does : undefined;
    depths.hidden = looking;
    const again = now.state === "none" ? "Look at every situation" : "Look again";
    acts.replaceChildren(looking ? button("Stop", stop, { class: "edged", "data-does": "stop" }) : button(again, start, { class: now.state === "none" || now.changed ? "full" : "edged", "data-does": "look" }));
    const open = new Set([...body.querySelectorAll("details[open]")].map((one) => one.id));
    const along = body.querySelector(".found-all")?.scrollLeft || 0;
    body.replaceChildren(...parts(now));
    for (const one of body.querySelectorAll("details")) one.open = open.has(one.id);
    body.querySelector(".found-all")?.scrollTo({ left: along });
    if (held) /** @type {HTMLElement | null} */ (root.querySelector(`[data-does="${held === "stop" ? "look" : held === "look" ? "stop" : held}"]`))?.focus({ preventScroll: true });
  };

  /** @param {Proof} now @returns {Node[]} */
  const parts = (now) => {
    const inner = [];
    if (now.state === "none") inner.push(el("p", { class: "blank" }, "Nobody has looked yet. Every situation this book can come to is looked at, and what it leaves open is shown as the shortest possession. You can keep playing."));
    if (now.state === "done" && !now.findings.length) inner.push(el("p", { class: "clean found-none" }, sign("holds"), el("span", {}, now.said)));
    if (now.findings.length) inner.push(el("ol", { class: "found-all", "aria-label": "Findings" }, ...now.findings.map((finding) => plate(finding, now))));
    const further = now.not_looked_at.filter((row) => row.depth);
    if (further.length && now.state !== "looking") inner.push(el("ul", { class: "further", "aria-label": "Not looked at yet" }, ...further.map(notYet)));
    if (now.holds.length) inner.push(whatHolds(now));
    return inner;
  };

  /** @param {Finding} finding @param {Proof} now */
  const plate = (finding, now) => {
    const picture = el("div", { class: "picture" + (finding.still ? "" : " blank") });
    if (finding.still) fill(picture, finding.still);
    else picture.append(el("p", {}, finding.plays ? "This cannot be drawn." : "It never happens, so there is no picture."));
    const named = `finding ${finding.number}`;
    const ways = now.ways[finding.number];
    const does = [];
    if (finding.plays) does.push(button("Show me", () => showMe(finding), { class: "full", "aria-label": `Show me ${named}`, "data-does": `show-${finding.number}` }));
    if (now.state === "done" && !now.changed && (!ways || ways.state === "stopped" || ways.state === "refused"))
      does.push(button("Try ways out", () => ask(`/proof/${finding.number}/ways`, { method: "POST" }), { class: "edged", "aria-label": `Try ways out of ${named}`, "data-does": `ways-${finding.number}` }));
    return el(
      "li",
      { class: "found-one", id: `finding-${finding.number}` },
      picture,
      el("p", { class: "kind" }, sign(finding.kind), el("b", {}, finding.word), ...finding.letters.map((letter) => tab(letter))),
      el("h3", {}, finding.title),
      el("p", { class: "small soft" }, finding.when),
      el("p", { class: "acts" }, ...does),
      told(finding),
      ways ? waysOut(ways, finding, now) : null,
    );
  };

  /** @param {Finding} finding */
  const told = (finding) =>
    el(
      "details",
      { class: "told", id: `told-${finding.number}` },
      el("summary", { "data-does": `told-${finding.number}` }, "In words", el("span", { class: "unseen" }, ` finding ${finding.number}`)),
      finding.begins ? el("p", { class: "small" }, finding.begins) : null,
      finding.lines.length ? el("ol", { class: "steps" }, ...finding.lines.map((line) => el("li", {}, line))) : null,
      finding.here ? el("p", { class: "here" }, el("b", {}, "Here: "), finding.here) : null,
      finding.note ? el("p", { class: "small soft" }, finding.note) : null,
      el("p", { class: "small soft" }, finding.count),
    );

  /** @param {Ways} ways @param {Finding} finding @param {Proof} now */
  const waysOut = (ways, finding, now) => {
    const rows = ways.ways.map((way, place) =>
      el("li", {}, el("p", {}, way.says), el("p", { class: "small soft" }, way.changes), now.changed ? null : button("Take it", () => takeWay(way), { class: "edged", "aria-label": `Take it: ${way.says}`, "data-does": `take-${finding.number}-${place}` })),
    );
    const stopIt = ways.state === "looking" ? button("Stop", stop, { class: "edged", "aria-label": `Stop looking for ways out of finding ${finding.number}`, "data-does": `ways-${finding.number}` }) : null;
    return el("div", { class: "ways-out" }, el("p", { class: "small", role: "status" }, ways.said), stopIt, rows.length ? el("ul", { class: "sayings" }, ...rows) : null);
  };

  /** @param {Unseen} row */
  const notYet = (row) => {
    const named = DEPTHS.find(([name]) => name === row.depth);
    const lookToo = () => {
      tick([row.depth]);
      start();
    };
    return el("li", {}, el("p", { class: "kind" }, sign("unseen"), el("b", {}, "Not looked at")), el("p", {}, row.said), button("Look at this too", lookToo, { class: "edged", "aria-label": `Look at this too: ${named ? named[1] : row.said}`, "data-does": `depth-${row.depth}` }));
  };

  store.listen((/** @type {any} */ now, /** @type {string} */ what) => {
    if (what !== "floor") return;
    if (now.id === floor && now.book.text === text) return;
    floor = now.id;
    text = now.book.text;
    look();
  });
}

/**
 * How far to look, as ticks; the first depth belongs to all others.
 * @param {Set<string>} wanted
 */
function depthTicks(wanted) {
  const rows = DEPTHS.map(([name, words]) => {
    const box = el("input", { type: "checkbox", value: name, checked: wanted.has(name), disabled: name === "settled" });
    box.addEventListener("change", () => (box.checked ? wanted.add(name) : wanted.delete(name)));
    return el("label", { class: "tick" }, box, words);
  });
  return el("fieldset", { class: "depths" }, el("legend", { class: "unseen" }, "How far to look"), ...rows);
}

/** @param {Proof} now */
function whatHolds(now) {
  const rows = now.holds.map((row) =>
    el("li", {}, sign(row.kind), el("p", {}, el("b", {}, row.name), " " + row.sentence), el("p", { class: "verdict" }, row.findings.length ? el("a", { href: `#finding-${row.findings[0]}` }, row.verdict) : row.verdict)),
  );
  const left = now.not_looked_at.filter((row) => !row.depth);
  return el(
    "details",
    { class: "asked", id: "what-holds" },
    el("summary", { "data-does": "holds" }, "What has to hold, and what was looked at"),
    el("ul", {}, ...rows),
    el("div", { class: "looked" }, ...now.covered.map((line) => el("p", { class: "small soft" }, line)), left.length ? el("ul", {}, ...left.map((row) => el("li", {}, sign("unseen"), el("p", {}, row.said)))) : null),
  );
}
