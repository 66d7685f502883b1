/**
 * A session as a list of timed facts, and where they put us. Pure: the same facts give the same place for ever.
 *
 * Every moment is in seconds of the session's own clock (state/session-clock), which starts at 0 when the session
 * is made and runs through holds, sleep and reloads. `at_s` is the moment at which a fact was written; where
 * somebody has to take up the handle first, it takes effect `count_in_s` later, and until then we count in.
 */
import { canGrow, withOneMoreMinute } from "../plan/growing.js";
import { isRowed, type Timeline } from "../plan/types.js";
import { catchAt, strokeNumber } from "./position.js";
import {
  advance, common, elapsedAt, enter, finish, lineOf, segmentAt, stintTo, zeroOf, type Common, type Held, type Running, type State,
} from "./running.js";
import { beforeItWentOn, endsByTap, meansTheOneBefore } from "./taps.js";

/** Back goes to the segment before when pressed this soon after the start of one. */
export const BACK_AGAIN_S = 3;

/** Back pressed this soon after a tap takes the tap back: the block it ended goes on as if nothing had been tapped. */
export const UNTAP_S = 10;

export type Fact =
  /** `by_clock` when the first catch was set to a moment, which a `start-set` can move. */
  | { kind: "started"; at_s: number; count_in_s: number; by_clock?: true }
  | { kind: "held"; at_s: number }
  /** After a hold: from the catch of the stroke one was in. */
  | { kind: "went-on"; at_s: number; count_in_s: number }
  /** To the next segment. */
  | { kind: "skipped"; at_s: number; count_in_s: number }
  | { kind: "stepped-back"; at_s: number }
  /** A metre block, an open block or a gap is over, and was so `ago_s` before. */
  | { kind: "tapped"; at_s: number; ago_s: number; count_in_s: number }
  /** The gap is over at `start_s` by the clock; null takes that back, and so does a hold. Or the session starts then. */
  | { kind: "start-set"; at_s: number; start_s: number | null }
  /** Back after an absence since `since_s`: the clock has run on, or we go on from where we were then. */
  | { kind: "returned"; at_s: number; since_s: number; how: "by-clock" | "where-stopped"; count_in_s: number }
  /** A minute more of the segment that runs or is held, and all after it later. */
  | { kind: "extended"; at_s: number }
  | { kind: "ended"; at_s: number };

/** The state after all these facts, as of the last of them; they stand in the order in which they were written. */
export function replay(timeline: Timeline, facts: readonly Fact[]): State {
  return facts.reduce<State>((state, fact) => follow(timeline, state, fact), { mode: "ready", since_s: 0, stints: [] });
}

/** The state after one more fact. One that says nothing at this point, such as a hold while held, changes nothing. */
export function follow(timeline: Timeline, before: State, fact: Fact): State {
  const at_s = Math.max(fact.at_s, before.since_s);
  const state = advance(timeline, before, at_s);
  const after = fact.kind === "extended" ? extend(timeline, state, at_s) : apply(lineOf(timeline, before), before, state, { ...fact, at_s });
  return { ...after, since_s: at_s };
}

/** `before` is the state at the last fact, `state` that at the moment of this one. */
function apply(timeline: Timeline, before: State, state: State, fact: Exclude<Fact, { kind: "extended" }>): State {
  switch (fact.kind) {
    case "started":
      return state.mode === "ready" ? start(timeline, state, fact) : state;
    case "held":
      return state.mode === "running" ? hold(timeline, state, fact.at_s) : state;
    case "went-on":
      return state.mode === "held" ? goOn(timeline, state, fact.at_s, fact.count_in_s) : state;
    case "skipped":
      return leave(timeline, state, fact.at_s, fact.count_in_s);
    case "stepped-back":
      return stepBack(timeline, state, fact.at_s);
    case "tapped":
      return remembering(state, tap(timeline, before, state, fact), fact.at_s);
    case "start-set":
      return setStart(timeline, state, fact);
    case "returned":
      return fact.how === "where-stopped" ? goOnFrom(timeline, before, fact) : state;
    case "ended":
      return end(timeline, state, fact.at_s);
  }
}

function start(timeline: Timeline, ready: Common, { at_s, count_in_s, by_clock }: Fact & { kind: "started" }): Running {
  return { ...enter(timeline, ready, 0, at_s, count_in_s), ...(by_clock && { starts_by_clock: by_clock, by_clock }) };
}

function hold(timeline: Timeline, running: Running, at_s: number, ended?: "tap"): Held {
  const { index } = running;
  const stints = [...running.stints, ...stintTo(timeline, running, at_s, ended)];
  return { ...common(running), mode: "held", index, elapsed_s: elapsedAt(timeline, running, at_s), stints };
}

function goOn(timeline: Timeline, held: Held, at_s: number, count_in_s: number): Running {
  const segment = segmentAt(timeline, held.index);
  const caught_s = segment.stroke ? catchAt(segment, strokeNumber(segment, held.elapsed_s)) : held.elapsed_s;
  const running = enter(timeline, held, held.index, at_s, count_in_s);
  return { ...running, base_s: running.base_s - caught_s, resumed: true };
}

