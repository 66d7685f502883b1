/** The rate really rowed, from taps at the catches, and how it is told. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { checkWords, inHalves } from "../../static/src/components/row-words.js";
import { rateOfTaps, withTap } from "../../static/src/timeline/tapped-rate.js";
import { chance } from "./builders.js";

/** Taps at these seconds. */
const tapped = (...seconds: number[]): number[] => seconds.reduce<number[]>((taps, at_s) => withTap(taps, at_s * 1000), []);
const every = (stroke_s: number, count: number, from_s = 0): number[] => Array.from({ length: count }, (_, stroke) => from_s + stroke * stroke_s);

test("a stroke every 2.5 s is 24 a minute, every 2 s is 30", () => {
  assert.equal(rateOfTaps(tapped(...every(2.5, 6))), 24);
  assert.equal(rateOfTaps(tapped(...every(2, 6))), 30);
});

test("it takes three strokes, which are four taps", () => {
  assert.equal(rateOfTaps(tapped()), null);
  assert.equal(rateOfTaps(tapped(...every(2.5, 3))), null);
  assert.equal(rateOfTaps(tapped(...every(2.5, 4))), 24);
});

test("one tap that was missed does not move it, and neither does one that came late", () => {
  assert.equal(rateOfTaps(tapped(0, 2.5, 7.5, 10, 12.5)), 24, "a catch was missed");
  assert.equal(rateOfTaps(tapped(0, 2.5, 5.6, 7.5, 10, 12.5)), 24, "one tap was 0.6 s late");
});

test("two taps of one catch are one", () => {
  assert.equal(rateOfTaps(tapped(0, 0.2, 2.5, 2.7, 5, 7.5)), 24);
});

test("after a pause of more than six seconds it begins anew", () => {
  assert.equal(rateOfTaps(tapped(...every(2.5, 6), 19)), null);
  assert.equal(rateOfTaps(tapped(...every(2.5, 6), ...every(2, 4, 20))), 30);
  assert.equal(rateOfTaps(tapped(...every(5.9, 4))), 60 / 5.9, "slow strokes are no pause");
});

test("a change of rate is there after three strokes of the new one", () => {
  assert.equal(rateOfTaps(tapped(...every(2.5, 10), ...every(2, 3, 24.5))), 30);
});

test("tapped by hand, 40 ms off either way, the middle one is within a stroke a minute", () => {
  const next = chance(41);
  for (let round = 0; round < 300; round += 1) {
    const rate = 16 + next() * 24;
    const taps = every(60 / rate, 12).map((at_s) => at_s + (next() - 0.5) * 0.08);
    const found = rateOfTaps(tapped(...taps))!;
    assert.ok(Math.abs(found - rate) < 1.5, `${found} for ${rate}`);
  }
});

test("rates are told to the half stroke", () => {
  assert.deepEqual([24, 23.8, 22.4, 22.6, 0.5].map(inHalves), ["24", "24", "22½", "22½", "½"]);
});

test("the difference is named", () => {
  const words = (rate: number, paced: number | undefined = 24) => checkWords(rate, paced, 0);
  assert.deepEqual([24, 24.2, 23.8].map((rate) => words(rate)), Array(3).fill("As asked"));
  assert.equal(words(24.5), "Half a stroke a minute too quick");
  assert.equal(words(23), "1 stroke a minute too slow");
  assert.equal(words(26.4), "2½ strokes a minute too quick");
  assert.equal(checkWords(24, undefined, 0), "No rate is asked here.");
  assert.deepEqual([4, 1].map((more) => checkWords(null, 24, more)), ["Tap at each catch: 4 more", "Once more"]);
});
