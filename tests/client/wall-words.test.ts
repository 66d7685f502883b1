/** What a wall says, and what is typed about the screen that it is on. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { barProblem, diagonalByBar, diagonalProblem, distanceProblem, readWords } from "../../static/src/components/sight-words.js";
import { heardWords, laneAsked, placeWords, troubleAfar, wallFace, wholeLeft, type WallMoment } from "../../static/src/components/wall-words.js";
import { byClock } from "../../static/src/timeline/by-clock.js";
import { timeOfDay } from "../../static/src/state/time-of-day.js";
import { NoAnswer, Refused } from "../../static/src/data/api.js";
import { twoKFrom } from "../../static/src/plan/prediction.js";
import { gap, metres, rest, row, timeline } from "./builders.js";

const running: WallMoment = { phase: "running", elapsed_s: 12, left_s: 48, strokes_left: 19, count_in: null, starts_at: "", call: "" };
const plan = byClock(timeline(
  row(60, 24, { target: { pressure: "half", talk: "whole sentences" }, focus: "Long arms" }), rest(60), gap(300), metres(500, 120, 28),
));
const [block, pause, wait, distance] = plan.segments;
const television = { width: 1920, height: 1080 };

test("a block says its time left, rate, effort and strokes, and the focus where no call is said", () => {
  assert.deepEqual(wallFace(block!, running), {
    before: "", figure: "0:48", note: "", rate: "24", effort: "half · talk in whole sentences", strokes: "19", strokes_note: "strokes left", call: "Long arms",
  });
  assert.equal(wallFace(block!, { ...running, call: "Slow up the slide" }).call, "Slow up the slide");
  assert.equal(wallFace(block!, { ...running, strokes_left: 1 }).strokes_note, "stroke left");
});

test("a rest, a gap and a piece in metres say what their time is", () => {
  const idle = { ...running, strokes_left: null };
  assert.deepEqual([wallFace(pause!, idle).note, wallFace(pause!, idle).call], ["rest", "Rest, time to stand up"]);
  assert.deepEqual([wallFace(wait!, idle).note, wallFace(wait!, idle).call], ["to the start", "Stand up, walk, drink."]);
  assert.equal(wallFace(distance!, running).note, "for 500 m, by the slowest here");
});

test("a count-in is counted, and a long wait for a start that was set is told as a time", () => {
  const counting = { ...running, phase: "count-in" as const, left_s: null };
  const counted = (moment: Partial<WallMoment>) => {
    const { before, figure, note } = wallFace(block!, { ...counting, ...moment });
    return [before, figure, note];
  };
  assert.deepEqual(counted({ count_in: 30, elapsed_s: 0 }), ["First catch in", "30", ""]);
  assert.deepEqual(counted({ count_in: 5, elapsed_s: 12 }), ["Next catch in", "5", ""]);
  assert.deepEqual(counted({ count_in: 754, elapsed_s: 0, starts_at: "18:00" }), ["", "12:34", "to the start at 18:00"]);
  assert.deepEqual(counted({ count_in: 10, elapsed_s: 0, starts_at: "18:00" }), ["First catch in", "10", ""]);
});

test("a hold is said", () => {
  assert.equal(wallFace(block!, { ...running, phase: "held", call: "Slow up the slide" }).call, "Held. The clock stands still.");
});

test("where we are, and what is left of the whole", () => {
  assert.equal(placeWords(plan, block!), "Main piece · block 1 of 4");
  assert.equal(placeWords(plan, wait!), "Gap");
  assert.equal(wholeLeft(plan, block!, 12), "8:48");
  assert.equal(wholeLeft(plan, distance!, 500), "0:00");
});

test("a lane is asked a split in whole seconds and watts, or what it goes by", () => {
  assert.deepEqual(laneAsked(block, { split_s: 118.5, watts: 210.4 }, null), { split: "1:59", watts: "210", words: "" });
  assert.deepEqual(laneAsked(block, { pressure: "half" }, null), { split: "", watts: "", words: "half" });
  assert.deepEqual(laneAsked(block, undefined, null).words, "by feel");
  assert.deepEqual([laneAsked(pause, { split_s: 100 }, null).words, laneAsked(undefined, undefined, null).words], ["rest", "end"]);
});

test("a lane whose split lies outside what anybody can be asked for says on which side", () => {
  const slow = twoKFrom({ metres: 2000, seconds: 1200 });
  const easy = { pressure: "light" as const, two_k_power_fraction: 0.3 };
  // 5:00 x 0.3^(-1/3) is 7:28 per 500 m: the cubic of power and pace
  assert.deepEqual(laneAsked(block, easy, slow), { split: "6:00+", watts: "", words: "light" });
  assert.equal(laneAsked(block, { split_offset_s: 61 }, slow).split, "6:00+");
  assert.equal(laneAsked(block, { split_offset_s: -40 }, twoKFrom({ metres: 2000, seconds: 392 })).split, "<1:00");
  assert.deepEqual([laneAsked(block, easy, null).split, laneAsked(block, { change_s: -2 }, slow).split], ["", ""]);
});

test("a wall led from afar says what its server answers, and no signal only where nothing is answered", () => {
  const at_ms = new Date(2026, 0, 5, 18, 3, 12).getTime();
  const gone = troubleAfar(new Refused(404, "there is no wall of that name on this server", []))!;
  assert.match(gone.words, /there is no wall of that name/);
  assert.match(troubleAfar(new Refused(429, "more than 600 looks", []))!.brief, /too often/);
  assert.match(troubleAfar(new TypeError("no room"), "Ladder")!.words, /“Ladder”.*no room.*tried again/);
  assert.equal(troubleAfar(new NoAnswer("no answer came")), undefined);
  const heard = { at_ms, gone: true };
  assert.match(heardWords(heard, undefined).long, /^No signal: last heard/);
  assert.equal(heardWords(heard, undefined).brief, `no signal since ${timeOfDay(at_ms)}`, "short, so that it stands whole in the head");
  assert.doesNotMatch(heardWords(heard, gone).long + heardWords(heard, gone).brief, /signal/i);
  assert.equal(heardWords(heard, gone).brief, `no such wall on the server · heard ${new Date(at_ms).toLocaleTimeString([], { hour12: false })}`);
  assert.match(heardWords({ at_ms, gone: false }, undefined).brief, /^heard /);
  assert.equal(heardWords(undefined, undefined).brief, "");
});

test("what cannot be a distance or a screen is refused in words", () => {
  assert.deepEqual([distanceProblem("5"), distanceProblem("2,5"), diagonalProblem("55", "inches"), barProblem("62", television)], ["", "", "", ""]);
  for (const text of ["", "0", "five", "-3", "500", "1e9"]) assert.match(distanceProblem(text), /^Write metres from 0.5 to 20/);
  assert.equal(diagonalProblem("1", "inches"), "Write the diagonal in inches, from 4 to 394: “1” cannot be it.");
  assert.match(barProblem("0", television), /“0” cannot be it/);
});

test("a bar measured with a ruler gives the diagonal", () => {
  // 300 of 2202.9 pixels across, and those 300 are 100 mm long.
  assert.ok(Math.abs(diagonalByBar(100, television) - 734.3) < 0.05);
});

test("what is read from there is said, and from where the rest", () => {
  const near = readWords({ distance_m: 2, diagonal_mm: 1400 }, television, 16);
  assert.equal(near, "From 2 m one reads the time left, rate and strokes, lanes and calls well.");
  const far = readWords({ distance_m: 5, diagonal_mm: 1400 }, television, 0);
  assert.match(far, /^From 5 m one reads the time left and rate and strokes well\. Calls from \d\.?\d? m\.$/);
  assert.match(readWords({ distance_m: 9, diagonal_mm: 150 }, television, 0), /^From 9 m nothing is read well on this screen\. The time left from/);
});
