/** One more minute: whole strokes, all after it later, and a session that replays to the same place. */
import assert from "node:assert/strict";
import { test } from "node:test";
import { seconds } from "../../static/src/plan/exact-time.js";
import { canGrow, withOneMoreMinute } from "../../static/src/plan/growing.js";
import type { Call, Segment, Timeline } from "../../static/src/plan/wire.js";
import { cuesBetween } from "../../static/src/timeline/cue-window.js";
import { follow, replay, type Fact } from "../../static/src/timeline/facts.js";
import { advance, lineOf, type State } from "../../static/src/timeline/running.js";
import { placeAt, progressAt } from "../../static/src/timeline/place.js";
import { chance, gap, metres, open, rest, row, timeline } from "./builders.js";

const started: Fact = { kind: "started", at_s: 0, count_in_s: 5 };
const extended = (at_s: number): Fact => ({ kind: "extended", at_s });
const where = (plan: Timeline, facts: Fact[], now_s: number): [string, number, number] => {
  const { phase, index, elapsed_s } = placeAt(plan, replay(plan, facts), now_s);
  return [phase, index, Math.round(elapsed_s * 1e6) / 1e6];
};

test("a block grows by the whole strokes nearest to a minute, at its own stroke", () => {
  // 7 strokes in 20 s are paced at 20/7 s each; 21 of them last exactly 60 s. 3 in 7 s: 26 last 60 2/3 s, 25 only 58 1/3.
  for (const [length, rate, strokes, grown] of [[60, 24, 24, 120], [20, 20, 21, 80], [7, 23, 26, 7 + 26 * (7 / 3)]] as const) {
    const plan = timeline(row(length, rate), rest(30));
    const [block, after] = withOneMoreMinute(plan, 0, 0).segments as [Segment, Segment];
    const before = plan.segments[0]!;
    assert.equal(block.strokes! - before.strokes!, strokes);
    assert.deepEqual(block.stroke, before.stroke);
    assert.equal(block.duration_s, grown);
    assert.equal(after.start_s, grown, "what comes after begins later");
    assert.equal(block.duration[0] * block.stroke![1], block.strokes! * block.stroke![0] * block.duration[1], "exactly whole strokes");
  }
});

test("a rest and a gap grow by 60 s, and so does a block without a rate", () => {
  for (const draft of [rest(30), gap(30), row(30)]) {
    assert.equal(withOneMoreMinute(timeline(draft, row(60, 24)), 0, 0).segments[0]!.duration_s, 90);
  }
});

test("what is rowed to a distance or until one likes cannot grow", () => {
  const plan = timeline(metres(500, 110, 28), rest(30), open(20));
  assert.deepEqual([0, 1, 2].map((index) => canGrow(plan, plan, index, 0)), [false, true, false]);
});

test("the totals and the metres grow with it", () => {
  const plan = timeline(row(60, 24, { target: { split_s: 120 }, metres: 250 }), rest(30));
  const grown = withOneMoreMinute(plan, 0, 0);
  assert.deepEqual([grown.totals.seconds_s, grown.totals.strokes, grown.segments[0]!.metres], [150, 48, 500]);
  assert.equal(plan.segments[0]!.duration_s, 60, "the planned timeline stays as it is");
});

/** A block of 60 s at r24, so 24 strokes of 2.5 s, with these calls. */
function called(...calls: Call[]): Timeline {
  const placed = calls.map(({ text, stroke, strokes_left }) => {
    const at = stroke ?? 24 - strokes_left! + 1;
    return { text, stroke: at, at_s: (at - 1) * 2.5, seconds: 1, rank: 2 };
  });
  const plan = timeline(row(60, 24, { calls: placed, place: "/parts/0/blocks/0" } as object), rest(30));
  return { ...plan, plan: { ...plan.plan, parts: [{ kind: "main", blocks: [{ for: { seconds: 60 }, rate: 24, calls }] }] } };
}

