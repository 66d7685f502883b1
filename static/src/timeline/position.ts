/** Where are we at t seconds of a segment: its stroke, the place within that stroke, what is left. Pure. */
import { multiple, seconds } from "../plan/exact-time.js";
import type { Segment } from "../plan/types.js";

/** A place within one stroke. */
export interface Beat {
  phase: "drive" | "recovery";
  /** Of the whole stroke, 0 at the catch to 1 at the next. */
  share: number;
  /** Seconds that the whole stroke lasts. */
  stroke_s: number;
  /** The share of the stroke that is drive, 0 to 1. */
  drive: number;
  /** Of the drive or the recovery, 0 to 1. */
  phase_share: number;
}

export interface Position {
  /** Seconds since the segment's start. */
  elapsed_s: number;
  /** Seconds to its end; null where there is no end to count down to. */
  left_s: number | null;
  /** Strokes finished, which is also the number of the current one counted from 0; null without a beat. */
  stroke: number | null;
  /** Strokes to the end, the current one included; null where there is no end to count down to. */
  strokes_left: number | null;
  /** Null without a beat, and when the segment is over. */
  beat: Beat | null;
  /** The segment's time is up; if it waits, it goes on only by a tap. */
  over: boolean;
}

/** The position `elapsed_s` seconds (0 or more) after the segment's start. */
export function positionIn(segment: Segment, elapsed_s: number): Position {
  const duration_s = seconds(segment.duration);
  const over = elapsed_s >= duration_s && segment.basis !== "assumed";
  const counted = segment.basis !== "assumed" && !(over && beatRunsOn(segment));
  const stroke = strokeAt(segment, elapsed_s, over);
  return {
    elapsed_s,
    left_s: counted ? Math.max(0, duration_s - elapsed_s) : null,
    stroke,
    strokes_left: counted && stroke !== null ? Math.max(0, segment.strokes! - stroke) : null,
    beat: stroke === null || (over && !beatRunsOn(segment)) ? null : beatAt(segment, elapsed_s, stroke),
    over,
  };
}

/** Whether strokes go on beyond the segment's own length until somebody taps: it waits, and it is rowed. */
export function beatRunsOn(segment: Segment): boolean {
  return segment.waits && segment.stroke !== undefined;
}

/** The catch of stroke `number` (from 0), in seconds from the segment's start. The segment has a beat. */
export function catchAt(segment: Segment, number: number): number {
  return multiple(segment.stroke!, number);
}

/** A moment of the session is a sum of others: a millionth of a second before a catch it is that catch, and rounded. */
const ROUNDING_S = 1e-6;

/** The number of the stroke (from 0) whose catch is the last one at or before `elapsed_s`. The segment has a beat. */
export function strokeNumber(segment: Segment, elapsed_s: number): number {
  const [num, den] = segment.stroke!;
  const reached_s = elapsed_s + ROUNDING_S;
  let number = Math.max(0, Math.floor((reached_s * den) / num));
  while (catchAt(segment, number + 1) <= reached_s) number += 1;
  while (number > 0 && catchAt(segment, number) > reached_s) number -= 1;
  return number;
}

function strokeAt(segment: Segment, elapsed_s: number, over: boolean): number | null {
  if (!segment.stroke) return null;
  const number = strokeNumber(segment, elapsed_s);
  return over && !beatRunsOn(segment) ? segment.strokes! : number;
}

function beatAt(segment: Segment, elapsed_s: number, stroke: number): Beat {
  const stroke_s = seconds(segment.stroke!);
  const share = within((elapsed_s - catchAt(segment, stroke)) / stroke_s);
  const drive = segment.drive_s! / stroke_s;
  const driving = share < drive;
  const phase_share = within(driving ? share / drive : (share - drive) / (1 - drive));
  return { phase: driving ? "drive" : "recovery", share, stroke_s, drive, phase_share };
}

function within(share: number): number {
  return Math.min(1, Math.max(0, share));
}
