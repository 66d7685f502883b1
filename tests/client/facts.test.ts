/** Timed facts to the place they put us in. */
import assert from "node:assert/strict";
import { test } from "node:test";
import type { Timeline } from "../../static/src/plan/wire.js";
import { follow, replay, type Fact } from "../../static/src/timeline/facts.js";
import { advance, type State } from "../../static/src/timeline/running.js";
import { placeAt, progressAt } from "../../static/src/timeline/place.js";
import { piecesOf, rowedWhole, sumsOf } from "../../static/src/timeline/rowed.js";
import { chance, gap, guess, metres, open, rest, row, timeline } from "./builders.js";

const started: Fact = { kind: "started", at_s: 0, count_in_s: 5 };
const held = (at_s: number): Fact => ({ kind: "held", at_s });
const wentOn = (at_s: number, count_in_s = 5): Fact => ({ kind: "went-on", at_s, count_in_s });
const skipped = (at_s: number, count_in_s = 0): Fact => ({ kind: "skipped", at_s, count_in_s });
const back = (at_s: number): Fact => ({ kind: "stepped-back", at_s });
const tapped = (at_s: number, ago_s = 0, count_in_s = 0): Fact => ({ kind: "tapped", at_s, ago_s, count_in_s });
const startSet = (at_s: number, start_s: number | null): Fact => ({ kind: "start-set", at_s, start_s });
const ended = (at_s: number): Fact => ({ kind: "ended", at_s });
const returned = (at_s: number, since_s: number, how: "by-clock" | "where-stopped", count_in_s = 0): Fact => {
  return { kind: "returned", at_s, since_s, how, count_in_s };
};

/** Phase, segment and seconds in it, to the millionth. */
function where(plan: Timeline, facts: Fact[], now_s: number): [string, number, number] {
  const { phase, index, elapsed_s } = placeAt(plan, replay(plan, facts), now_s);
  return [phase, index, Math.round(elapsed_s * 1e6) / 1e6];
}

const simple = timeline(row(60, 24), rest(30), row(60, 24));

test("before the first catch we count in, then the segments follow by themselves", () => {
  assert.deepEqual(where(simple, [], 10), ["ready", 0, 0]);
  assert.deepEqual(where(simple, [started], 2), ["count-in", 0, 0]);
  assert.equal(placeAt(simple, replay(simple, [started]), 2).count_in_s, 3);
  assert.deepEqual(where(simple, [started], 5), ["running", 0, 0]);
  assert.deepEqual(where(simple, [started], 64.5), ["running", 0, 59.5]);
  assert.deepEqual(where(simple, [started], 65), ["running", 1, 0]);
  assert.deepEqual(where(simple, [started], 100), ["running", 2, 5]);
  assert.deepEqual(where(simple, [started], 155), ["finished", 2, 60]);
});

test("back soon after a tap takes the tap back: the block goes on as if nothing had been tapped", () => {
  const plan = timeline(guess(2000, 480, 24), row(60, 20));
  const facts = [started, tapped(305)];
  assert.deepEqual(where(plan, facts, 307), ["running", 1, 2]);
  assert.deepEqual(where(plan, [...facts, back(310)], 311), ["running", 0, 306]);
  assert.deepEqual(where(plan, [...facts, back(316)], 317), ["running", 1, 1], "later it goes to the start of the block");
  assert.deepEqual(where(plan, [...facts, back(310), back(312)], 313), ["running", 0, 1], "only once");
});

test("back in the count-in after a gap goes back to the gap", () => {
  const plan = timeline(row(60, 20), gap(300), row(60, 20));
  assert.deepEqual(where(plan, [started, tapped(100, 0, 5), back(103)], 104), ["running", 1, 39]);
});

test("in a hold nothing moves, and going on starts from the catch of the stroke one was in", () => {
  const facts = [started, held(16)];
  assert.deepEqual(where(simple, facts, 500), ["held", 0, 11]);
  assert.deepEqual(where(simple, [...facts, wentOn(500)], 503), ["count-in", 0, 10]);
  assert.deepEqual(where(simple, [...facts, wentOn(500)], 506), ["running", 0, 11]);
});

test("a hold while counting in keeps the place it leads to", () => {
  assert.deepEqual(where(simple, [started, held(2)], 100), ["held", 0, 0]);
  assert.deepEqual(where(simple, [started, held(16), wentOn(20), held(22)], 100), ["held", 0, 10]);
});

