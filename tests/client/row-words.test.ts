/** What the row screen says at a moment. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { announcement, asksDone, clockWords, comingWords, doneWords, lateWords, faceOf, focusWords, followingWords, wantedOf, whereWords, type Place } from "../../static/src/components/row-words.js";
import { gap, guess, metres, open, rest, row, timeline } from "./builders.js";

const place = (more: Partial<Place> = {}): Place => ({ elapsed_s: 12, left_s: 18, stroke: 5, strokes_left: 8, ...more });

const faceAt = (line: ReturnType<typeof timeline>, now: Place, index = 0) => faceOf(line, line.segments[index]!, now);

test("a block on the clock shows the time left, the rate and the strokes left", () => {
  const face = faceAt(timeline(row(30, 26)), place());
  assert.deepEqual([face.big, face.bigNote, face.rate, face.strokes, face.strokesNote], ["0:18", "", "26", "8", "strokes left"]);
});

test("the last stroke is one stroke", () => {
  assert.equal(faceAt(timeline(row(30, 26)), place({ strokes_left: 1 })).strokesNote, "stroke left");
});

test("a metre block with a known split shows the time left, said to be about so", () => {
  const face = faceAt(timeline(metres(2000, 462, 30)), place({ left_s: 402 }));
  assert.deepEqual([face.big, face.bigNote], ["6:42", "left of 2000 m, about; then press Done"]);
});

test("a metre block about whose time nothing is known shows no time", () => {
  const face = faceAt(timeline(guess(500, 120, 24)), place({ left_s: null, strokes_left: null }));
  assert.match(face.bigNote, /press Done/);
  assert.deepEqual([face.strokes, face.strokesNote], ["5", "strokes done"]);
});

test("an open block counts up", () => {
  assert.equal(faceAt(timeline(open(20)), place({ elapsed_s: 75, left_s: null, strokes_left: null })).big, "1:15");
});

test("a rest has no strokes", () => {
  const face = faceAt(timeline(rest(60)), place({ stroke: null, strokes_left: null }));
  assert.deepEqual([face.rate, face.strokes, face.rateNote], ["", "", "get your breath back"]);
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
  assert.deepEqual(whereWords(line, line.segments[1]!), { block: "block 2 of 2", repetition: "" });
  assert.deepEqual(whereWords(line, line.segments[3]!), { block: "block 1 of 1", repetition: "" });
});

test("a set counts its repetitions", () => {
  const line = timeline(row(30, 30, { repetition: { number: 2, times: 6 } }), row(30, 30, { repetition: { number: 1, times: 1 } }));
  assert.equal(whereWords(line, line.segments[0]!).repetition, "repetition 2 of 6");
  assert.equal(whereWords(line, line.segments[1]!).repetition, "");
});

const RUN = timeline(...[1, 2, 3, 4].map(() => metres(500, 117, 28, { target: { split_offset_s: 0, split_s: 117 } })));

test("metre blocks without a rest are one piece: what is left of all of it is said, and the last one asks for the whole", () => {
  const note = (index: number) => faceAt(RUN, place({ left_s: 100 }), index).bigNote;
  assert.equal(note(0), "left of this 500 m, about; 7:31 left of 2000 m");
  assert.equal(note(2), "left of this 500 m, about; 3:37 left of 2000 m");
  assert.equal(note(3), "left of 2000 m, about; then press Done");
});

test("without a split, a run of metre blocks names the metres that are to be reached by the next Done", () => {
  const line = timeline(guess(500, 120, 24), guess(500, 120, 24));
  const said = (index: number) => faceAt(line, place({ left_s: null, strokes_left: null }), index);
  assert.deepEqual([said(0).big, said(1).big], ["500m", "1000m"]);
  assert.equal(said(0).bigNote, "of 1000 m, 0:12 in this 500 m: press Done when that many are rowed");
  assert.equal(said(1).bigNote, "in all, 0:12 in this 500 m: press Done when that many are rowed");
});

test("Done says that it ends one block of a run, and a tap taken for the block before is told", () => {
  assert.deepEqual([0, 3].map((index) => doneWords(RUN, RUN.segments[index]!)), ["Done with 500 m", "Done"]);
  assert.equal(lateWords(RUN, 3), "Taken as the end of the 500 m before. Done again at the end of this one.");
});

test("a run of metre blocks past its estimate asks for the whole", () => {
  assert.equal(faceAt(RUN, place({ left_s: null, strokes_left: null }), 3).big, "2000m");
});

test("before a run of metre blocks the gap names the whole, and how it begins", () => {
  assert.deepEqual(comingWords(RUN, RUN.segments[0]!), { what: "2000 m in 4 blocks, without a stop", starts: "first 500 m r28 at 2 km split (1:57.0 /500 m)" });
  const line = timeline(metres(2000, 462, 30, { target: { pressure: "race", split_s: 115.5 } }), rest(60));
  assert.deepEqual(comingWords(line, line.segments[0]!), { what: "r30 race · 2000 m", starts: "starts at 1:55.5 /500 m" });
});

test("a question says what the clock does behind it", () => {
  assert.match(clockWords(true), /stands still/);
  assert.match(clockWords(false), /running on/);
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
  assert.equal(announcement(line, line.segments[0]!), "Warm-up: r26 half, 0:30. Quick catch. Next Rest, time to stand up · 1:00.");
});
