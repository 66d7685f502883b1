/** What is left at the start line, in words: by the planner's steps. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { QUANTITIES, gapWords, rangeWords, senseOf } from "../../static/src/plan/readiness-words.js";
import type { Readiness } from "../../static/src/plan/wire.js";

const at = (middle: number) => ({ low: middle - 5, middle, high: middle + 5 });
const sense = (quantity: string, middle: number) => senseOf(QUANTITIES.find((each) => each.quantity === quantity)!.steps, at(middle));

test("a share is told by the step that its middle has reached, below nothing as well", () => {
  assert.deepEqual([95, 94, 85, 84, 50, 49, -3].map((middle) => sense("reserve", middle)),
    ["nearly all", "most", "most", "part spent", "part spent", "mostly spent", "mostly spent"]);
  assert.deepEqual([104, 70, 69, 45, 44].map((middle) => sense("warmth", middle)), ["warm", "warm", "fairly warm", "fairly warm", "cool"]);
});

test("a range without breadth is one number", () => {
  assert.equal(rangeWords({ low: 92, middle: 95, high: 98 }), "92 to 98 %");
  assert.equal(rangeWords({ low: 100, middle: 100, high: 100 }), "100 %");
});

test("the advised gap is told beside the one that the plan leaves", () => {
  const advice = (gap_s: number | null) => ({ gap_s, advised_gap: { low_s: 120, best_s: 300, high_s: 690 } }) as Readiness;
  assert.equal(gapWords(advice(null)), "Best gap before the start: 5:00; from 2:00 to 11:30 will do.");
  assert.match(gapWords(advice(30)), / This plan leaves 0:30\.$/);
});
