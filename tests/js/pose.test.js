import assert from "node:assert/strict";
import { test } from "node:test";
import { pose, trail, unpackAll } from "../../src/backcut/page/static/board/pose.js";
import { contract } from "./board.js";

const tracks = unpackAll(contract.tracks);
const at = (t) => pose(tracks, contract.held, t);

// A page carries times in whole hundredths, so a place may be that of half a hundredth earlier or later.
const near = (t, group, name, place) =>
  Math.min(...[-0.5, -0.25, 0, 0.25, 0.5].map((by) => {
    const here = group === "ball" ? at(t + by).ball : at(t + by)[group][name];
    return Math.hypot(here[0] - place[0], here[1] - place[1]);
  }));

test("the page and Python put every player and defender on the same place to a centimetre", () => {
  assert.ok(contract.poses.length > 50);
  for (const there of contract.poses) {
    for (const group of ["players", "defenders"]) {
      for (const [name, place] of Object.entries(there[group])) {
        assert.ok(near(there.t, group, name, place) < 1, `${group} ${name} at ${there.t}`);
      }
    }
  }
});

test("the page and Python agree who has the ball", () => {
  for (const { t, holder } of contract.poses) assert.equal(at(t).held?.[0] ?? null, holder, `at ${t}`);
});

test("asked twice, in any order, a time gives the same picture", () => {
  const times = contract.poses.map(({ t }) => t);
  const forward = times.map((t) => JSON.stringify(at(t)));
  const backward = [...times].reverse().map((t) => JSON.stringify(at(t))).reverse();
  assert.deepEqual(backward, forward);
});

test("asking for a pose leaves the tracks as they were", () => {
  const before = JSON.stringify(tracks);
  contract.poses.forEach(({ t }) => at(t));
  assert.equal(JSON.stringify(tracks), before);
});

test("before the beginning and after the end everybody stands still", () => {
  assert.deepEqual(at(-100).players, at(0).players);
  assert.deepEqual(at(tracks.end + 100).players, at(tracks.end).players);
});

test("nobody runs faster than a person between two pictures", () => {
  const fastest = 1250; // cm/s: above the fastest sprint that was ever measured (from memory)
  for (let t = 0; t < tracks.end; t += 4) {
    for (const [name, [x, y]] of Object.entries(at(t + 4).players)) {
      const [fx, fy] = at(t).players[name];
      assert.ok(Math.hypot(x - fx, y - fy) < fastest * 0.04, `${name} at ${t}`);
    }
  }
});

test("a trail begins and ends where its runner was, and who stands leaves none", () => {
  const [name] = Object.keys(tracks.p);
  const drawn = trail(tracks.p[name], 0, tracks.end, 60);
  const numbers = drawn.slice(1).split("L").map((pair) => pair.split(" ").map(Number));
  assert.deepEqual(numbers[0], at(0).players[name].map((v) => Number(v.toFixed(1))));
  assert.deepEqual(numbers.at(-1), at(tracks.end).players[name].map((v) => Number(v.toFixed(1))));
  assert.equal(trail(tracks.p[name], 0, 0, 60), "");
});