test("calls counted from the end stay so far from it, the others stay where they are", () => {
  const plan = called({ text: "Long arms", stroke: 5 }, { text: "Ten to go", strokes_left: 10 }, { text: "Sit tall", stroke: 12 });
  const { calls } = withOneMoreMinute(plan, 0, 0).segments[0]!;
  assert.deepEqual(calls.map(({ text, stroke, at_s }) => [text, stroke, at_s]), [["Long arms", 5, 10], ["Sit tall", 12, 27.5], ["Ten to go", 39, 95]]);
});

test("a call that now meets another yields to it, so that two are never said at once", () => {
  // 24 from the end was the first stroke; a minute later it is the 25th, where another call stands.
  const plan = called({ text: "Ten to go", strokes_left: 24 });
  const meets = { ...plan, segments: plan.segments.with(0, { ...plan.segments[0]!, calls: [...plan.segments[0]!.calls, { text: "Hold it", stroke: 25, at_s: 60, seconds: 1, rank: 2 }] }) };
  assert.equal(withOneMoreMinute(meets, 0, 0).segments[0]!.calls.length, 1);
});

const simple = timeline(row(60, 24), rest(30), row(60, 24));

test("a minute more of what runs puts off all that comes after it", () => {
  assert.deepEqual(where(simple, [started, extended(20)], 70), ["running", 0, 65]);
  assert.deepEqual(where(simple, [started, extended(20)], 124.5), ["running", 0, 119.5]);
  assert.deepEqual(where(simple, [started, extended(20)], 126), ["running", 1, 1]);
  assert.deepEqual(where(simple, [started, extended(20), extended(130)], 220), ["running", 2, 5]);
  assert.deepEqual(where(simple, [started, extended(20)], 215), ["finished", 2, 60]);
});

test("in a hold and in a count-in the block that is meant grows", () => {
  assert.deepEqual(where(simple, [started, { kind: "held", at_s: 20 }, extended(40), { kind: "went-on", at_s: 60, count_in_s: 0 }], 130), ["running", 0, 85]);
  assert.deepEqual(where(simple, [started, extended(2)], 100), ["running", 0, 95]);
});

test("no block grows by more than ten minutes", () => {
  const facts = [started, ...Array.from({ length: 14 }, (_, at) => extended(10 + at))];
  assert.equal(lineOf(simple, replay(simple, facts)).segments[0]!.duration_s, 660);
});

test("back and skip go with it: a block that grew stays so long", () => {
  const facts: Fact[] = [started, extended(20), { kind: "skipped", at_s: 30, count_in_s: 0 }, { kind: "stepped-back", at_s: 31 }];
  assert.deepEqual(where(simple, facts, 140), ["running", 0, 109]);
  assert.deepEqual(where(simple, facts, 152), ["running", 1, 1]);
});

test("a block rowed before it grew was as long as it then was", () => {
  // Rowed whole in 60 s, gone back to from the rest, and only then made longer.
  const facts: Fact[] = [started, { kind: "stepped-back", at_s: 66 }, extended(70)];
  assert.deepEqual(where(simple, facts.slice(0, 1), 64), ["running", 0, 59]);
  const state = replay(simple, facts);
  assert.deepEqual(state.stints.map(({ index, from_s, to_s }) => [index, from_s, to_s]), [[0, 0, 60], [1, 0, 1]]);
  assert.deepEqual(where(simple, facts, 180), ["running", 0, 114]);
});

test("what is taken back of a tap leaves a minute that was added", () => {
  const plan = timeline(open(20), row(60, 24), rest(30));
  const facts: Fact[] = [started, { kind: "tapped", at_s: 50, ago_s: 0, count_in_s: 0 }, extended(52), { kind: "stepped-back", at_s: 54 }, { kind: "tapped", at_s: 100, ago_s: 0, count_in_s: 0 }];
  assert.deepEqual(where(plan, facts, 210), ["running", 1, 110]);
});

