/** Where a session is at one moment: which segment, how far into it, and what we are waiting for. Pure. */
import type { Segment, Timeline } from "../plan/types.js";
import { seconds } from "../plan/exact-time.js";
import { advance, elapsedAt, lineOf, type Running, type State } from "./running.js";
import { positionIn } from "./position.js";

/** Before a start set by the clock, the last so many seconds are counted in. */
const COUNT_IN_S = 5;

export interface Place {
  phase: "ready" | "count-in" | "running" | "waiting" | "held" | "finished";
  /** The segment, or the one that a count-in leads to. */
  index: number;
  elapsed_s: number;
  /** Seconds to the first catch while counting in, else null. */
  count_in_s: number | null;
  /** The moment set for the start of what follows a gap, or of the session while it has not begun; else null. */
  start_s: number | null;
}

/** The place at a moment, which may lie after that of the state. */
export function placeAt(timeline: Timeline, state: State, now_s: number): Place {
  const now = advance(timeline, state, now_s);
  if (now.mode === "running") return runningPlace(timeline, now, now_s);
  const { index, elapsed_s } = now.mode === "ready" ? { index: 0, elapsed_s: 0 } : now;
  return { phase: now.mode, index, elapsed_s, count_in_s: null, start_s: null };
}

function runningPlace(timeline: Timeline, running: Running, now_s: number): Place {
  const { index, from_s, start_s } = running;
  const elapsed_s = elapsedAt(timeline, running, now_s);
  if (now_s < from_s) {
    const set_s = running.starts_by_clock ? from_s : start_s;
    return { phase: "count-in", index, elapsed_s, count_in_s: from_s - now_s, start_s: set_s };
  }
  if (start_s !== null && start_s - now_s <= COUNT_IN_S) {
    return { phase: "count-in", index: index + 1, elapsed_s: 0, count_in_s: start_s - now_s, start_s };
  }
  const segment = lineOf(timeline, running).segments[index]!;
  const over = segment.waits && start_s === null && positionIn(segment, elapsed_s).over;
  return { phase: over ? "waiting" : "running", index, elapsed_s, count_in_s: null, start_s };
}

/** How much of the timeline, as it runs now, lies behind a place, from 0 to 1. */
export function progressAt(timeline: Timeline, place: Place): number {
  const segment: Segment = timeline.segments[place.index]!;
  const behind_s = seconds(segment.start) + Math.min(place.elapsed_s, seconds(segment.duration));
  return Math.min(1, behind_s / timeline.totals.seconds_s);
}