test("holds while counting in, again and again, lose no stroke to the rounding of sums", () => {
  const plan = timeline(rest(7), row(20, 20));
  const facts: Fact[] = [started, held(25.7)];
  for (let at_s = 27.3; at_s < 400; at_s += 3.7) facts.push(wentOn(at_s), held(at_s + 1.9));
  assert.deepEqual(where(plan, facts, 500), ["held", 1, Math.round((4 * 20e6) / 7) / 1e6]);
});

test("a second hold and a go-on without a hold change nothing", () => {
  assert.deepEqual(where(simple, [started, held(16), held(20)], 30), ["held", 0, 11]);
  assert.deepEqual(where(simple, [started, wentOn(16)], 30), ["running", 0, 25]);
});

test("a skip goes to the next segment at once, and out of the last one to the end", () => {
  assert.deepEqual(where(simple, [started, skipped(10)], 12), ["running", 1, 2]);
  assert.deepEqual(where(simple, [started, skipped(10), skipped(12), skipped(20)], 21), ["finished", 2, 8]);
});

test("a skip while held stays held", () => {
  assert.deepEqual(where(simple, [started, held(10), skipped(12)], 20), ["held", 1, 0]);
});

test("a skip while counting in keeps the count to a segment that is rowed; nobody counts in to a rest", () => {
  const plan = timeline(row(60, 24), row(60, 28), rest(30));
  assert.deepEqual(where(plan, [started, skipped(2)], 4), ["count-in", 1, 0]);
  assert.deepEqual(where(plan, [started, skipped(2)], 6), ["running", 1, 1]);
  assert.deepEqual(where(plan, [started, skipped(2), skipped(3)], 4), ["running", 2, 1]);
});

test("back goes to the start of the segment, or to the one before when this is under 3 s old", () => {
  assert.deepEqual(where(simple, [started, back(69)], 70), ["running", 1, 1]);
  assert.deepEqual(where(simple, [started, back(67)], 70), ["running", 0, 3]);
  assert.deepEqual(where(simple, [started, back(6)], 7), ["running", 0, 1]);
  assert.deepEqual(where(simple, [started, held(67), back(68)], 70), ["held", 0, 0]);
});

const piece = timeline(metres(500, 110, 28), metres(500, 110, 30), rest(60), row(60));

test("a metre block inside a piece goes on by its estimate; the last one waits, and its beat runs on", () => {
  assert.deepEqual(where(piece, [started], 120), ["running", 1, 5]);
  assert.deepEqual(where(piece, [started], 300), ["waiting", 1, 185]);
});

test("a tap ends a metre block, dated back if it is told so", () => {
  assert.deepEqual(where(piece, [started, tapped(230)], 232), ["running", 2, 2]);
  assert.deepEqual(where(piece, [started, tapped(230, 5)], 232), ["running", 2, 7]);
});

test("a tap dated back to before the estimate says when the block before really ended", () => {
  // Block 0 went on by estimate at 115; told at 118 that it ended 6 s ago, block 1 has been running since 112.
  assert.deepEqual(where(piece, [started, tapped(118, 6)], 118), ["running", 1, 6]);
});

test("a tap soon after a metre block went on by its estimate says that this block is over only now", () => {
  assert.deepEqual(where(piece, [started, tapped(130)], 130), ["running", 1, 0], "15 s late: block 0 took 125 s");
  assert.deepEqual(where(piece, [started, tapped(118, 2)], 118), ["running", 1, 2]);
  assert.deepEqual(where(piece, [started, tapped(130), tapped(150)], 150), ["running", 2, 0], "a second tap ends the next");
});

test("a tap nearer to the end of a block than to its start ends that block", () => {
  assert.deepEqual(where(piece, [started, tapped(200)], 200), ["running", 2, 0]);
});

test("a tap is never dated back beyond the last thing that happened", () => {
  assert.deepEqual(where(piece, [started, held(220), wentOn(221, 0), tapped(223, 10)], 225), ["running", 2, 4]);
});

test("a tap dated back beyond the start of its block, which followed a rest, ends it there", () => {
  const rested = timeline(rest(30), metres(500, 110, 28), rest(60));
  assert.deepEqual(where(rested, [started, tapped(38, 10)], 40), ["running", 2, 5]);
});

test("a tap says nothing in a block that ends by the clock", () => {
  assert.deepEqual(where(simple, [started, tapped(20)], 21), ["running", 0, 16]);
});

