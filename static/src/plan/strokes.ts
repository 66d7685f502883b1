/** Rate to exact strokes, rhythm and clock marks: planner/strokes.py again, for metre blocks that get a new length. */
import {
  ZERO, compare, exact, minus, over, plus, roundHalfUp, times, toNumber, toPair, type Exact,
} from "./exact-time.js";
import type { Fit, Segment, Target } from "./types.js";

const MINUTE = exact(60);
/** The most strokes between two clock marks that a person can still follow. */
const CLOCK_MARK_STROKES = 8n;

/** A whole number of strokes, each lasting `stroke` seconds. */
export interface Strokes {
  count: number;
  stroke: Exact;
}

/** The whole strokes nearest to a length of time at a rate: a tie goes up, and there is at least one. */
export function strokesIn(seconds: Exact, rate: number, fit: Fit): Strokes {
  const nearest = Number(roundHalfUp(over(times(seconds, exact(rate)), MINUTE)));
  const count = Math.max(1, nearest);
  return { count, stroke: fit === "clock" ? over(seconds, exact(count)) : exact(60, rate) };
}

export function durationOf({ count, stroke }: Strokes): Exact {
  return times(exact(count), stroke);
}

/** Strokes a minute as paced. */
export function rateOf({ stroke }: Strokes): Exact {
  return over(MINUTE, stroke);
}

/** Whether the paced rate differs by more than half a stroke a minute from the one asked. */
export function straysFrom(strokes: Strokes, rate: number): boolean {
  const off = minus(rateOf(strokes), exact(rate));
  return compare(off, exact(1, 2)) > 0 || compare(off, exact(-1, 2)) < 0;
}

/** The fields of a segment that follow from its strokes. */
export function strokeFields(strokes: Strokes, pressure: Target["pressure"]): Partial<Segment> {
  const { count, stroke } = strokes;
  return {
    paced_rate: toNumber(rateOf(strokes)),
    strokes: count,
    stroke: toPair(stroke),
    stroke_s: toNumber(stroke),
    drive_s: toNumber(times(stroke, driveShare(rateOf(strokes), pressure))),
    ...clockMark(stroke),
  };
}

/** Every so many strokes last whole seconds, where that is few enough strokes. */
function clockMark({ num, den }: Exact): Pick<Segment, "clock_mark"> {
  return den <= CLOCK_MARK_STROKES ? { clock_mark: { strokes: Number(den), seconds: Number(num) } } : {};
}

// Machine rhythm: all [C], common practice without a source (facts 6.6).
const SLOW = { share: exact(1, 3), rate: exact(22) };
const QUICK = { share: exact(45, 100), rate: exact(34) };
const LESS_WITH_PRESSURE: Record<string, Exact> = {
  "three-quarter": exact(1, 100),
  full: exact(2, 100),
  race: exact(2, 100),
};

/** The part of the stroke, between 0 and 1, that the drive takes at a rate. */
function driveShare(rate: Exact, pressure: Target["pressure"]): Exact {
  const held = compare(rate, SLOW.rate) < 0 ? SLOW.rate : compare(rate, QUICK.rate) > 0 ? QUICK.rate : rate;
  const along = over(minus(held, SLOW.rate), minus(QUICK.rate, SLOW.rate));
  const rise = times(minus(QUICK.share, SLOW.share), along);
  return minus(plus(SLOW.share, rise), LESS_WITH_PRESSURE[pressure ?? ""] ?? ZERO);
}
