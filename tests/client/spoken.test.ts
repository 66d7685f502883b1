/** What a voice says: the next block 6 to 10 s ahead, never over a change, never two things at once. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { announcements, spokenSeconds } from "../../static/src/plan/spoken-words.js";
import type { Timeline } from "../../static/src/plan/wire.js";
import { replay, type Fact } from "../../static/src/timeline/facts.js";
import { spokenBetween, type Spoken } from "../../static/src/timeline/spoken.js";
import { chance, gap, metres, open, rest, row, timeline } from "./builders.js";

const started: Fact = { kind: "started", at_s: 0, count_in_s: 10 };
const all = (plan: Timeline, facts: Fact[] = [started], from_s = 0, to_s = 10_000): Spoken[] => spokenBetween(plan, replay(plan, facts), from_s, to_s);
const call = (at_s: number, text: string) => ({ at_s, text, seconds: 1, rank: 2 });

test("a block is named by length, rate and effort, in words that are said", () => {
  const [first] = timeline(row(180, 20, { target: { pressure: "half", split_s: 125.3 } })).segments;
  assert.equal(announcements(first!)[0], "Next, 3 minutes, rate 20, half pressure, split 2 oh 5.");
  const [strokes, piece, wait, drill] = timeline(
    row(20, 30, { ends: "strokes", target: { pressure: "full" }, setting: { lever: 4 } }), metres(500, 120, 28, { target: { split_s: 120 } }),
    rest(90), row(20, 18, { kind: "drill", drill: { name: "one foot", side: 2, sides: 2 } }),
  ).segments;
  assert.equal(announcements(strokes!)[0], "Set the lever to 4, Next, 10 strokes, rate 30, full pressure.");
  assert.equal(announcements(piece!)[0], "Next, 500 metres, rate 28, split 2 flat.");
  assert.equal(announcements(wait!)[0], "Rest, 1 minute 30.");
  assert.equal(announcements(drill!)[0], "Next, 20 seconds, rate 18, one foot, side 2.");
});

test("the next block is named 6 to 10 s before it begins, and the end too", () => {
  const said = all(timeline(row(60, 20), row(60, 24), rest(30)));
  assert.deepEqual(said.map(({ text }) => text), ["Next, 1 minute, rate 20.", "Next, 1 minute, rate 24.", "Rest, 30 seconds.", "Then it is done."]);
  for (const [index, change_s] of [10, 70, 130, 160].entries()) {
    const ahead_s = change_s - said[index]!.at_s;
    assert.ok(ahead_s >= 6 && ahead_s <= 10, `${ahead_s} s ahead`);
    assert.equal(said[index]!.silent_s, change_s);
  }
});

test("a short block leaves room for a short form only, and a shorter one for none", () => {
  const long = row(60, 28, { target: { pressure: "three-quarter", split_s: 111 }, setting: { drag_factor: 120 }, focus: "Long" });
  assert.equal(all(timeline(row(60, 20), row(7, 24), long)).at(-2)!.text, "Rate 28, three-quarter pressure, split 1 51.");
  assert.deepEqual(all(timeline(row(60, 20), row(5, 24), row(60, 20)), [started], 75, 76), []);
});

test("a gap or a piece that waits for a tap names nothing at a time that nobody knows", () => {
  assert.deepEqual(all(timeline(row(60, 20), gap(300), row(60, 28))).map(({ text }) => text), ["Next, 1 minute, rate 20.", "Next, off the machine, 5 minutes."]);
  assert.equal(all(timeline(open(20), rest(30))).length, 1);
});

test("the count-in after a gap names the piece", () => {
  const plan = timeline(row(60, 20), gap(300), row(60, 28));
  const said = all(plan, [started, { kind: "tapped", at_s: 400, ago_s: 0, count_in_s: 10 }], 400);
  assert.deepEqual([said[0]!.text, said[0]!.at_s], ["Next, 1 minute, rate 28.", 404]);
});

test("calls are said on their strokes and yield to the next block", () => {
  const plan = timeline(row(60, 20, { calls: [call(15, "Long arms"), call(52, "Legs first, then the back")] }), row(60, 24));
  assert.deepEqual(all(plan).map(({ kind, text, at_s }) => [kind, text, at_s]).slice(1, 3), [["call", "Long arms", 25], ["next", "Next, 1 minute, rate 24.", 64]]);
});

test("a hold says nothing, and going on says only what is still to come", () => {
  const plan = timeline(row(60, 20, { calls: [call(15, "Long arms")] }), row(60, 24));
  const held: Fact[] = [started, { kind: "held", at_s: 40 }];
  assert.deepEqual(all(plan, held, 40), []);
  const on = all(plan, [...held, { kind: "went-on", at_s: 50, count_in_s: 5 }], 50);
  assert.deepEqual(on.map(({ kind }) => kind), ["next", "next"]);
});

test("in any plan nothing said, even if it begins a second late, meets a change or something else that is said", () => {
  for (let seed = 1; seed <= 300; seed += 1) {
    const next = chance(seed);
    const pick = (most: number) => Math.floor(next() * most);
    const drafts = Array.from({ length: 1 + pick(12) }, () =>
      next() < 0.2 ? rest(2 + pick(90))
        : row(3 + pick(120), 16 + pick(20), {
          target: next() < 0.7 ? { pressure: "three-quarter", split_s: 90 + pick(60) } : {},
          ...(next() < 0.3 ? { setting: { lever: 1 + pick(9) } } : {}),
          calls: next() < 0.5 ? [call(pick(100), "Sit tall and let the handle lead you out of the bow")] : [],
        }),
    );
    const plan = timeline(...drafts.map((draft) => ({ ...draft, calls: draft.calls.filter(({ at_s }) => at_s < draft.duration_s) })));
    const said = all(plan);
    const ends = plan.segments.map(({ start_s, duration_s }) => 10 + start_s + duration_s);
    for (const [index, { text, at_s, silent_s }] of said.entries()) {
      const over_s = at_s + spokenSeconds(text);
      assert.ok(over_s + 1 <= silent_s + 1e-9, `seed ${seed}: “${text}” is over at ${over_s}`);
      assert.ok(ends.every((end_s) => end_s <= at_s + 1e-9 || end_s >= silent_s - 1e-9), `seed ${seed}: a change while “${text}” is said`);
      if (said[index + 1]) assert.ok(said[index + 1]!.at_s >= over_s - 1e-9, `seed ${seed}: two at once`);
    }
    const inWindows: Spoken[] = Array.from({ length: 40 }, (_, index) => all(plan, [started], index * 40, (index + 1) * 40)).flat();
    assert.deepEqual(inWindows, said.filter(({ at_s }) => at_s < 1600), `seed ${seed}: each once in windows that touch`);
  }
});

