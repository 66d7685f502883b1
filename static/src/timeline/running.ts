/** Where a session is between two facts, and where it goes by itself. Pure; moments as in facts.ts. */
import { seconds } from "../plan/exact-time.js";
import type { Segment, Timeline } from "../plan/types.js";
import type { Stint } from "./rowed.js";

export interface Common {
  /** The moment of the last fact. */
  readonly since_s: number;
  /** What was gone through, without the stretch that is being rowed. */
  readonly stints: readonly Stint[];
  /** The timeline as it has been extended; not there where it is still the planned one. */
  readonly grown?: Timeline;
}

export interface Ready extends Common {
  readonly mode: "ready";
}

/** The timeline's second x is at the moment `base_s + x`; before `from_s` nothing runs. */
export interface Running extends Common {
  readonly mode: "running";
  readonly index: number;
  readonly base_s: number;
  readonly from_s: number;
  /** Whether we count in to `from_s`, because somebody has to take up the handle. */
  readonly counts_in: boolean;
  /** In a gap: the moment set for the start of what follows. */
  readonly start_s: number | null;
  /** `from_s` is the moment set for the first catch of the session. */
  readonly starts_by_clock?: true;
  /** It was started by the clock, and nobody has changed its course since. */
  readonly by_clock?: true;
  /** It goes on with what a hold broke off. */
  readonly resumed?: boolean;
  /** Where a tap, and nothing since, has brought us from: what ran then, and when the tap was written. */
  readonly untap?: { readonly running: Running; readonly at_s: number };
}

export interface Held extends Common {
  readonly mode: "held";
  readonly index: number;
  readonly elapsed_s: number;
}

export interface Finished extends Common {
  readonly mode: "finished";
  readonly index: number;
  readonly elapsed_s: number;
  readonly ended_s: number;
  /** The plan was gone through to its end. */
  readonly whole: boolean;
}

export type State = Ready | Running | Held | Finished;

/** The timeline that a state runs on: the planned one, or what it has been extended to. */
export function lineOf(planned: Timeline, { grown }: Pick<State, "grown">): Timeline {
  return grown ?? planned;
}

/** The moment at which second 0 of a segment is, or would have been. */
export function zeroOf(timeline: Timeline, running: Running): number {
  return running.base_s + seconds(segmentAt(lineOf(timeline, running), running.index).start);
}

/** Seconds into the segment at a moment; while counting in, where it will go on. */
export function elapsedAt(timeline: Timeline, running: Running, at_s: number): number {
  return Math.max(0, Math.max(at_s, running.from_s) - zeroOf(timeline, running));
}

/** The state at a later moment when nothing is written meanwhile: segments that do not wait have gone on. */
export function advance(timeline: Timeline, state: State, to_s: number): State {
  let current = state;
  while (current.mode === "running") {
    const end_s = endOf(timeline, current);
    if (end_s === null || to_s < end_s) return current;
    current = goOnByItself(lineOf(timeline, current), current, end_s);
  }
  return current;
}

/** When a running segment goes on by itself: at its end, or at the start set by the clock; null when it waits. */
export function endOf(timeline: Timeline, running: Running): number | null {
  if (running.start_s !== null) return running.start_s;
  const line = lineOf(timeline, running);
  const segment = segmentAt(line, running.index);
  if (segment.waits) return null;
  const next = line.segments[running.index + 1];
  return running.base_s + (next ? seconds(next.start) : seconds(segment.start) + seconds(segment.duration));
}

function goOnByItself(timeline: Timeline, running: Running, end_s: number): Running | Finished {
  const stints = [...running.stints, ...stintTo(timeline, running, end_s, "itself")];
  const index = running.index + 1;
  if (!timeline.segments[index]) {
    const elapsed_s = seconds(segmentAt(timeline, running.index).duration);
    return finish({ ...running, elapsed_s, stints }, end_s, true);
  }
  if (running.start_s !== null) return { ...enter(timeline, { ...running, stints }, index, end_s), by_clock: true };
  return { ...plain(running), index, from_s: end_s, counts_in: false, stints };
}

/** Whether everything is to happen when the clock shows its time, however clocks are corrected meanwhile. */
export function keepsToClock(state: State): boolean {
  return state.mode === "running" && (state.start_s !== null || state.by_clock === true);
}

/** Into the start of a segment, so many seconds after a moment. */
export function enter(timeline: Timeline, before: Common, index: number, at_s: number, count_in_s = 0): Running {
  const from_s = at_s + count_in_s;
  const base_s = from_s - seconds(segmentAt(timeline, index).start);
  return { ...common(before), mode: "running", index, base_s, from_s, counts_in: count_in_s > 0, start_s: null };
}

/** As it runs on into the next segment. */
function plain({ untap: _untap, resumed: _resumed, starts_by_clock: _starts, ...running }: Running): Running {
  return running;
}

export function finish(last: Omit<Held, "mode">, ended_s: number, whole: boolean): Finished {
  const { index, elapsed_s } = last;
  return { ...common(last), mode: "finished", index, elapsed_s, ended_s, whole };
}

/** What every state has of the one before it. */
export function common({ since_s, stints, grown }: Common): Common {
  return { since_s, stints, ...(grown && { grown }) };
}

/** What was gone through since the segment, or the part of it, began: none where it had no length and nobody tapped. */
export function stintTo(timeline: Timeline, running: Running, to_s: number, ended?: "tap" | "itself"): Stint[] {
  const [from_s, to] = [running.from_s, to_s].map((at_s) => elapsedAt(timeline, running, at_s)) as [number, number];
  const resumed = running.resumed && { resumed: true };
  return to > from_s || ended === "tap" ? [{ index: running.index, from_s, to_s: to, ...(ended && { ended }), ...resumed }] : [];
}

export function segmentAt(timeline: Timeline, index: number): Segment {
  const segment = timeline.segments[index];
  if (!segment) throw new RangeError(`there is no segment ${index}: the timeline has ${timeline.segments.length}`);
  return segment;
}
