/**
 * A session as a list of timed facts, and where they put us. Pure: the same facts give the same place for ever.
 *
 * Every moment is in seconds of the session's own clock (state/session-clock), which starts at 0 when the session
 * is made and runs through holds, sleep and reloads. Where somebody has to take up the handle first, a fact lies
 * a few seconds ahead of the moment at which it was written: until then we count in.
 */
import type { Segment, Timeline } from "../plan/types.js";
import { isRowed } from "../plan/types.js";
import { seconds } from "../plan/exact-time.js";
import { beatRunsOn, catchAt, strokeNumber } from "./position.js";
import type { Stint } from "./rowed.js";

/** Back goes to the segment before when pressed this soon after the start of one. */
export const BACK_AGAIN_S = 3;

/** Seconds before a start set by the clock in which we count in. */
export const COUNT_IN_S = 5;

export type Fact =
  /** The first catch of the session. May lie ahead. */
  | { kind: "started"; at_s: number }
  | { kind: "held"; at_s: number }
  /** From the catch of the stroke one was in. May lie ahead. */
  | { kind: "went-on"; at_s: number }
  /** To the next segment. May lie ahead. */
  | { kind: "skipped"; at_s: number }
  | { kind: "stepped-back"; at_s: number }
  /** The segment ended: a metre block, an open block, a gap. Written at `at_s`, it ended `ago_s` before. May lie ahead. */
  | { kind: "tapped"; at_s: number; ago_s: number }
  /** The gap ends at `start_s` by the clock; null takes that back. */
  | { kind: "start-set"; at_s: number; start_s: number | null }
  /** Back after an absence that began at `since_s`: either the clock has run on, or we go on from there at `at_s`. */
  | { kind: "returned"; at_s: number; since_s: number; how: "by-clock" | "where-stopped" }
  | { kind: "ended"; at_s: number };

/** Where the facts put us, as of the last one, or later when `advance` has been called. */
export type State = Ready | Running | Held | Finished;

interface Ready {
  readonly mode: "ready";
  readonly since_s: number;
  readonly stints: readonly Stint[];
}

/** Second x of the segment is at moment `zero_s + x`, from the moment `from_s` on; before that we count in. */
interface Running {
  readonly mode: "running";
  readonly index: number;
  readonly zero_s: number;
  readonly from_s: number;
  /** A start set by the clock, while in a gap. */
  readonly start_s: number | null;
  readonly since_s: number;
  readonly stints: readonly Stint[];
}

interface Held {
  readonly mode: "held";
  readonly index: number;
  readonly elapsed_s: number;
  readonly since_s: number;
  readonly stints: readonly Stint[];
}

interface Finished {
  readonly mode: "finished";
  readonly index: number;
  readonly elapsed_s: number;
  /** The plan was gone through to its end. */
  readonly whole: boolean;
  readonly since_s: number;
  readonly stints: readonly Stint[];
}

const NOT_STARTED: State = { mode: "ready", since_s: 0, stints: [] };

/** The state after all these facts, as of the last of them. Facts stand in the order in which they were written. */
export function replay(timeline: Timeline, facts: readonly Fact[]): State {
  return facts.reduce((state, fact) => follow(timeline, state, fact), NOT_STARTED);
}

/** The state after one more fact. A fact that says nothing at this point (a hold while held) changes nothing. */
export function follow(timeline: Timeline, before: State, fact: Fact): State {
  if (before.mode === "finished") return before;
  if (fact.kind === "started") return before.mode === "ready" ? begin(timeline, before, fact.at_s) : before;
  if (fact.kind === "tapped") return tap(timeline, before, fact);
  if (fact.kind === "returned") return comeBack(timeline, before, fact);
  const at_s = Math.max(fact.at_s, before.since_s);
  const state = advance(timeline, before, fact.kind === "ended" ? at_s : at_s);
  return state.mode === "finished" ? state : { ...apply(timeline, state, fact, at_s), since_s: at_s };
}