/** To the next segment. A hold stays a hold, except in a gap; a count-in that is on is counted to its end. */
function leave(timeline: Timeline, state: State, at_s: number, count_in_s: number, ended?: "tap"): State {
  if (state.mode === "ready" || state.mode === "finished") return state;
  const left = state.mode === "running" ? hold(timeline, state, at_s, ended) : endedHeld(state, ended);
  const index = state.index + 1;
  if (!timeline.segments[index]) return finish(left, at_s, ended === "tap");
  const staysHeld = state.mode === "held" && segmentAt(timeline, state.index).kind !== "gap";
  if (staysHeld) return { ...left, index, elapsed_s: 0 };
  return enter(timeline, left, index, at_s, Math.max(count_in_s, toCount(timeline, state, index, at_s)));
}

function stepBack(timeline: Timeline, state: State, at_s: number): State {
  if (state.mode === "ready" || state.mode === "finished") return state;
  if (state.mode === "running" && state.untap && at_s - state.untap.at_s <= UNTAP_S) return { ...state.untap.running, ...common(state), stints: state.untap.running.stints };
  const left = state.mode === "running" ? hold(timeline, state, at_s) : state;
  const index = Math.max(0, left.elapsed_s < BACK_AGAIN_S ? left.index - 1 : left.index);
  if (state.mode === "held") return { ...left, index, elapsed_s: 0 };
  return enter(timeline, left, index, at_s, toCount(timeline, state, index, at_s));
}

/** Seconds still to be counted in to another segment: somebody who changes then has not taken up the handle yet. */
function toCount(timeline: Timeline, state: Running | Held, index: number, at_s: number): number {
  const needsHandle = state.mode === "running" && isRowed(segmentAt(timeline, index));
  return needsHandle ? Math.max(0, state.from_s - at_s) : 0;
}

/**
 * A tap says that a block is over: the one that runs, or, where that has gone on by an estimate, the metre block
 * before, which then really ended earlier or later than estimated.
 */
function tap(timeline: Timeline, before: State, state: State, fact: Fact & { kind: "tapped" }): State {
  if (state.mode === "ready" || state.mode === "finished" || !endsByTap(segmentAt(timeline, state.index))) return state;
  if (state.mode !== "running") return leave(timeline, state, fact.at_s, fact.count_in_s, "tap");
  const ended_s = Math.max(fact.at_s - fact.ago_s, before.since_s);
  const wentOn = beforeItWentOn(timeline, state);
  if (wentOn && meansTheOneBefore(timeline, state, ended_s)) {
    return leave(timeline, wentOn, Math.max(ended_s, wentOn.from_s), 0, "tap");
  }
  return leave(timeline, state, Math.max(ended_s, zeroOf(timeline, state)), fact.count_in_s, "tap");
}

/** What a tap has led to, with the way back from it. */
function remembering(before: State, after: State, at_s: number): State {
  if (after === before || before.mode !== "running" || after.mode !== "running") return after;
  return { ...after, untap: { running: withoutUntap(before), at_s } };
}

function withoutUntap({ untap: _, ...running }: Running): Running {
  return running;
}

function setStart(timeline: Timeline, state: State, { at_s, start_s }: Fact & { kind: "start-set" }): State {
  if (state.mode === "running" && state.starts_by_clock && at_s < state.from_s) {
    if (start_s === null) return state;
    return start(timeline, state, { kind: "started", at_s, count_in_s: Math.max(0, start_s - at_s), by_clock: true });
  }
  const inGap = state.mode === "running" && segmentAt(timeline, state.index).kind === "gap";
  if (!inGap || !timeline.segments[state.index + 1]) return state;
  return { ...state, start_s: start_s === null ? null : Math.max(start_s, at_s) };
}

/** From where we were, even if by the clock the session would be over by now. */
function goOnFrom(timeline: Timeline, before: State, fact: Fact & { kind: "returned" }): State {
  const stopped_s = Math.max(fact.since_s, before.since_s);
  const then = advance(timeline, before, stopped_s);
  return then.mode === "running" ? goOn(timeline, hold(timeline, then, stopped_s), fact.at_s, fact.count_in_s) : then;
}

function end(timeline: Timeline, state: State, at_s: number): State {
  if (state.mode === "ready" || state.mode === "finished") return state;
  const left = state.mode === "running" ? hold(timeline, state, at_s) : state;
  return finish(left, at_s, false);
}

/** Whether what runs, or is held, at a moment can have one more minute. */
export function canExtend(planned: Timeline, state: State, at_s: number): state is Running | Held {
  if (state.mode === "ready" || state.mode === "finished") return false;
  const elapsed_s = state.mode === "held" ? state.elapsed_s : elapsedAt(planned, state, at_s);
  return canGrow(planned, lineOf(planned, state), state.index, elapsed_s);
}

/** A start set by the clock moves with the gap before it. */
function extend(planned: Timeline, state: State, at_s: number): State {
  if (!canExtend(planned, state, at_s)) return state;
  const elapsed_s = state.mode === "held" ? state.elapsed_s : elapsedAt(planned, state, at_s);
  const setLater = state.mode === "running" && state.start_s !== null ? { start_s: state.start_s + 60 } : {};
  return { ...state, ...setLater, grown: withOneMoreMinute(lineOf(planned, state), state.index, elapsed_s) };
}

/** A block that is tapped while held ended where it was held. */
function endedHeld(held: Held, ended?: "tap"): Held {
  const last = held.stints.at(-1);
  if (!ended || last?.index !== held.index) return held;
  return { ...held, stints: [...held.stints.slice(0, -1), { ...last, ended }] };
}
