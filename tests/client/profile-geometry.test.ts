/** Where each segment lies in the picture of a plan. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { barsOf, depthOf } from "../../static/src/components/profile-geometry.js";
import { gap, rest, row, timeline } from "./builders.js";

const depth = (target: object, quickest = 115) => depthOf(timeline(row(60, 20, { target })).segments[0]!, quickest, 3);

test("the bars fill the width in proportion to their time", () => {
  const bars = barsOf(timeline(row(60, 20), gap(120), row(180, 30)), 360);
  assert.deepEqual(bars.map((bar) => [bar.left, bar.width]), [[0, 60], [60, 120], [180, 180]]);
});

test("light is shallow, race is deep, rest and gap are calm water", () => {
  assert.deepEqual(["light", "half", "three-quarter", "full", "race"].map((pressure) => depth({ pressure })), [1, 2, 3, 4, 5]);
  assert.deepEqual(barsOf(timeline(rest(60), gap(60)), 100).map((bar) => bar.depth), [0, 0]);
});

test("without a pressure the depth follows what can be said aloud, the offset, or the plan's quickest split", () => {
  assert.equal(depth({ two_k_power_fraction: 0.5, talk: "easy talk" }), 1);
  assert.equal(depth({ split_offset_s: 0 }), 5);
  assert.equal(depth({ split_offset_s: 30 }), 1);
  assert.equal(depth({ split_s: 115 }), 5);
  assert.equal(depth({ split_s: 150 }), 1);
});

test("a change of split starts from the depth before it", () => {
  assert.equal(depth({ change_s: -2 }), 3);
});

test("rowing without an effort is hardly deep, and has no rate line without a rate", () => {
  const [bar] = barsOf(timeline(row(60)), 100);
  assert.deepEqual([bar!.depth, bar!.rate, bar!.stroke], [0.5, null, 0]);
});

test("strokes lie a stroke apart", () => {
  assert.equal(barsOf(timeline(row(60, 20)), 300)[0]!.stroke, 15);
});
