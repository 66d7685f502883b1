/**
 * A session as a list of timed facts, and where they put us. Pure: the same facts give the same place for ever.
 *
 * Every moment is in seconds of the session's own clock (state/session-clock), which starts at 0 when the session
 * is made and runs through holds, sleep and reloads. `at_s` is the moment at which a fact was written; where
 * somebody has to take up the handle first, it takes effect `count_in_s` later, and until then we count in.
 */
import { seconds } from "../plan/exact-time.js";
import { canGrow, withOneMoreMinute } from "../plan/growing.js";
import { isRowed, type Segment, type Timeline } from "../plan/types.js";
import { catchAt, strokeNumber } from "./position.js";
import type { Stint } from "./rowed.js";

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

interface Common {
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
  if (running.start_s !== null) return enter(timeline, { ...running, stints }, index, end_s);
  return { ...plain(running), index, from_s: end_s, counts_in: false, stints };
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
  return { ...enter(timeline, ready, 0, at_s, count_in_s), ...(by_clock && { starts_by_clock: by_clock }) };
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

/** Into the start of a segment, so many seconds after a moment. */
function enter(timeline: Timeline, before: Common, index: number, at_s: number, count_in_s = 0): Running {
  const from_s = at_s + count_in_s;
  const base_s = from_s - seconds(segmentAt(timeline, index).start);
  return { ...common(before), mode: "running", index, base_s, from_s, counts_in: count_in_s > 0, start_s: null };
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

/** Rowed this much quicker than planned, a run of metre blocks is still believed to be over: judgement [C]. */
const QUICKER_SHARE = 0.15;

/**
 * Whether a block that ended at this moment is the one before. A rower may be half a block late, but the nearer
 * change counts; and in the last block of a run, where the screen asks for Done, the whole run is over if it can be.
 */
function meansTheOneBefore(timeline: Timeline, running: Running, ended_s: number): boolean {
  const late_s = ended_s - zeroOf(timeline, running);
  const [previous, current] = [running.index - 1, running.index].map((index) => seconds(segmentAt(timeline, index).duration)) as [number, number];
  const early_s = current - late_s;
  if (late_s < 0) return true;
  if (late_s > previous / 2) return false;
  if (!segmentAt(timeline, running.index).waits) return late_s < early_s;
  return early_s > QUICKER_SHARE * (byEstimate(timeline, running) + current);
}

/** Planned seconds of the blocks that went on by their estimates, one after the other, before the one that runs. */
function byEstimate(timeline: Timeline, { index, stints }: Running): number {
  let sum_s = 0;
  for (let back = 1; stints.at(-back)?.index === index - back && stints.at(-back)!.ended === "itself"; back += 1) {
    const segment = segmentAt(timeline, index - back);
    if (segment.ends !== "metres") break;
    sum_s += seconds(segment.duration);
  }
  return sum_s;
}

/** Of what has just gone on by the estimate of a metre block: that block, still running; else undefined. */
function beforeItWentOn(timeline: Timeline, running: Running): Running | undefined {
  const last = running.stints.at(-1);
  const index = running.index - 1;
  if (last?.index !== index || last.ended !== "itself" || segmentAt(timeline, index).ends !== "metres") return undefined;
  const from_s = running.base_s + seconds(segmentAt(timeline, index).start) + last.from_s;
  return { ...running, index, from_s, resumed: last.resumed ?? false, stints: running.stints.slice(0, -1) };
}

/** What a tap has led to, with the way back from it. */
function remembering(before: State, after: State, at_s: number): State {
  if (after === before || before.mode !== "running" || after.mode !== "running") return after;
  return { ...after, untap: { running: withoutUntap(before), at_s } };
}

/** As it runs on into the next segment. */
function plain({ untap: _untap, resumed: _resumed, starts_by_clock: _starts, ...running }: Running): Running {
  return running;
}

function withoutUntap({ untap: _, ...running }: Running): Running {
  return running;
}

/** Whether a tap can end it. */
export function endsByTap(segment: Segment): boolean {
  return segment.kind === "gap" || segment.ends === "metres" || segment.ends === "tap";
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

function finish(last: Omit<Held, "mode">, ended_s: number, whole: boolean): Finished {
  const { index, elapsed_s } = last;
  return { ...common(last), mode: "finished", index, elapsed_s, ended_s, whole };
}

/** Whether what runs, or is held, at a moment can have one more minute. */
export function canExtend(planned: Timeline, state: State, at_s: number): state is Running | Held {
  if (state.mode === "ready" || state.mode === "finished") return false;
  const elapsed_s = state.mode === "held" ? state.elapsed_s : elapsedAt(planned, state, at_s);
  return canGrow(planned, lineOf(planned, state), state.index, elapsed_s);
}

/** What every state has of the one before it. */
function common({ since_s, stints, grown }: Common): Common {
  return { since_s, stints, ...(grown && { grown }) };
}

/** A start set by the clock moves with the gap before it. */
function extend(planned: Timeline, state: State, at_s: number): State {
  if (!canExtend(planned, state, at_s)) return state;
  const elapsed_s = state.mode === "held" ? state.elapsed_s : elapsedAt(planned, state, at_s);
  const setLater = state.mode === "running" && state.start_s !== null ? { start_s: state.start_s + 60 } : {};
  return { ...state, ...setLater, grown: withOneMoreMinute(lineOf(planned, state), state.index, elapsed_s) };
}

/** What was gone through since the segment, or the part of it, began: none where it had no length and nobody tapped. */
function stintTo(timeline: Timeline, running: Running, to_s: number, ended?: "tap" | "itself"): Stint[] {
  const [from_s, to] = [running.from_s, to_s].map((at_s) => elapsedAt(timeline, running, at_s)) as [number, number];
  const resumed = running.resumed && { resumed: true };
  return to > from_s || ended === "tap" ? [{ index: running.index, from_s, to_s: to, ...(ended && { ended }), ...resumed }] : [];
}

/** A block that is tapped while held ended where it was held. */
function endedHeld(held: Held, ended?: "tap"): Held {
  const last = held.stints.at(-1);
  if (!ended || last?.index !== held.index) return held;
  return { ...held, stints: [...held.stints.slice(0, -1), { ...last, ended }] };
}

function segmentAt(timeline: Timeline, index: number): Segment {
  const segment = timeline.segments[index];
  if (!segment) throw new RangeError(`there is no segment ${index}: the timeline has ${timeline.segments.length}`);
  return segment;
}
