/** Sums over segments: time, strokes, distance, work, and the averages that follow from them: planner/totals.py. */
import { ZERO, exact, fromPair, inParts, nearest, over, plus, times, toNumber, toPair, type Exact } from "./exact-time.js";
import { metresIn, powerOfSplit, splitOf } from "./pace.js";
import { isRowed, type PartTotals, type Segment, type Totals } from "./types.js";

type Sums = Omit<Totals, "parts">;

/** The sums of a session, and of each of its parts. */
export function totalsOf(segments: readonly Segment[]): Totals {
  const indexes = [...new Set(segments.map((segment) => segment.part_index))];
  return { ...sumsOf(segments), parts: indexes.map((part_index) => partTotals(segments, part_index)) };
}

function partTotals(segments: readonly Segment[], part_index: number): PartTotals {
  const members = segments.filter((segment) => segment.part_index === part_index);
  return { part: members[0]!.part, part_index, ...sumsOf(members) };
}

function sumsOf(segments: readonly Segment[]): Sums {
  const rowed = segments.filter(isRowed);
  const total = durationOf(segments);
  const metres = metresOf(rowed);
  const joules = workOf(rowed);
  const rowing = durationOf(rowed);
  return {
    seconds: toPair(total),
    seconds_s: toNumber(total),
    strokes: rowed.reduce((sum, segment) => sum + (segment.strokes ?? 0), 0),
    ...(metres ? { metres: tenth(metres) } : {}),
    ...(joules ? { work_kj: tenth(over(joules, exact(1000))), watts: tenth(over(joules, rowing)) } : {}),
    ...(metres && joules ? { split_s: tenth(splitOf(metres, rowing)) } : {}),
    estimated: segments.some((segment) => segment.basis !== "clock"),
  };
}

/** A number for people, to the tenth, a tie going up. */
export function tenth(value: Exact): number {
  return toNumber(nearest(value));
}

function durationOf(segments: readonly Segment[]): Exact {
  return segments.reduce((sum, segment) => plus(sum, fromPair(segment.duration)), ZERO);
}

function metresOf(rowed: readonly Segment[]): Exact | undefined {
  if (!rowed.length || rowed.some((segment) => segment.metres === undefined)) return undefined;
  const asked = rowed.reduce((sum, segment) => sum + (segment.metres_asked ?? 0), 0);
  const timed = rowed.filter((segment) => segment.metres_asked === undefined);
  return overSplits(timed, exact(asked), metresIn);
}

function workOf(rowed: readonly Segment[]): Exact | undefined {
  if (!rowed.length || rowed.some((segment) => segment.target?.split_s === undefined)) return undefined;
  return overSplits(rowed, ZERO, (seconds, split) => times(powerOfSplit(split), seconds));
}

/** Adds up a quantity over the time at each split. */
function overSplits(segments: readonly Segment[], start: Exact, quantity: (seconds: Exact, split: Exact) => Exact): Exact {
  const seconds = new Map<number, Exact>();
  for (const { target, duration } of segments) {
    const split_s = target!.split_s!;
    seconds.set(split_s, plus(seconds.get(split_s) ?? ZERO, fromPair(duration)));
  }
  return [...seconds].reduce((sum, [split_s, time]) => plus(sum, quantity(time, inParts(split_s))), start);
}
