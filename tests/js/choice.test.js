import assert from "node:assert/strict";
import { test } from "node:test";
import { aimedAt, DROP_CM, keyed, playerAt, REACH_CM, tapped, targetsOf, walked } from "../../src/backcut/page/static/board/choice.js";
import { cans, cells } from "./board.js";

const cell = (id) => cells.find((one) => one.id === id);
const key = (id, name, chosen = null) => keyed(cells, cans, chosen, cell(id), name);
const tap = (x, y, chosen = null) => tapped(cells, cans, chosen, [x, y]);
const move = (act) => act && act.do && act.do.move;

test("arrows walk to the next place on the screen", () => {
  const way = (from, arrow, turned = false) => walked(cells, cell(from), arrow, turned)?.id ?? null;
  assert.equal(way("p1", "ArrowLeft"), "p3");
  assert.equal(way("p1", "ArrowRight"), "p2");
  assert.equal(way("p1", "ArrowUp"), "p5");
  assert.equal(way("p3", "ArrowUp"), "LC");
  assert.equal(way("p3", "ArrowRight"), "p5");
  assert.equal(way("LC", "ArrowRight"), "p5");
  assert.equal(way("p5", "ArrowRight"), "p4");
  assert.equal(way("p1", "ArrowDown"), null);
  assert.equal(way("p1", "a"), null);
});

test("on the turned floor left is still left on the screen", () => {
  const way = (from, arrow) => walked(cells, cell(from), arrow, true)?.id ?? null;
  assert.equal(way("p1", "ArrowLeft"), "p2");
  assert.equal(way("p1", "ArrowDown"), "p5");
  assert.equal(way("p1", "ArrowUp"), null);
});

test("with arrows alone every place is reached from every other", () => {
  for (const turned of [false, true]) {
    for (const from of cells) {
      const seen = new Set([from.id]);
      const open = [from];
      while (open.length) {
        const here = open.pop();
        for (const arrow of ["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"]) {
          const next = walked(cells, here, arrow, turned);
          if (next && !seen.has(next.id)) open.push(next) && seen.add(next.id);
        }
      }
      assert.equal(seen.size, cells.length, `from ${from.id}`);
    }
  }
});

test("Enter on a player passes to that player", () => {
  assert.equal(move(key("p2", "Enter")), "1>2");
  assert.equal(move(key("p4", "Enter")), "skip 1>4");
});

test("Enter on whoever has the ball takes that player in hand, and once more lets go", () => {
  assert.deepEqual(key("p1", "Enter"), { choose: 1 });
  assert.deepEqual(key("p1", "Enter", 1), { choose: null });
});

test("Enter on a player nobody can pass to takes that player in hand", () => {
  assert.deepEqual(key("p5", "Enter"), { choose: 5 });
});

test("when two moves would come of Enter, it does neither", () => {
  const twice = [...cans, { ...cans[0], move: "late 1>2" }];
  assert.deepEqual(keyed(cells, twice, null, cell("p2"), "Enter"), { choose: 2 });
});

test("with the ball in hand Enter on an empty spot goes there", () => {
  assert.equal(key("LC", "Enter"), null);
  assert.equal(move(key("LC", "Enter", 1)), "dribble LC");
});

test("a letter does the move of the player under it, whichever case it is", () => {
  assert.equal(move(key("p2", "d")), "deny 2");
  assert.equal(move(key("p3", "D")), "deny 3");
  assert.equal(key("p1", "d"), null);
  assert.equal(key("LC", "d"), null);
});

test("a letter that could mean two moves takes the player in hand", () => {
  assert.deepEqual(key("p1", "g"), { choose: 1 });
});

test("Escape lets go, and with nobody in hand it is left to the page", () => {
  assert.deepEqual(key("p2", "Escape", 1), { choose: null });
  assert.equal(key("p2", "Escape"), null);
});

test("a drag shows where this player's moves end, each place once", () => {
  const ends = targetsOf(cans, cells, 1).map(({ can }) => can.move);
  assert.deepEqual(ends, ["1>2", "1>3", "skip 1>4", "dribble LC"]);
  assert.deepEqual(targetsOf(cans, cells, 2), []);
});

test("a drop takes the nearest place a move can end, and elsewhere nothing", () => {
  const targets = targetsOf(cans, cells, 1);
  assert.equal(aimedAt(targets, [571 + DROP_CM - 1, 423], DROP_CM)?.can.move, "1>2");
  assert.equal(aimedAt(targets, [571 + DROP_CM + 1, 423], DROP_CM), null);
  assert.equal(aimedAt(targets, [640, 180], 500)?.can.move, "skip 1>4");
});

test("where two players stand close the nearer one is taken", () => {
  const close = [cell("p1"), { ...cell("p2"), x: 100, y: 710 }];
  assert.equal(playerAt(close, [49, 710])?.player, 1);
  assert.equal(playerAt(close, [51, 710])?.player, 2);
  assert.equal(playerAt(close, [0, 710 + REACH_CM + 1]), null);
});

test("tap and tap: the player, then where the move ends", () => {
  assert.deepEqual(tap(10, 690), { choose: 1 });
  assert.equal(move(tap(571, 400, 1)), "1>2");
  assert.equal(move(tap(-690, -20, 1)), "dribble LC");
});

test("a tap on another player changes hands, on the same player or the floor lets go", () => {
  assert.deepEqual(tap(-40, 150, 1), { choose: 5 });
  assert.deepEqual(tap(0, 710, 1), { choose: null });
  assert.deepEqual(tap(300, 1000, 1), { choose: null });
  assert.equal(tap(300, 1000), null);
});

test("with nobody in hand a tap on a player who could catch does not pass", () => {
  assert.deepEqual(tap(571, 423), { choose: 2 });
});
