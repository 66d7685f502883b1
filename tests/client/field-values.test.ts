/** What people type into the fields of a block. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { lineIn, numberIn, secondsIn, splitIn } from "../../static/src/plan/field-values.js";

test("lengths of time are read as people write them, and out of bounds not at all", () => {
  const bounds = { low: 1, high: 14_400 };
  const read = (text: string) => secondsIn(text, bounds);
  assert.deepEqual(["5:00", "1:05:00", "5", "3'", '50"', "1'30\"", "2 min", "90 s", " 0:30 "].map(read), [300, 3900, 300, 180, 50, 90, 120, 90, 30]);
  assert.deepEqual(["", "0:00", "5:75", "four", "4:00:01", "-1", "1e3", "1.5"].map(read), Array(8).fill(undefined));
});

test("numbers keep to their bounds and steps", () => {
  assert.deepEqual(["20", " 9", "51", "20.5", "x", ""].map((text) => numberIn(text, { low: 10, high: 50 })), [20, undefined, undefined, undefined, undefined, undefined]);
  assert.deepEqual(["-2", "+1,5", "−0.5", "0.25"].map((text) => numberIn(text, { low: -40, high: 40, parts: 10 })), [-2, 1.5, -0.5, undefined]);
});

test("splits have minutes, seconds and at most a tenth", () => {
  assert.deepEqual(["1:55", "1:55.5", "6:00", "0:59", "6:00.1", "115", "1:65"].map(splitIn), [115, 115.5, 360, undefined, undefined, undefined, undefined]);
});

test("a line is trimmed, and one with something hidden in it is not taken", () => {
  assert.deepEqual([" Long   arms ", "", "x".repeat(121), "a\u202eb"].map((text) => lineIn(text, 120)), ["Long arms", "", undefined, undefined]);
});
