/** When the screen of a session looks different again. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { moves, secondsToNextPaint } from "../../static/src/components/next-paint.js";
import type { Snapshot } from "../../static/src/state/snapshot.js";

const beat = { phase: "drive", share: 0.1, stroke_s: 2.5, drive: 0.4, phase_share: 0.25 } as const;
const at = (more: Partial<Snapshot>) => ({ phase: "running", elapsed_s: 10.3, left_s: 49.7, beat, ...more }) as Snapshot;
const near = (value: number, wanted: number) => assert.ok(Math.abs(value - wanted) < 1e-9, `${value} is not ${wanted}`);

test("at the next whole second, gone or left", () => {
  near(secondsToNextPaint(at({ elapsed_s: 10.96, left_s: 49.5 })), 0.04);
  near(secondsToNextPaint(at({ elapsed_s: 10.3, left_s: 49.03 })), 0.03);
});

test("when the drive ends, and at the next catch", () => {
  near(secondsToNextPaint(at({ beat: { ...beat, share: 0.38 } })), 0.05);
  near(secondsToNextPaint(at({ beat: { ...beat, phase: "recovery", share: 0.98 } })), 0.05);
});

test("at least ten times a second, and in every frame while it counts in", () => {
  near(secondsToNextPaint(at({})), 0.1);
  near(secondsToNextPaint(at({ left_s: null, beat: null })), 0.1);
  near(secondsToNextPaint(at({ phase: "count-in" })), 0);
});

test("in a hold, or while a question stands, nothing moves", () => {
  for (const phase of ["held", "asking", "finished"] as const) {
    assert.equal(moves(at({ phase })), false);
    near(secondsToNextPaint(at({ phase, elapsed_s: 10.999 })), 0.1);
  }
  assert.equal(moves(at({ phase: "waiting" })), true);
});