test("open blocks and guesses wait for ever, without being over", () => {
  for (const plan of [timeline(open(20), rest(30)), timeline(guess(2000, 480, 24), rest(30))]) {
    assert.deepEqual(where(plan, [started], 5000), ["running", 0, 4995]);
    assert.deepEqual(where(plan, [started, tapped(5000, 10)], 5000), ["running", 1, 10]);
    assert.deepEqual(where(plan, [started, tapped(5000, 10)], 5021), ["finished", 1, 30]);
  }
});

const withGap = timeline(row(60, 24), gap(300), row(60, 30));

test("the gap counts down, then waits for a tap and counts in", () => {
  assert.deepEqual(where(withGap, [started], 364), ["running", 1, 299]);
  assert.deepEqual(where(withGap, [started], 400), ["waiting", 1, 335]);
  const facts: Fact[] = [started, tapped(400, 0, 5)];
  assert.deepEqual(where(withGap, facts, 403), ["count-in", 2, 0]);
  assert.deepEqual(where(withGap, facts, 406), ["running", 2, 1]);
});

test("a start set by the clock counts in by itself, early or late", () => {
  for (const start_s of [200, 600]) {
    const facts: Fact[] = [started, startSet(100, start_s)];
    assert.deepEqual(where(withGap, facts, start_s - 6), ["running", 1, start_s - 71]);
    assert.deepEqual(where(withGap, facts, start_s - 5), ["count-in", 2, 0]);
    assert.deepEqual(where(withGap, facts, start_s + 1), ["running", 2, 1]);
  }
});

test("a start set by the clock can be taken back, and a hold takes it back too", () => {
  assert.deepEqual(where(withGap, [started, startSet(100, 200), startSet(150, null)], 210), ["running", 1, 145]);
  assert.deepEqual(where(withGap, [started, startSet(100, 200), held(150), wentOn(160, 0)], 210), ["running", 1, 135]);
});

test("a held gap can be left by its start", () => {
  assert.deepEqual(where(withGap, [started, held(100), tapped(150, 0, 5)], 156), ["running", 2, 1]);
});

test("after an absence one goes on by the clock, or from where one stopped", () => {
  assert.deepEqual(where(simple, [started, returned(120, 16, "by-clock")], 120), ["running", 2, 25]);
  const stopped = [started, returned(120, 16, "where-stopped", 5)];
  assert.deepEqual(where(simple, stopped, 122), ["count-in", 0, 10]);
  assert.deepEqual(where(simple, stopped, 126), ["running", 0, 11]);
});

test("an absence cannot have begun before the last thing that happened", () => {
  const facts = [started, skipped(20), returned(300, 10, "where-stopped", 0)];
  assert.deepEqual(where(simple, facts, 301), ["running", 1, 1]);
});

test("after the end nothing counts any more", () => {
  assert.deepEqual(where(simple, [started, ended(20), skipped(30), wentOn(40)], 99), ["finished", 0, 15]);
});

test("a session is whole when the plan was gone through to its end, by the clock or by a tap", () => {
  const whole = (plan: Timeline, facts: Fact[], now_s: number) => {
    const state = advance(plan, replay(plan, facts), now_s);
    return state.mode === "finished" && state.whole;
  };
  assert.equal(whole(simple, [started], 155), true);
  assert.equal(whole(timeline(metres(500, 110, 28)), [started, tapped(120)], 120), true);
  assert.equal(whole(simple, [started, ended(150)], 155), false);
  assert.equal(whole(simple, [started, skipped(10), skipped(11), skipped(12)], 155), false);
});

test("what was rowed is counted without holds, count-ins and what was skipped", () => {
  const facts = [started, held(30), wentOn(100), skipped(120), ended(125)];
  const state = replay(simple, facts);
  // 25 s to the hold at the 10th catch, 15 s after going on from it (held in stroke 11, 25 s is its catch), 5 s of rest.
  assert.deepEqual(sumsOf(simple, state.stints), { seconds_s: 45, strokes: 16 });
});

test("a session rowed to its end has all the strokes and seconds of the plan, and metres where splits are known", () => {
  const target = { split_s: 120 };
  const plan = timeline(row(61, 27, { target }), rest(30), row(59, 31, { target }));
  const state = advance(plan, replay(plan, [started]), 1000);
  const sums = sumsOf(plan, state.stints);
  assert.equal(sums.strokes, plan.segments[0]!.strokes! + plan.segments[2]!.strokes!);
  assert.ok(Math.abs(sums.seconds_s - 150) < 1e-9);
  assert.ok(Math.abs(sums.metres! - 500) < 1e-9);
});

