/** The tie between the monotonic clock and the audio clock. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { AudioTie } from "../../static/src/audio/clock.js";
import { chance } from "./builders.js";

/** Follows for some minutes a clock that drifts and whose measurements jitter; the worst error after 30 s, in s. */
function worstError(drift: number, jitter_s: number, minutes: number): { error_s: number; step_s: number } {
  const [tie, next] = [new AudioTie(), chance(41)];
  let [error_s, step_s, before] = [0, 0, 0];
  for (let now_ms = 0; now_ms < minutes * 60_000; now_ms += 250) {
    const offset_s = 3 + (now_ms / 1000) * drift;
    tie.follow(offset_s + (next() - 0.5) * 2 * jitter_s, now_ms);
    const shown = tie.audioTime(now_ms) - now_ms / 1000;
    if (now_ms > 30_000) [error_s, step_s] = [Math.max(error_s, Math.abs(shown - offset_s)), Math.max(step_s, Math.abs(shown - before))];
    before = shown;
  }
  return { error_s, step_s };
}

test("over 90 minutes of a drift of 80 millionths the tie stays within a millisecond, in steps nobody hears", () => {
  const { error_s, step_s } = worstError(80e-6, 0, 90);
  assert.ok(error_s < 0.001, `${error_s}`);
  assert.ok(step_s < 0.0003, `${step_s}`);
});

test("measurements that jitter by 5 ms do not shake it by more than 3 ms", () => {
  const { error_s, step_s } = worstError(80e-6, 0.005, 10);
  assert.ok(error_s < 0.003, `${error_s}`);
  assert.ok(step_s < 0.0003, `${step_s}`);
});

test("a single measurement that is far off changes nothing", () => {
  const tie = new AudioTie();
  for (let now_ms = 0; now_ms < 5000; now_ms += 250) tie.follow(3, now_ms);
  assert.equal(tie.follow(8, 5000), false);
  assert.equal(tie.audioTime(5000), 8);
});

test("after a pause of the sound it jumps, once, and says so", () => {
  const tie = new AudioTie();
  for (let now_ms = 0; now_ms < 5000; now_ms += 250) tie.follow(3, now_ms);
  const jumps = [1, 2, 3, 4, 5, 6, 7, 8].map((tick) => tie.follow(-4, 5000 + tick * 250));
  assert.equal(jumps.filter(Boolean).length, 1);
  assert.equal(tie.audioTime(9000), 5);
});

test("the first measurement is taken as it is, and is no jump", () => {
  const tie = new AudioTie();
  assert.equal(tie.known, false);
  assert.equal(tie.follow(2, 1000), false);
  assert.equal(tie.audioTime(1000), 3);
});
