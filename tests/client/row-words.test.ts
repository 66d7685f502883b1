/** What the row screen says at a moment. */
import assert from "node:assert/strict";
import { test } from "node:test";
import type { EffortUnit } from "../../static/src/data/preferences.js";
import { announcement, asksDone, clockWords, comingWords, doneWords, lateWords, focusWords, followingWords, spokenWords, wantedOf, whereWords } from "../../static/src/components/row-words.js";
import { talkWords } from "../../static/src/components/segment-words.js";
import { gap, metres, open, rest, row, timeline } from "./builders.js";

test("only metre and open blocks ask for Done", () => {
  const segments = timeline(row(30, 20), metres(500, 120, 20), open(20), rest(30)).segments;
  assert.deepEqual(segments.map(asksDone), [false, true, true, false]);
});

test("what can still be said is told as a test of talk, on a wall in fewer words", () => {
  assert.deepEqual(["whole sentences", "short phrases", "single words"].map((talk) => talkWords(talk)), ["you can say whole sentences", "you can say short phrases", "you can say single words"]);
  assert.deepEqual([talkWords("whole sentences", "talk in"), talkWords("easy talk"), talkWords("no talk"), talkWords(undefined)], ["talk in whole sentences", "easy talk", "no talk", ""]);
});

test("a change of the machine is told with what comes next", () => {
  const line = timeline(row(30, 20), row(30, 24, { setting: { lever: 5 } }), row(30, 20));
  assert.equal(followingWords(line, line.segments[0]!), "set lever 5, then r24 · 0:30");
  assert.equal(followingWords(line, line.segments[2]!), "the end");
});

test("lost sound is told before what is told beside it, so that changes are still heard", () => {
  assert.equal(spokenWords("Main piece: r20 light.", false, false), "Main piece: r20 light.");
  assert.equal(spokenWords("Main piece: r20 light.", false, true), "Sound is lost. Main piece: r20 light.");
  assert.equal(spokenWords("Main piece: r20 light.", true, true), "Sound is lost. Held. The clock stands still.");
});

test("blocks are counted within their part", () => {
  const line = timeline(row(30, 20), row(30, 22), { ...gap(60), part_index: 1 }, row(60, 30, { part_index: 2 }));
  assert.deepEqual(whereWords(line, line.segments[1]!), { block: "2 of 2", repetition: "" });
  assert.deepEqual(whereWords(line, line.segments[3]!), { block: "1 of 1", repetition: "" });
});

test("a set counts its repetitions", () => {
  const line = timeline(row(30, 30, { repetition: { number: 2, times: 6 } }), row(30, 30, { repetition: { number: 1, times: 1 } }));
  assert.equal(whereWords(line, line.segments[0]!).repetition, "2 of 6");
  assert.equal(whereWords(line, line.segments[1]!).repetition, "");
});

const RUN = timeline(...[1, 2, 3, 4].map(() => metres(500, 117, 28, { target: { split_offset_s: 0, split_s: 117 } })));

test("Done says that it ends one block of a run, and a tap taken for the block before is told", () => {
  assert.deepEqual([0, 3].map((index) => doneWords(RUN, RUN.segments[index]!)), ["Done with 500 m", "Done"]);
  assert.equal(lateWords(RUN, 3), "Taken as the end of the 500 m before. Done again at the end of this one.");
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
  assert.deepEqual(wanted({ pressure: "half", split_s: 147.8, talk: "easy talk" }), { figure: "2:27.8", unit: "/500\u00a0m", effort: "half", talk: "easy talk" });
  assert.deepEqual(wanted({ split_s: 115.5 }), { figure: "1:55.5", unit: "/500\u00a0m", effort: "", talk: "" });
});

test("the effort stands in the unit that was chosen, and where that is not known in the plan's own words", () => {
  const target = { pressure: "half", split_s: 147.8, watts: 108.4, two_k_power_fraction: 0.48 } as const;
  const wanted = (unit: EffortUnit, of: object = target) => {
    const { figure, unit: shown, effort } = wantedOf(timeline(row(30, 20, { target: of })).segments[0]!, unit);
    return [figure, shown, effort];
  };
  assert.deepEqual(wanted("watts"), ["108", "W", "half"]);
  assert.deepEqual(wanted("two-k-power"), ["48 %", "of 2 km power", "half"]);
  assert.deepEqual(wanted("words"), ["", "", "half"]);
  assert.deepEqual(wanted("watts", { pressure: "half" }), ["", "", "half"]);
  assert.deepEqual(wanted("two-k-power", { two_k_power_fraction: 0.65 }), ["65 %", "of 2 km power", ""], "not said twice");
  assert.deepEqual(wanted("words", { two_k_power_fraction: 0.65 }), ["", "", "65 % of 2 km power"]);
});

test("the drill comes before the focus", () => {
  const segment = timeline(row(60, 18, { kind: "drill", drill: { name: "one foot", side: 2, sides: 2 }, focus: "Knee over the toes" })).segments[0]!;
  assert.equal(focusWords(segment), "one foot, side 2 of 2: Knee over the toes");
});

test("those who hear the screen are told the block, the focus and what is next", () => {
  const line = timeline(row(30, 26, { target: { pressure: "half" }, focus: "Quick catch", part: "warm-up" }), rest(60));
  assert.equal(announcement(line, line.segments[0]!), "Warm-up: r26 half, 0:30. Quick catch. Next Rest, time to stand up · 1:00.");
});
