/** The figures of the row screen, and which of them is largest. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { faceOf, type Place } from "../../static/src/components/row-face.js";
import type { FigureKind } from "../../static/src/data/preferences.js";
import { guess, metres, open, rest, row, timeline } from "./builders.js";

const place = (more: Partial<Place> = {}): Place => ({ elapsed_s: 12, left_s: 18, stroke: 5, strokes_left: 8, ...more });

const faceAt = (line: ReturnType<typeof timeline>, now: Place, index = 0, biggest: FigureKind = "time") =>
  faceOf(line, line.segments[index]!, now, biggest);

test("a block on the clock shows the time left, the rate and the strokes left", () => {
  const { big, left, right } = faceAt(timeline(row(30, 26)), place());
  assert.deepEqual([big.text, big.note, left.text, right.text, right.note], ["0:18", "", "26", "8", "strokes left"]);
});

test("the last stroke is one stroke", () => {
  assert.equal(faceAt(timeline(row(30, 26)), place({ strokes_left: 1 })).right.note, "stroke left");
});

test("a metre block with a known split shows the time left, said to be about so", () => {
  const { big } = faceAt(timeline(metres(2000, 462, 30)), place({ left_s: 402 }));
  assert.deepEqual([big.text, big.note], ["6:42", "left of 2000 m, about; then press Done"]);
});

test("a metre block about whose time nothing is known shows no time", () => {
  const { big, right } = faceAt(timeline(guess(500, 120, 24)), place({ left_s: null, strokes_left: null }));
  assert.match(big.note, /press Done/);
  assert.deepEqual([right.text, right.note], ["5", "strokes done"]);
});

test("an open block counts up", () => {
  assert.equal(faceAt(timeline(open(20)), place({ elapsed_s: 75, left_s: null, strokes_left: null })).big.text, "1:15");
});

test("a rest has no strokes", () => {
  const { left, right } = faceAt(timeline(rest(60)), place({ stroke: null, strokes_left: null }));
  assert.deepEqual([left.text, right.text, left.note], ["", "", "get your breath back"]);
});

const RUN = timeline(...[1, 2, 3, 4].map(() => metres(500, 117, 28, { target: { split_offset_s: 0, split_s: 117 } })));

test("metre blocks without a rest are one piece: what is left of all of it is said, and the last one asks for the whole", () => {
  const note = (index: number) => faceAt(RUN, place({ left_s: 100 }), index).big.note;
  assert.equal(note(0), "left of this 500 m, about; 7:31 left of 2000 m");
  assert.equal(note(2), "left of this 500 m, about; 3:37 left of 2000 m");
  assert.equal(note(3), "left of 2000 m, about; then press Done");
});

test("without a split, a run of metre blocks names the metres that are to be reached by the next Done", () => {
  const line = timeline(guess(500, 120, 24), guess(500, 120, 24));
  const said = (index: number) => faceAt(line, place({ left_s: null, strokes_left: null }), index).big;
  assert.deepEqual([said(0).text, said(1).text], ["500m", "1000m"]);
  assert.equal(said(0).note, "of 1000 m, 0:12 in this 500 m: press Done when that many are rowed");
  assert.equal(said(1).note, "in all, 0:12 in this 500 m: press Done when that many are rowed");
});

test("a run of metre blocks past its estimate asks for the whole", () => {
  assert.equal(faceAt(RUN, place({ left_s: null, strokes_left: null }), 3).big.text, "2000m");
});

const texts = ({ big, left, right }: ReturnType<typeof faceOf>) => [big, left, right].map(({ kind, text }) => `${kind} ${text}`);

test("the chosen figure is largest, and the time stands where that stood", () => {
  const line = timeline(row(30, 26, { target: { split_s: 125 } }));
  assert.deepEqual(texts(faceAt(line, place(), 0, "strokes")), ["strokes 8", "rate 26", "time 0:18"]);
  assert.deepEqual(texts(faceAt(line, place(), 0, "rate")), ["rate 26", "time 0:18", "strokes 8"]);
  const split = faceAt(line, place(), 0, "split");
  assert.deepEqual(texts(split), ["split 2:05.0", "rate 26", "time 0:18"]);
  assert.equal(split.right.note, "left, 8 strokes");
});

test("a block without the chosen figure shows the time largest", () => {
  const nothing = place({ stroke: null, strokes_left: null });
  for (const biggest of ["strokes", "rate", "split"] as const) {
    assert.equal(faceAt(timeline(rest(60)), nothing, 0, biggest).big.kind, "time");
  }
  assert.equal(faceAt(timeline(guess(500, 120, 24)), place({ left_s: null, strokes_left: null }), 0, "strokes").big.kind, "time", "strokes done are not strokes left");
});

test("a small time says what it is", () => {
  const note = (line: ReturnType<typeof timeline>, now: Partial<Place>) => faceAt(line, place(now), 0, "rate").left.note;
  assert.equal(note(timeline(row(30, 26)), {}), "left");
  assert.equal(note(timeline(open(20)), { left_s: null }), "rowed");
  assert.equal(note(timeline(metres(500, 117, 28)), {}), "left, about");
  assert.equal(note(timeline(guess(500, 120, 24)), { left_s: null }), "then press Done");
});
