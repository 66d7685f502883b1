/** What the row screen says at a moment. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { announcement, asksDone, faceOf, focusWords, followingWords, wantedOf, whereWords } from "../../static/src/components/row-words.js";
import { gap, guess, metres, open, rest, row, timeline } from "./builders.js";

const place = (more: Partial<Parameters<typeof faceOf>[1]> = {}) => ({ elapsed_s: 12, left_s: 18, stroke: 5, strokes_left: 8, ...more });

test("a block on the clock shows the time left, the rate and the strokes left", () => {
  const face = faceOf(timeline(row(30, 26)).segments[0]!, place());
  assert.deepEqual([face.big, face.bigNote, face.rate, face.strokes, face.strokesNote], ["0:18", "", "26", "8", "strokes left"]);
});

test("the last stroke is one stroke", () => {
  assert.equal(faceOf(timeline(row(30, 26)).segments[0]!, place({ strokes_left: 1 })).strokesNote, "stroke left");
});

test("a metre block with a known split shows the time left, said to be about so", () => {
  const face = faceOf(timeline(metres(2000, 462, 30)).segments[0]!, place({ left_s: 402 }));
  assert.deepEqual([face.big, face.bigNote], ["6:42", "left of 2000m, about; then press Done"]);
});

test("a metre block about whose time nothing is known shows no time", () => {
  const face = faceOf(timeline(guess(500, 120, 24)).segments[0]!, place({ left_s: null, strokes_left: null }));
  assert.match(face.bigNote, /press Done/);
  assert.deepEqual([face.strokes, face.strokesNote], ["5", "strokes done"]);
});

test("an open block counts up", () => {
  assert.equal(faceOf(timeline(open(20)).segments[0]!, place({ elapsed_s: 75, left_s: null, strokes_left: null })).big, "1:15");
});

test("a rest has no strokes and says to sit still", () => {
  const face = faceOf(timeline(rest(60)).segments[0]!, place({ stroke: null, strokes_left: null }));
  assert.deepEqual([face.rate, face.strokes, face.rateNote], ["", "", "sit still, breathe"]);
});

test("only metre and open blocks ask for Done", () => {
  const segments = timeline(row(30, 20), metres(500, 120, 20), open(20), rest(30)).segments;
  assert.deepEqual(segments.map(asksDone), [false, true, true, false]);
});

test("a change of the machine is told with what comes next", () => {
  const line = timeline(row(30, 20), row(30, 24, { setting: { lever: 5 } }), row(30, 20));
  assert.equal(followingWords(line, line.segments[0]!), "set lever 5, then r24 · 0:30");
  assert.equal(followingWords(line, line.segments[2]!), "the end");
});

test("blocks are counted within their part", () => {
  const line = timeline(row(30, 20), row(30, 22), { ...gap(60), part_index: 1 }, row(60, 30, { part_index: 2 }));
  assert.equal(whereWords(line, line.segments[1]!), "2 of 2");
  assert.equal(whereWords(line, line.segments[3]!), "1 of 1");
});

test("a split stands with its effort and what can be said aloud; an effort that is the split is not said twice", () => {
  const wanted = (target: object) => wantedOf(timeline(row(30, 20, { target })).segments[0]!);
  assert.deepEqual(wanted({ pressure: "half", split_s: 147.8, talk: "easy talk" }), { split: "2:27.8", effort: "half", talk: "easy talk" });
  assert.deepEqual(wanted({ split_s: 115.5 }), { split: "1:55.5", effort: "", talk: "" });
});

test("the drill comes before the focus", () => {
  const segment = timeline(row(60, 18, { kind: "drill", drill: { name: "one foot", side: 2, sides: 2 }, focus: "Knee over the toes" })).segments[0]!;
  assert.equal(focusWords(segment), "one foot, side 2 of 2: Knee over the toes");
});

test("those who hear the screen are told the block, the focus and what is next", () => {
  const line = timeline(row(30, 26, { target: { pressure: "half" }, focus: "Quick catch", part: "warm-up" }), rest(60));
  assert.equal(announcement(line, line.segments[0]!), "Warm-up: r26 half, 0:30. Quick catch. Next Rest, sit still · 1:00.");
});
