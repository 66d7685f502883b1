/** Which cues fall between two moments: every one once, at its exact moment. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { cuesBetween, type Cue } from "../../static/src/timeline/cue-window.js";
import { replay, type Fact } from "../../static/src/timeline/facts.js";
import type { Timeline } from "../../static/src/plan/wire.js";
import { chance, gap, metres, open, rest, row, timeline } from "./builders.js";

const started: Fact = { kind: "started", at_s: 0, count_in_s: 5 };

function all(plan: Timeline, facts: Fact[], from_s = 0, to_s = 10_000): Cue[] {
  return cuesBetween(plan, replay(plan, facts), from_s, to_s);
}

const moments = (cues: Cue[], kind: Cue["kind"]) => cues.filter((cue) => cue.kind === kind).map((cue) => Math.round(cue.at_s * 1e6) / 1e6);

test("three ticks count in to the first catch", () => {
  const cues = all(timeline(row(20, 24)), [started]);
  assert.deepEqual(moments(cues, "count-in"), [2, 3, 4]);
  assert.equal(moments(cues, "catch")[0], 5);
});

test("a count-in shorter than its ticks has as many as fit", () => {
  const cues = all(timeline(row(20, 24)), [{ kind: "started", at_s: 0, count_in_s: 1.5 }]);
  assert.deepEqual(moments(cues, "count-in"), [0.5]);
});

test("every stroke has its catch and its finish, and the last two catches are told apart", () => {
  const cues = all(timeline(row(20, 24)), [started]);
  assert.deepEqual(moments(cues, "catch"), [5, 7.5, 10, 12.5, 15, 17.5]);
  assert.deepEqual(moments(cues, "second-last"), [20]);
  assert.deepEqual(moments(cues, "last"), [22.5]);
  assert.deepEqual(moments(cues, "finish"), [6, 8.5, 11, 13.5, 16, 18.5, 21, 23.5]);
});

test("a change falls on the first catch of the next segment, and the session has an end", () => {
  const cues = all(timeline(row(10, 24), row(10, 30)), [started]);
  assert.deepEqual(moments(cues, "change"), [15]);
  assert.deepEqual(moments(cues, "end"), [25]);
});

test("only recoveries longer than 1.8 s have a soft beat, in their middle", () => {
  assert.deepEqual(moments(all(timeline(row(10, 24)), [started]), "between"), []);
  // r18: 10/3 s a stroke, the drive 4/3 s, so the recovery 2 s.
  assert.deepEqual(moments(all(timeline(row(10, 18)), [started]), "between"), [7.333333, 10.666667, 14]);
});

test("ticks lead out of a rest to the handle, but not out of rowing with a beat", () => {
  const cues = all(timeline(row(10, 24), rest(20), row(10, 24)), [started]);
  assert.deepEqual(moments(cues, "count-in"), [2, 3, 4, 32, 33, 34]);
});

test("a metre block that waits has catches for ever and no last strokes; one that goes on has them", () => {
  const waiting = all(timeline(metres(500, 20, 24), rest(30)), [started], 0, 100);
  assert.deepEqual(moments(waiting, "last"), []);
  assert.equal(moments(waiting, "catch").length, 38);
  const going = all(timeline(metres(500, 20, 24), metres(500, 20, 24)), [started], 0, 26);
  assert.deepEqual(moments(going, "last"), [22.5]);
});

test("a gap tells that it is over, unless a start is set: then it counts in", () => {
  const plan = timeline(gap(60), row(20, 24));
  assert.deepEqual(moments(all(plan, [{ ...started, count_in_s: 0 } as Fact]), "change"), [0, 60]);
  const facts: Fact[] = [{ ...started, count_in_s: 0 } as Fact, { kind: "start-set", at_s: 10, start_s: 40 }];
  assert.deepEqual(moments(all(plan, facts), "count-in"), [37, 38, 39]);
  assert.deepEqual(moments(all(plan, facts), "change"), [0, 40]);
});

test("in a hold there is silence, and after it the beat goes on from the catch one was in", () => {
  const plan = timeline(row(60, 24), rest(10));
  const facts: Fact[] = [started, { kind: "held", at_s: 16 }];
  assert.deepEqual(all(plan, facts, 16), []);
  const on = all(plan, [...facts, { kind: "went-on", at_s: 100, count_in_s: 5 }], 100, 111);
  assert.deepEqual(moments(on, "count-in"), [102, 103, 104]);
  assert.deepEqual(moments(on, "catch"), [105, 107.5, 110]);
});

test("over a session of 90 minutes the catches are where the exact fractions say", () => {
  const plan = timeline(...Array.from({ length: 90 }, (_, index) => row(60, 17 + (index % 19))));
  const catches = all(plan, [started]).filter(({ kind }) => ["catch", "change", "second-last", "last"].includes(kind));
  let number = 0;
  for (const segment of plan.segments) {
    for (let stroke = 0; stroke < segment.strokes!; stroke += 1, number += 1) {
      const exact_s = 5 + segment.start_s + (stroke * segment.stroke![0]) / segment.stroke![1];
      assert.ok(Math.abs(catches[number]!.at_s - exact_s) < 1e-9, `stroke ${number}`);
    }
  }
  assert.equal(catches.length, number);
});

test("however the time is cut into windows, no cue is missed and none comes twice", () => {
  const next = chance(21);
  const target = { split_s: 120 };
  const plans = [
    timeline(row(30, 24), rest(12), row(17, 33), row(40, 18)),
    timeline(metres(300, 65, 28), metres(300, 66, 30), rest(20)),
    timeline(row(20, 20), gap(30), row(31, 29, { target })),
    timeline(open(19)),
  ];
  for (let round = 0; round < 400; round += 1) {
    const plan = plans[round % plans.length]!;
    const facts: Fact[] = [started];
    if (round % 3 === 0) facts.push({ kind: "held", at_s: 15 }, { kind: "went-on", at_s: 18, count_in_s: 4 });
    if (round % 4 === 2) facts.push({ kind: "start-set", at_s: 40, start_s: 55 + next() * 20 });
    const state = replay(plan, facts);
    const begin_s = state.since_s;
    const whole = cuesBetween(plan, state, begin_s, 200);
    const cut: Cue[] = [];
    let from_s = begin_s;
    while (from_s < 200) {
      // Some windows end exactly on a cue, which is where one could be lost.
      const on = whole.find((cue) => cue.at_s > from_s);
      const to_s = Math.min(200, next() < 0.4 && on ? on.at_s : from_s + next() * 9);
      cut.push(...cuesBetween(plan, state, from_s, to_s));
      from_s = to_s;
    }
    assert.deepEqual(cut, whole);
    assert.ok(whole.length > 5);
  }
});