test("starts far into a session are the exact ones, not a sum of what came before", () => {
  const plan = timeline(...Array.from({ length: 400 }, () => row(7, 23)));
  const state = advance(plan, replay(plan, [started]), 5 + 399 * 7 + 0.5);
  assert.equal(state.mode === "running" && state.from_s, 5 + 399 * 7);
});

test("progress goes from 0 to 1 with the timeline", () => {
  const at = (now_s: number) => progressAt(simple, placeAt(simple, replay(simple, [started]), now_s));
  assert.deepEqual([at(5), at(80), at(155)], [0, 0.5, 1]);
});

const plans = [simple, piece, withGap, timeline(open(20), gap(30), metres(300, 60, 30), guess(200, 40), row(20))];

/** Facts at random, in the order in which they could be written. */
function anything(next: () => number, count: number, noneBackward: boolean): Fact[] {
  let at_s = 0;
  const facts: Fact[] = [started];
  for (let number = 0; number < count; number += 1) {
    at_s += next() * 60;
    const in_s = next() < 0.5 ? 0 : 5;
    const kinds: Fact[] = [
      held(at_s), wentOn(at_s, in_s), skipped(at_s, in_s), tapped(at_s, next() * 20, in_s),
      startSet(at_s, next() < 0.3 ? null : at_s + next() * 40), returned(at_s, at_s - next() * 90, "by-clock"),
    ];
    if (!noneBackward) kinds.push(back(at_s), returned(at_s, at_s - next() * 90, "where-stopped", in_s));
    facts.push(kinds[Math.floor(next() * kinds.length)]!);
  }
  return facts;
}

test("whatever happens, no place is outside its plan or before its segment", () => {
  const next = chance(11);
  for (let round = 0; round < 3000; round += 1) {
    const plan = plans[round % plans.length]!;
    const facts = anything(next, 12, false);
    const state = replay(plan, facts);
    for (let look = 0; look < 5; look += 1) {
      const now_s = state.since_s + next() * 100;
      const place = placeAt(plan, state, now_s);
      const segment = plan.segments[place.index]!;
      assert.ok(segment && place.elapsed_s >= 0);
      assert.ok(segment.waits || place.elapsed_s <= segment.duration_s + 1e-9);
      assert.ok(place.count_in_s === null || place.count_in_s > 0);
    }
  }
});

test("without a step back no place ever goes backward, except to the catch after a hold", () => {
  const next = chance(12);
  for (let round = 0; round < 3000; round += 1) {
    const plan = plans[round % plans.length]!;
    let before: { index: number; elapsed_s: number } = { index: 0, elapsed_s: 0 };
    let state: State = replay(plan, []);
    for (const fact of anything(next, 12, true)) {
      for (const now of [placeAt(plan, state, fact.at_s - 1e-6), placeAt(plan, follow(plan, state, fact), fact.at_s)]) {
        const slack = (plan.segments[now.index]!.stroke_s ?? 0) + 1e-6;
        // The count-in to a start by the clock shows the next segment; a hold in those seconds shows the gap again.
        const inGap = plan.segments[now.index]!.kind === "gap" && before.index === now.index + 1;
        assert.ok(now.index >= before.index || inGap, `from ${JSON.stringify(before)} to ${JSON.stringify(now)}`);
        // A tap may say that the metre block before took longer than its estimate: this one then begins only now.
        const late = fact.kind === "tapped" && plan.segments[now.index - 1]?.ends === "metres";
        assert.ok(now.index > before.index || inGap || late || now.elapsed_s >= before.elapsed_s - slack, JSON.stringify([before, now, fact]));
        before = now;
      }
      state = follow(plan, state, fact);
    }
  }
});

test("the state after some facts, looked at later, goes on to the same place as after all of them", () => {
  const next = chance(13);
  for (let round = 0; round < 1000; round += 1) {
    const plan = plans[round % plans.length]!;
    const facts = anything(next, 10, false);
    const half = Math.floor(next() * facts.length);
    const upTo = replay(plan, facts.slice(0, half));
    assert.deepEqual(facts.slice(half).reduce((state, fact) => follow(plan, state, fact), upTo), replay(plan, facts));
    const [soon, late] = [upTo.since_s + next() * 50, upTo.since_s + 50 + next() * 200];
    assert.deepEqual(advance(plan, advance(plan, upTo, soon), late), advance(plan, upTo, late));
  }
});

