/** Where we are at t seconds of a segment. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { catchAt, positionIn, strokeNumber } from "../../static/src/timeline/position.js";
import { chance, gap, guess, metres, open, rest, row, timeline } from "./builders.js";

const only = (...drafts: Parameters<typeof timeline>) => timeline(...drafts).segments[0]!;

test("at r24 a stroke lasts 2.5 s, so that at 6 s two are done (common practice)", () => {
  const position = positionIn(only(row(60, 24)), 6);
  assert.equal(position.stroke, 2);
  assert.equal(position.strokes_left, 22);
  assert.equal(position.left_s, 54);
});

test("drive and recovery take their share of the stroke", () => {
  const segment = only(row(60, 24));
  const drive = positionIn(segment, 5.5).beat!;
  assert.equal(drive.phase, "drive");
  assert.ok(Math.abs(drive.share - 0.2) < 1e-12);
  assert.ok(Math.abs(drive.phase_share - 0.5) < 1e-12);
  const recovery = positionIn(segment, 6.75).beat!;
  assert.equal(recovery.phase, "recovery");
  assert.ok(Math.abs(recovery.phase_share - 0.5) < 1e-12);
});

test("at its end a block has all its strokes, and no beat any more", () => {
  const position = positionIn(only(row(30, 28)), 30);
  assert.deepEqual([position.stroke, position.strokes_left, position.left_s, position.over, position.beat], [14, 0, 0, true, null]);
});

test("exactly at a catch the new stroke has begun", () => {
  const segment = only(row(30, 28));
  for (let number = 0; number < 14; number += 1) {
    assert.equal(strokeNumber(segment, catchAt(segment, number)), number);
    assert.equal(positionIn(segment, catchAt(segment, number)).beat!.share, 0);
  }
});

test("catch number a million is where the exact fraction says, not where a sum of floats went", () => {
  const segment = { ...only(row(30, 28)), stroke: [15, 7] as [number, number] };
  assert.equal(catchAt(segment, 1_000_000), 15_000_000 / 7);
});

test("a metre block past its estimate has no time left, and its beat runs on", () => {
  const segment = only(metres(500, 110, 28), rest(60));
  assert.ok(positionIn(segment, 100).left_s! > 0);
  const past = positionIn(segment, 115);
  assert.deepEqual([past.over, past.left_s, past.strokes_left], [true, null, null]);
  assert.ok(past.beat);
  assert.ok(past.stroke! >= segment.strokes!);
});

test("an open block and a mere guess never have time left, and are never over", () => {
  for (const segment of [only(open(20)), only(guess(2000, 480, 24))]) {
    for (const elapsed_s of [0, 100, 1000]) {
      const position = positionIn(segment, elapsed_s);
      assert.deepEqual([position.left_s, position.strokes_left, position.over], [null, null, false]);
      assert.ok(position.beat);
    }
  }
});

test("a rest and a gap have no beat; a gap stays at zero when it is over", () => {
  assert.equal(positionIn(only(rest(30)), 10).beat, null);
  assert.equal(positionIn(only(rest(30)), 10).stroke, null);
  assert.deepEqual([positionIn(only(gap(60), row(60)), 90).left_s, positionIn(only(gap(60), row(60)), 90).over], [0, true]);
});

test("at any moment the stroke is the one whose catch was last, and the share is between 0 and 1", () => {
  const next = chance(7);
  for (let count = 0; count < 2000; count += 1) {
    const segment = only(row(1 + Math.floor(next() * 600), 10 + Math.floor(next() * 40)));
    const elapsed_s = next() * segment.duration_s;
    const { stroke, beat, strokes_left } = positionIn(segment, elapsed_s);
    assert.ok(catchAt(segment, stroke!) <= elapsed_s && elapsed_s < catchAt(segment, stroke! + 1));
    assert.ok(beat!.share >= 0 && beat!.share <= 1 && beat!.phase_share >= 0 && beat!.phase_share <= 1);
    assert.equal(stroke! + strokes_left!, segment.strokes);
  }
});
