/** Segments in the words of the trade. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { effortWords, lengthWords, nextWords, settingWords, strokeWords, whatWords } from "../../static/src/components/segment-words.js";
import { gap, metres, open, rest, row, timeline } from "./builders.js";

const one = (...drafts: Parameters<typeof timeline>) => timeline(...drafts).segments[0]!;

test("a block is named by its rate, its effort and its drill", () => {
  assert.equal(whatWords(one(row(30, 26, { target: { pressure: "three-quarter" } }))), "r26 three-quarter");
  assert.equal(whatWords(one(row(60, 18, { kind: "drill", drill: { name: "one foot", side: 1, sides: 2 } }))), "r18, one foot, side 1 of 2");
  assert.equal(whatWords(one(row(60))), "Row");
});

test("what is not rowed says what to do", () => {
  assert.equal(whatWords(one(rest(30))), "Rest");
  assert.equal(whatWords(one(rest(45))), "Rest, time to stand up");
  assert.equal(whatWords(one(gap(300))), "Gap, off the machine");
  assert.equal(whatWords(one({ ...rest(10), drill: { name: "one foot", swap: true } })), "Swap sides");
});

test("what comes next has its length, and after the last segment comes the end", () => {
  assert.equal(nextWords(one(row(30, 26, { target: { pressure: "half" } }))), "r26 half · 0:30");
  assert.equal(nextWords(one(metres(700, 160, 28))), "r28 · 700 m");
  assert.equal(nextWords(undefined), "the end");
});

test("a length reads as it was asked for", () => {
  assert.equal(lengthWords(one(row(20, 30, { ends: "strokes" }))), "10 strokes");
  assert.equal(lengthWords(one(row(2, 30, { ends: "strokes" }))), "1 stroke");
  assert.equal(lengthWords(one(open(20))), "open");
});

test("every kind of effort has its words", () => {
  assert.equal(effortWords({ split_s: 115.5, two_k_power_fraction: 1 }), "at 1:55.5");
  assert.equal(effortWords({ split_offset_s: 0 }), "at 2 km split");
  assert.equal(effortWords({ split_offset_s: -1.5, split_s: 114 }), "at 2 km split − 1.5 s");
  assert.equal(effortWords({ change_s: -2 }), "2 s quicker");
  assert.equal(effortWords({ change_s: 0 }), "same split as before");
  assert.equal(effortWords({ two_k_power_fraction: 0.65 }), "65 % of 2 km power");
  assert.equal(effortWords({ cr10: 6.5 }), "effort 6.5 of 10");
  assert.equal(effortWords({ heart_rate: { percent_max: 80, bpm: 150 } }), "heart rate 80 % of highest");
  assert.equal(effortWords(undefined), "");
});

// Common practice, no source: r24 is a stroke every 2.5 s, so that two strokes last five whole seconds.
test("the beat is told by its stroke and by whole seconds of the clock", () => {
  assert.equal(strokeWords(one(row(60, 24, { clock_mark: { strokes: 2, seconds: 5 } }))), "2.5 s a stroke, every 2 strokes = 5 s");
  assert.equal(strokeWords(one(row(60, 30, { clock_mark: { strokes: 1, seconds: 2 } }))), "2 s a stroke");
  assert.equal(strokeWords(one(row(60))), "");
});

test("a setting is the lever or the drag factor", () => {
  assert.equal(settingWords({ lever: 4 }), "lever 4");
  assert.equal(settingWords({ drag_factor: 120 }), "drag factor 120");
  assert.equal(settingWords(undefined), "");
});