test("what was rowed never grows by more than the time that has passed", () => {
  const next = chance(14);
  for (let round = 0; round < 1000; round += 1) {
    const plan = plans[round % plans.length]!;
    const facts = [...anything(next, 12, false), ended(2000)];
    assert.ok(sumsOf(plan, replay(plan, facts).stints).seconds_s <= 2000 + 1e-6);
  }
});

const allPieces = (plan: Timeline, ...facts: Fact[]) => piecesOf(plan, replay(plan, [started, ...facts]).stints);
const pieceAfter = (plan: Timeline, ...facts: Fact[]) => allPieces(plan, ...facts).map(({ whole: _, ...piece }) => piece);

test("a metre block whose end was tapped is a piece, with its time by the taps", () => {
  const plan = timeline(guess(500, 120, 24), rest(60), guess(500, 120, 24));
  const state = replay(plan, [started, tapped(110, 5), tapped(270)]);
  assert.equal(state.mode, "finished");
  assert.deepEqual(piecesOf(plan, state.stints),
    [{ metres: 500, seconds_s: 100, held: false, whole: true }, { metres: 500, seconds_s: 105, held: false, whole: true }]);
  assert.deepEqual(pieceAfter(plan, ended(100)), []);
});

test("a metre block that was skipped is no piece: nobody saw it end", () => {
  const plan = timeline(metres(500, 110, 24), metres(500, 110, 24), rest(60));
  assert.deepEqual(pieceAfter(plan, skipped(35), skipped(60)), []);
  assert.deepEqual(pieceAfter(plan, skipped(35), tapped(145)), [{ metres: 500, seconds_s: 110, held: false }]);
});

const TWO_KM = timeline(...[1, 2, 3, 4].map(() => metres(500, 115, 28)), rest(60));

test("metre blocks without a rest between them are one piece, timed from its start to the tap", () => {
  assert.deepEqual(pieceAfter(TWO_KM, tapped(475)), [{ metres: 2000, seconds_s: 470, held: false }]);
  const guessed = timeline(guess(500, 120, 24), guess(500, 120, 24), rest(60));
  assert.deepEqual(pieceAfter(guessed, tapped(115), tapped(235)), [{ metres: 1000, seconds_s: 230, held: false }]);
});

test("of a run of metre blocks that was left, the way to the last tap counts", () => {
  assert.deepEqual(pieceAfter(TWO_KM, tapped(130), ended(300)), [{ metres: 500, seconds_s: 125, held: false }]);
  assert.deepEqual(pieceAfter(TWO_KM, tapped(245), ended(300)), [{ metres: 1000, seconds_s: 240, held: false }]);
  assert.deepEqual(pieceAfter(TWO_KM, ended(300)), []);
});

test("a run of metre blocks that was broken off and begun again counts from there", () => {
  assert.deepEqual(pieceAfter(TWO_KM, skipped(60), tapped(410)), [{ metres: 1500, seconds_s: 350, held: false }]);
  assert.deepEqual(pieceAfter(TWO_KM, back(60), tapped(530)), [{ metres: 2000, seconds_s: 470, held: false }]);
});

test("a hold inside a run of metre blocks is told, in the first stroke of a block too", () => {
  assert.deepEqual(pieceAfter(TWO_KM, held(200), wentOn(300), tapped(575)), [{ metres: 2000, seconds_s: 465, held: true }]);
  const [broken] = pieceAfter(TWO_KM, held(121), wentOn(200), tapped(550));
  assert.deepEqual([broken?.metres, broken?.held], [2000, true]);
  assert.equal(Math.round(broken!.seconds_s), 461);
});

test("rowed up to an eighth quicker than planned, a tap in the last block ends the whole run, however short that block is", () => {
  const short = timeline(metres(1900, 437, 28), metres(100, 23, 34), rest(60));
  assert.deepEqual(allPieces(short, tapped(451)), [{ metres: 2000, seconds_s: 446, held: false, whole: true }]);
  assert.deepEqual(allPieces(TWO_KM, tapped(410)), [{ metres: 2000, seconds_s: 405, held: false, whole: true }]);
});

test("a tap in the last block that is far too soon for the whole run ends the block before, and the next one the rest", () => {
  assert.deepEqual(allPieces(TWO_KM, tapped(365)), [{ metres: 1500, seconds_s: 360, held: false, whole: false }]);
  assert.deepEqual(allPieces(TWO_KM, tapped(365), tapped(480)), [{ metres: 2000, seconds_s: 475, held: false, whole: true }]);
});

