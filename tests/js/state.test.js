import assert from "node:assert/strict";
import { test } from "node:test";
import { makeState } from "../../src/backcut/page/static/board/state.js";

const TIMES = [0, 70, 140, 140, 400];
const open = (options) => makeState(TIMES, 600, options);

test("a possession opens still, at its first decision", () => {
  assert.deepEqual(open().now, { t: 0, moment: 0, playing: false, speed: "still", whole: false });
});

test("after an edit it opens at the time it had, between two decisions", () => {
  const { now } = open({ at: { t: 233, moment: 3 }, speed: "slow" });
  assert.deepEqual([now.t, now.moment, now.speed], [233, 3, "slow"]);
});

test("of two decisions at one time the one that is meant stays", () => {
  assert.equal(open({ at: { t: 140, moment: 2 } }).now.moment, 2);
  assert.equal(open({ at: { t: 140, moment: 3 } }).now.moment, 3);
});

test("a decision that no longer fits the time gives way to the time", () => {
  assert.equal(open({ at: { t: 233, moment: 0 } }).now.moment, 3);
  assert.equal(open({ at: { t: 30, moment: 4 } }).now.moment, 0);
});

test("a decision alone says the time, a time alone says the decision", () => {
  assert.equal(open({ at: { moment: 4 } }).now.t, 400);
  assert.equal(open({ at: { t: 139 } }).now.moment, 1);
});

test("a shorter possession opens at its end", () => {
  const { now } = open({ at: { t: 9000, moment: 17 } });
  assert.deepEqual([now.t, now.moment], [600, 4]);
});

test("before the first decision is the first decision", () => {
  const { now } = makeState([50, 90], 100, { at: { t: 10 } });
  assert.deepEqual([now.t, now.moment], [10, 0]);
});

test("stepping stops at both ends and stops the play", () => {
  const state = open();
  state.set({ playing: true });
  state.goMoment(99);
  assert.deepEqual([state.now.moment, state.now.playing], [4, false]);
  state.goMoment(-1);
  assert.equal(state.now.moment, 0);
});

test("whoever listens is told what it was before", () => {
  const state = open();
  const told = [];
  state.listen((now, before) => told.push([before.t, now.t]));
  state.goTime(80);
  state.goTime(-5);
  assert.deepEqual(told, [[0, 80], [80, 0]]);
});