const withGap = timeline(row(60, 24), gap(300), row(60, 30));

test("a gap that is over has its minute from now on, and a start set by the clock moves with it", () => {
  assert.deepEqual(where(withGap, [started, extended(400)], 459), ["running", 1, 394]);
  assert.deepEqual(where(withGap, [started, extended(400)], 461), ["waiting", 1, 396]);
  const set: Fact[] = [started, { kind: "start-set", at_s: 100, start_s: 200 }, extended(197)];
  assert.deepEqual(where(withGap, set, 254), ["running", 1, 189]);
  assert.deepEqual(where(withGap, set, 261), ["running", 2, 1]);
});

test("after an absence one goes on in the block as it had grown", () => {
  const facts: Fact[] = [started, extended(20), { kind: "returned", at_s: 400, since_s: 100, how: "where-stopped", count_in_s: 0 }];
  assert.deepEqual(where(simple, facts, 420), ["running", 0, 115]);
});

test("the last strokes are told at the new end", () => {
  const cues = (facts: Fact[]) => cuesBetween(simple, replay(simple, facts), 20, 130).filter(({ kind }) => kind === "last").map(({ at_s }) => at_s);
  assert.deepEqual(cues([started]), [62.5]);
  assert.deepEqual(cues([started, extended(20)]), [122.5]);
});

test("how much lies behind is a share of the session as it is now", () => {
  const state = replay(simple, [started, extended(20)]);
  assert.equal(progressAt(lineOf(simple, state), placeAt(simple, state, 110)), 0.5);
});

test("whatever happens meanwhile, no place lies outside, starts follow one another, and a replay comes to the same", () => {
  const next = chance(31);
  for (let round = 0; round < 600; round += 1) {
    const plan = [simple, withGap, timeline(row(40, 23), row(31, 29), rest(20), metres(300, 60, 30), row(25, 33))][round % 3]!;
    const facts: Fact[] = [started];
    let state: State = replay(plan, facts);
    for (let at_s = 0, count = 0; count < 12; count += 1) {
      at_s += next() * 50;
      const kinds: Fact[] = [
        extended(at_s), extended(at_s), { kind: "held", at_s }, { kind: "went-on", at_s, count_in_s: 5 }, { kind: "skipped", at_s, count_in_s: 0 },
        { kind: "stepped-back", at_s }, { kind: "tapped", at_s, ago_s: next() * 9, count_in_s: 0 }, { kind: "start-set", at_s, start_s: at_s + next() * 30 },
      ];
      const fact = kinds[Math.floor(next() * kinds.length)]!;
      facts.push(fact);
      const before = placeAt(plan, state, at_s);
      state = follow(plan, state, fact);
      const after = placeAt(plan, state, at_s);
      if (fact.kind === "extended") {
        const pushedOff = before.index === after.index + 1 && before.count_in_s !== null;
        assert.ok(pushedOff || (after.index === before.index && Math.abs(after.elapsed_s - before.elapsed_s) < 1e-9), "the place itself stays");
      }
      const { segments, totals } = lineOf(plan, state);
      segments.forEach((segment, index) => {
        const end_s = seconds(segment.start) + seconds(segment.duration);
        assert.ok(Math.abs(end_s - (segments[index + 1]?.start_s ?? totals.seconds_s)) < 1e-9);
        assert.ok(segment.kind === "gap" || segment.duration_s - plan.segments[index]!.duration_s <= 600 + 1e-6);
        if (segment.stroke) assert.ok(Math.abs(segment.strokes! * seconds(segment.stroke) - segment.duration_s) < 1e-9);
      });
      assert.ok(after.elapsed_s >= 0 && (segments[after.index]!.waits || after.elapsed_s <= segments[after.index]!.duration_s + 1e-9));
    }
    assert.deepEqual(placeAt(plan, replay(plan, facts), state.since_s + 7), placeAt(plan, advance(plan, state, state.since_s + 3), state.since_s + 7));
  }
});