test("a tap far too late for the block before ends the one that runs", () => {
  const plan = timeline(metres(250, 57, 28), metres(5000, 1250, 24), rest(60));
  assert.deepEqual(where(plan, [started, tapped(362)], 362), ["running", 2, 0]);
});

test("a second tap dated back to the first ends the next block there: nothing of it is lost", () => {
  const plan = timeline(guess(500, 120, 24), guess(500, 120, 24), row(60));
  assert.deepEqual(allPieces(plan, tapped(125), tapped(128, 10)), [{ metres: 1000, seconds_s: 120, held: false, whole: true }]);
});

test("a slip after a piece, or less of it rowed again, does not take it away", () => {
  assert.deepEqual(pieceAfter(TWO_KM, tapped(465), back(480), back(481), tapped(483)), [{ metres: 2000, seconds_s: 460, held: false }]);
  const [piece] = pieceAfter(TWO_KM, tapped(465), back(480), back(481), tapped(600));
  assert.equal(piece!.metres, 2000);
});

test("pieces stand in the order of the plan, in whatever order they were rowed", () => {
  const plan = timeline(guess(500, 120, 24), rest(30), guess(300, 80, 24), row(60));
  const rowed = pieceAfter(plan, skipped(10), skipped(12), tapped(92), back(103), back(104), back(105), back(106), tapped(226), ended(227));
  assert.deepEqual(rowed.map(({ metres: length }) => length), [500, 300]);
});

test("back soon after a block went on by itself goes to its start: there is no tap to take back", () => {
  const plan = timeline(guess(500, 120, 24), row(5), row(60));
  assert.deepEqual(where(plan, [started, tapped(125), back(134)], 134), ["running", 2, 0]);
});

test("a tap while held ends the block where it was held, and makes a piece", () => {
  const plan = timeline(guess(500, 120, 24), rest(60));
  assert.deepEqual(pieceAfter(plan, held(120), tapped(150)), [{ metres: 500, seconds_s: 115, held: false }]);
});

test("a start that is set in the past is a start now", () => {
  const plan = timeline(row(60), gap(300), row(60));
  assert.deepEqual(where(plan, [started, startSet(100, 50)], 100), ["running", 2, 0]);
});

test("runs in different parts, or with a rest between them, are pieces of their own", () => {
  const plan = timeline(metres(500, 110, 24), metres(500, 110, 24, { part_index: 1 }), rest(60), metres(500, 110, 24));
  assert.equal(pieceAfter(plan, tapped(115), tapped(225), tapped(395)).length, 3);
});

test("a tap that would make a piece quicker than anybody rows is a slip, and no piece", () => {
  const plan = timeline(guess(500, 120, 24), rest(60));
  assert.deepEqual(pieceAfter(plan, tapped(64)), []);
  assert.equal(pieceAfter(plan, tapped(65)).length, 1);
});

test("of a metre block rowed twice, the last going counts, and a hold is told", () => {
  const plan = timeline(guess(500, 110, 24), rest(60));
  assert.deepEqual(pieceAfter(plan, back(65), tapped(175)), [{ metres: 500, seconds_s: 110, held: false }]);
  const broken = pieceAfter(plan, held(65), wentOn(100), tapped(155));
  assert.deepEqual(broken, [{ metres: 500, seconds_s: 110, held: true }]);
});

test("a metre block that was rowed to its tapped end is so many metres, however long it took", () => {
  const plan = timeline({ ...metres(500, 110, 24), target: { split_s: 110 } }, rest(60));
  const covered = (...facts: Fact[]) => sumsOf(plan, replay(plan, [started, ...facts]).stints).metres;
  assert.equal(covered(tapped(110)), 500);
  assert.equal(covered(held(65), wentOn(100), tapped(155)), 500);
  assert.equal(covered(skipped(60)), 250);
  assert.equal(covered(back(60), tapped(170)), 750);
});

test("a session is whole when every block was rowed to its end; the gap and rests may be cut short", () => {
  const plan = timeline(row(60, 24), gap(120), metres(500, 110, 24), rest(30), row(60, 24));
  const whole = (...facts: Fact[]) => rowedWhole(plan, advance(plan, replay(plan, [started, ...facts]), 2000).stints);
  assert.equal(whole(tapped(80), tapped(190), skipped(200)), true);
  assert.equal(whole(tapped(80), skipped(100)), false);
  assert.equal(whole(skipped(20), tapped(80), tapped(190)), false);
});
