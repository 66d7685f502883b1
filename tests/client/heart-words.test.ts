/** Which method the heart rates of the bands go by is said in one line. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { heartWords } from "../../static/src/plan/heart-words.js";

test("without a heart rate at rest they are shares of the highest", () => {
  assert.equal(heartWords({ max: 185, max_from: "given", error: 0 }), "Heart rates are shares of your highest, 185.");
});

test("with one they are shares of the reserve above it", () => {
  assert.equal(
    heartWords({ max: 185, rest: 52, max_from: "given", error: 0 }),
    "Heart rates are shares of the heart-rate reserve, from your 52 at rest to your highest, 185.",
  );
});

test("a highest from age says how far it may be off", () => {
  const words = heartWords({ max: 177, max_from: "age", error: 11 });
  assert.equal(words, "Heart rates are shares of your highest, taken from your age: 177, give or take 11. A measured one is better.");
});
