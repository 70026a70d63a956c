import assert from "node:assert/strict";
import { test } from "node:test";
import { scaleOf, toFloor, toScreen } from "../../src/backcut/page/static/board/geometry.js";
import { reversedArc } from "../../src/backcut/page/static/board/turn.js";

const FLOOR = { x: -772, y: -170, w: 1544, h: 1400 };
const whole = { ...FLOOR, left: 40, top: 80, width: 772, height: 700, turned: false };
const cut = { ...whole, height: 400 };
const wide = { ...whole, width: 390, left: 0, height: 271 };

test("from the screen to the floor and back is where it began", () => {
  for (const view of [whole, cut, wide]) {
    for (const turned of [false, true]) {
      for (const place of [[0, 0], [571, 423], [-695, -30]]) {
        const [x, y] = toFloor({ ...view, turned }, ...toScreen({ ...view, turned }, place));
        assert.ok(Math.hypot(x - place[0], y - place[1]) < 1e-9);
      }
    }
  }
});

test("the basket is at the head of the floor, and at its foot when the floor is turned", () => {
  assert.deepEqual(toScreen(whole, [0, 0]), [40 + 386, 80 + 85]);
  assert.deepEqual(toScreen({ ...whole, turned: true }, [0, 0]), [40 + 386, 80 + 700 - 85]);
});

test("a floor that is cut at its foot keeps its size and its head", () => {
  assert.equal(scaleOf(cut), scaleOf(whole));
  assert.deepEqual(toScreen(cut, [0, 0]), toScreen(whole, [0, 0]));
});

test("an arc turned round runs from its other end the other way", () => {
  assert.equal(reversedArc("M-600 300A690 690 0 0 0 600 300"), "M600 300A690 690 0 0 1 -600 300");
  assert.equal(reversedArc("M0 0L5 5"), "M0 0L5 5");
});
