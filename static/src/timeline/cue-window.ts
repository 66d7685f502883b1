/** Which cues fall between two moments. Pure: any row of windows that touch holds each cue exactly once. */
import { seconds } from "../plan/exact-time.js";
import { isRowed, type Segment, type Timeline } from "../plan/types.js";
import { advance, elapsedAt, endOf, lineOf, zeroOf, type Running, type State } from "./running.js";
import { beatRunsOn, catchAt, strokeNumber } from "./position.js";

export type CueKind =
  | "catch"
  | "finish"
  /** A soft beat in the middle of a slow recovery. */
  | "between"
  /** The catches of the last two strokes. */
  | "second-last"
  | "last"
  /** A segment begins; where it is rowed, that is its first catch. */
  | "change"
  /** One a second before a first catch, and before the end of a rest. */
  | "count-in"
  /** The session is over. */
  | "end";

export interface Cue {
  kind: CueKind;
  /** The moment, in seconds of the session's clock. */
  at_s: number;
}

/** People lose a beat slower than about 1.8 s (facts 10.3): such a recovery gets a soft beat half way. */
const SLOW_RECOVERY_S = 1.8;
/** Ticks before a first catch: three, as starters count [C]. */
const COUNT_IN_TICKS = [3, 2, 1];
/** Moments nearer than this are the same one, computed in two ways. */
const SAME_S = 1e-6;

/** The cues at or after `from_s` and before `to_s`, in order, if nobody does anything meanwhile. */
export function cuesBetween(planned: Timeline, state: State, from_s: number, to_s: number): Cue[] {
  const timeline = lineOf(planned, state);
  const cues: Cue[] = [];
  let current = advance(timeline, state, from_s);
  while (current.mode === "running") {
    cues.push(...cuesOf(timeline, current, from_s, to_s));
    const end_s = endOf(timeline, current);
    if (end_s === null || end_s >= to_s) break;
    current = advance(timeline, current, end_s);
  }
  if (current.mode === "finished" && current.whole) cues.push({ kind: "end", at_s: current.ended_s });
  return cues.filter((cue) => cue.at_s >= from_s && cue.at_s < to_s).sort((a, b) => a.at_s - b.at_s);
}

/** The cues of the segment that runs now, at least those inside the window. */
function* cuesOf(timeline: Timeline, running: Running, from_s: number, to_s: number): Generator<Cue> {
  const segment = timeline.segments[running.index]!;
  if (running.counts_in) yield* ticksBefore(running.from_s, running.since_s);
  yield* opening(timeline, running, segment);
  if (segment.stroke) yield* strokes(timeline, running, segment, from_s, to_s);
  yield* closing(timeline, running, segment);
}

function ticksBefore(moment_s: number, earliest_s: number): Cue[] {
  const moments = COUNT_IN_TICKS.map((before_s) => moment_s - before_s).filter((at_s) => at_s >= earliest_s);
  return moments.map((at_s) => ({ kind: "count-in", at_s }));
}

/** What is heard as it begins: after a count-in the plain catch, else the change. Not when it is gone on with. */
function opening(timeline: Timeline, running: Running, segment: Segment): Cue[] {
  if (elapsedAt(timeline, running, running.from_s) > SAME_S) return [];
  return [{ kind: segment.stroke && running.counts_in ? "catch" : "change", at_s: running.from_s }];
}

/** Catches, finishes and soft beats inside the window. The catch that opens the segment is not among them. */
function* strokes(timeline: Timeline, running: Running, segment: Segment, from_s: number, to_s: number): Generator<Cue> {
  const zero_s = zeroOf(timeline, running);
  const count = beatRunsOn(segment) ? Infinity : segment.strokes!;
  const first = firstStroke(segment, running.from_s - zero_s);
  const inWindow = strokeNumber(segment, Math.max(0, from_s - zero_s));
  for (let number = Math.max(first, inWindow); number < count; number += 1) {
    const catch_s = zero_s + catchAt(segment, number);
    if (catch_s >= to_s) return;
    if (number > 0) yield { kind: catchKind(number, count), at_s: catch_s };
    yield* afterTheCatch(segment, catch_s);
  }
}

function afterTheCatch(segment: Segment, catch_s: number): Cue[] {
  const finish_s = catch_s + segment.drive_s!;
  const recovery_s = seconds(segment.stroke!) - segment.drive_s!;
  const finish: Cue = { kind: "finish", at_s: finish_s };
  return recovery_s > SLOW_RECOVERY_S ? [finish, { kind: "between", at_s: finish_s + recovery_s / 2 }] : [finish];
}

function catchKind(number: number, count: number): CueKind {
  return number === count - 1 ? "last" : number === count - 2 ? "second-last" : "catch";
}

/** What leads to its end: ticks where there is no beat to count by; the sign that a gap is over. */
function* closing(timeline: Timeline, running: Running, segment: Segment): Generator<Cue> {
  const end_s = endOf(timeline, running);
  const next = timeline.segments[running.index + 1];
  if (end_s === null) {
    const over_s = zeroOf(timeline, running) + seconds(segment.duration);
    if (segment.kind === "gap") yield { kind: "change", at_s: over_s };
    return;
  }
  const toTheHandle = !segment.stroke && (isRowed(segment) || (next !== undefined && isRowed(next)));
  if (toTheHandle) yield* ticksBefore(end_s, running.from_s);
}

/** The stroke (from 0) whose catch we go on from; a hold ends on a catch, give or take a rounding. */
function firstStroke(segment: Segment, elapsed_s: number): number {
  return strokeNumber(segment, Math.max(0, elapsed_s) + SAME_S);
}
