/** The lines of a prompter: what comes, in which order, and in how many seconds. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { comingLines, linesOf, positionOf, waitedBefore } from "../../static/src/components/prompter-lines.js";
import { prompterFrom } from "../../static/src/data/prompter.js";
import { byClock } from "../../static/src/timeline/by-clock.js";
import { gap, metres, rest, row, timeline } from "./builders.js";

const call = (at_s: number, text: string) => ({ at_s, text, seconds: 2, rank: 2 });
const plan = timeline(
  row(60, 24, { focus: "Long arms", calls: [call(10, "Slow up the slide"), call(40, "Legs first")] }),
  rest(30),
  row(60, 26, { setting: { lever: 5 } }),
);
const lines = linesOf(plan);
const seen = (now_s: number, waited = 0, count = 9) => comingLines(lines, now_s, waited, count).map(({ text, in_s }) => [text, in_s]);

test("every block, every call and the end are lines, in the order in which they come", () => {
  assert.deepEqual(lines.map(({ kind, at_s, text }) => [kind, at_s, text]), [
    ["block", 0, "r24 · 1:00"], ["call", 10, "Slow up the slide"], ["call", 40, "Legs first"], ["block", 60, "Rest · 0:30"],
    ["block", 90, "set lever 5, then r26 · 1:00"], ["end", 150, "The end"],
  ]);
  assert.equal(lines[0]!.focus, "Long arms");
});

test("a line counts down to its moment, and stays for a while after it", () => {
  assert.deepEqual(seen(8, 0, 2), [["Slow up the slide", 2], ["Legs first", 32]]);
  assert.deepEqual(seen(12, 0, 1), [["Slow up the slide", -2]]);
  assert.deepEqual(seen(16.5, 0, 1), [["Legs first", 23.5]]);
  assert.deepEqual(seen(62, 0, 1), [["Rest · 0:30", -2]]);
  assert.deepEqual(seen(200), []);
});

test("what comes after a block that waits for a tap has no countdown, until it was tapped", () => {
  const waiting = timeline(row(60, 24), metres(500, 120, 28), rest(30));
  const all = linesOf(waiting);
  const at = (now_s: number, index: number) => comingLines(all, now_s, waitedBefore(waiting, index), 9).map(({ in_s }) => in_s);
  assert.deepEqual(at(50, 0), [10, null, null]);
  assert.deepEqual(at(180, 1), [null, null], "past its estimate");
  assert.deepEqual(at(185, 2), [25]);
});

test("by the clock nothing waits", () => {
  const all = linesOf(byClock(timeline(row(60, 24), gap(60), metres(500, 120, 28))));
  assert.ok(comingLines(all, 0, 0, 9).every(({ in_s }) => in_s !== null));
});

test("the position counts the seconds before a first catch, and a gap by what is left of it", () => {
  const [block] = plan.segments;
  assert.equal(positionOf(block!, { elapsed_s: 0, left_s: null, count_in: 7 }), -7);
  assert.equal(positionOf(block!, { elapsed_s: 12.5, left_s: 47.5, count_in: null }), 12.5);
  const [wait] = timeline(gap(300)).segments;
  assert.equal(positionOf(wait!, { elapsed_s: 100, left_s: 50, count_in: null }), 250, "started by the clock, earlier than planned");
});

test("a choice of text that makes no sense counts as not made", () => {
  const usual = prompterFrom(undefined);
  for (const damaged of [{ version: 1, size: 99, mirrored: false }, { version: 1, size: 2 }, { version: 2, size: 2, mirrored: true }, "large"]) {
    assert.deepEqual(prompterFrom(damaged), usual);
  }
  assert.deepEqual(prompterFrom({ version: 1, size: 5, mirrored: true }), { size: 5, mirrored: true });
});
