/** Lanes of a room: what is kept of them, and what a block asks of each. */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { wallFrom } from "../../static/src/data/wall.js";
import { forRoom, laneFrom, laneName, lanesBeyondSplits, nameThatFits, targetsOf, type Lane } from "../../static/src/plan/lanes.js";
import { twoKFrom } from "../../static/src/plan/prediction.js";
import { scaled } from "../../static/src/plan/scale.js";
import type { Result, Timeline } from "../../static/src/plan/wire.js";
import { metres, row, timeline } from "./builders.js";

const wren: Lane = { name: "Wren", result: { metres: 2000, seconds: 462 } };
const alder: Lane = { name: "Alder", result: { metres: 5000, seconds: 1400 } };
const nobody: Lane = { name: "", result: null };

/** A timeline for anybody, and the one that the planner compiles for a result. */
interface Pair {
  result: Result;
  timeline_plain: Timeline;
  timeline_scaled: Timeline;
}
const pair = JSON.parse(readFileSync("tests/shared/every-effort.json", "utf8")) as Pair;
const planned: Lane = { name: "Rowan", result: pair.result };

test("a lane is asked exactly what the planner asks of its rower", () => {
  const [, second] = targetsOf(pair.timeline_plain, [wren, planned]);
  assert.deepEqual(second, pair.timeline_scaled.segments.map(({ target }) => target));
});

test("lanes can be asked from a timeline that has been scaled to another one", () => {
  const room = forRoom(pair.timeline_plain, [wren, alder, nobody]);
  assert.deepEqual(targetsOf(room, [wren, planned]), targetsOf(pair.timeline_plain, [wren, planned]));
});

test("what is asked of the room is what is asked of anybody, and so of a lane without a result", () => {
  const asked = pair.timeline_plain.segments.map(({ target }) => target);
  const room = forRoom(pair.timeline_plain, [wren, nobody]);
  assert.deepEqual(room.segments.map(({ target }) => target), asked);
  assert.deepEqual(targetsOf(room, [wren, nobody])[1], asked);
});

test("metre blocks are as long as the slowest lane needs", () => {
  const plan = { ...timeline(row(60, 24), metres(500, 120, 24, { target: { split_offset_s: 0 } })) };
  plan.plan.parts = [{ kind: "main", blocks: [{ for: { seconds: 60 }, rate: 24 }, { for: { metres: 500 }, rate: 24, effort: { split_offset: 0 } }] }];
  const [, slow] = forRoom(plan, [wren, alder, nobody]).segments;
  const [, alone] = scaled(plan, twoKFrom(alder.result!)).segments;
  assert.equal(slow!.duration_s, alone!.duration_s);
  assert.ok(slow!.duration_s > scaled(plan, twoKFrom(wren.result!)).segments[1]!.duration_s);
});

test("without a result nothing is scaled", () => {
  const plan = timeline(row(60, 24));
  assert.equal(forRoom(plan, [nobody]), plan);
});

test("a lane without a name is called by its number", () => {
  assert.equal(laneName(nobody, 2), "Lane 3");
  assert.equal(laneName(wren, 2), "Wren");
});

test("what is kept of a room is read back", () => {
  const kept = { version: 1, lanes: [wren, nobody], sight: { distance_m: 5, diagonal_mm: 1397 }, plan: { source: "mine", name: "x" } };
  const { version: _, ...wall } = kept;
  assert.deepEqual(wallFrom(kept), { wall, lost: 0 });
  assert.deepEqual(wallFrom(undefined), { wall: { lanes: [], sight: null, plan: null }, lost: 0 });
});

for (const damaged of [
  null, {}, "Wren", { name: 7, result: null }, { name: "a name that is far too long for a lane", result: null }, { name: "Wren" },
  { name: "Wren", result: {} }, { name: "Wren", result: { metres: "2000", seconds: 462 } }, { name: "Wren", result: { metres: 2000.5, seconds: 462 } },
  { name: "Wren", result: { metres: 2000, seconds: NaN } }, { name: "Wren", result: { metres: 2000, seconds: 100 } },
  { name: "Wren", result: { metres: 2000, seconds: 1e9 } }, { name: "Wren", result: { metres: 1, seconds: 1 } },
]) {
  test(`a damaged lane is left out, and counted: ${JSON.stringify(damaged)}`, () => {
    assert.equal(laneFrom(damaged), undefined);
    assert.deepEqual(wallFrom({ version: 1, lanes: [damaged, wren], sight: null, plan: null }), {
      wall: { lanes: [wren], sight: null, plan: null }, lost: 1,
    });
  });
}

for (const sight of [5, { distance_m: 0, diagonal_mm: 1000 }, { distance_m: 5, diagonal_mm: 1 }, { distance_m: "5", diagonal_mm: 1000 }]) {
  test(`an absurd sight counts as not said: ${JSON.stringify(sight)}`, () => {
    assert.equal(wallFrom({ version: 1, lanes: [], sight, plan: null }).wall.sight, null);
  });
}

test("more lanes than there can be are left out", () => {
  assert.equal(wallFrom({ version: 1, lanes: Array(40).fill(wren) }).wall.lanes.length, 16);
});

test("of a name as much is kept as has room, in whole letters", () => {
  assert.equal(nameThatFits("  Wren "), "Wren");
  assert.equal(nameThatFits("Bartholomew Featherstonehaugh"), "Bartholomew Feathers");
  assert.equal(nameThatFits("Cyrus of the mill at the weir"), "Cyrus of the mill at", "no space at its end");
  assert.equal(nameThatFits(`${"x".repeat(19)}\u{1f6a3}`), "x".repeat(19), "half a letter is none");
  assert.ok(laneFrom({ name: nameThatFits("\u{1f6a3}".repeat(30)), result: null }), "what is kept can be read again");
});

test("lanes are named in which a block asks a split that nobody could be asked for", () => {
  const slow: Lane = { name: "Rill", result: { metres: 2000, seconds: 1200 } };
  assert.deepEqual(lanesBeyondSplits(pair.timeline_plain, [wren, slow, nobody]), [1]);
});
