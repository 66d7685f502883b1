/** Times and splits as people read them. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { clock, countdown, splitClock, wholeSecondsGone, wholeSecondsLeft } from "../../static/src/plan/format.js";
import { nextAt, startProblem, timeOfDay } from "../../static/src/state/time-of-day.js";

test("a length of time reads as minutes, and from an hour on as hours", () => {
  assert.deepEqual([0, 30, 90, 599.5, 3599.4, 3600, 3905].map(clock), ["0:00", "0:30", "1:30", "10:00", "59:59", "1:00:00", "1:05:05"]);
  assert.equal(clock(-3), "0:00");
});

test("a countdown reads zero only at the end", () => {
  assert.equal(countdown(0.01), "0:01");
  assert.equal(countdown(60), "1:00");
  assert.equal(countdown(0), "0:00");
  assert.equal(wholeSecondsLeft(30.0000000001), 30);
});

test("what counts up or down does not lose or gain a second by the rounding of sums", () => {
  assert.deepEqual([109.9999999, 110, 110.9].map(wholeSecondsGone), [110, 110, 110]);
  assert.deepEqual([5.0000001, 5, 4.1].map(wholeSecondsLeft), [5, 5, 5]);
});

test("a split always has its tenth", () => {
  assert.deepEqual([115.5, 120, 119.96, 60.04].map(splitClock), ["1:55.5", "2:00.0", "2:00.0", "1:00.0"]);
});

test("a time of day is the next one that the clock will show", () => {
  const noon = new Date(2026, 10, 25, 12, 0, 0).getTime();
  assert.equal(timeOfDay(nextAt("17:30", noon)), "17:30");
  assert.equal(nextAt("17:30", noon) - noon, 5.5 * 3600_000);
  assert.equal(new Date(nextAt("12:00", noon)).getDate(), 26);
  assert.throws(() => nextAt("25:00", noon), /not a time of day/);
});

test("a start by the clock that is past, or far ahead, is told which, and what would do", () => {
  const noon = new Date(2026, 2, 25, 12, 0).getTime();
  const problem = (time: string) => startProblem(time, nextAt(time, noon), noon);
  assert.equal(problem("12:01"), "");
  assert.equal(problem("14:00"), "");
  assert.equal(problem("11:58"), "11:58 is past: it is 12:00 now. Choose a time within the next two hours.");
  assert.equal(problem("14:01"), "14:01 is more than two hours ahead: it is 12:00 now. Choose a time before 14:00.");
  assert.match(problem("23:00"), /more than two hours ahead/);
});
