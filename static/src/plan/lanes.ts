/** The lanes of a room: who rows where, and what each block asks of each of them. */
import { compare } from "./exact-time.js";
import { twoKFrom, type TwoK } from "./prediction.js";
import { SPLIT_OUT_OF_RANGE } from "./remarks.js";
import { resultProblem } from "./result-words.js";
import { scaled } from "./scale.js";
import type { Result, Segment, Target, Timeline } from "./types.js";

/** A lane, counted from 1 in the order in which they stand. Without a result its rower goes by the words of the plan. */
export interface Lane {
  readonly name: string;
  readonly result: Result | null;
}

export const MOST_LANES = 16;
export const LONGEST_NAME = 20;

/** The lane that was stored; undefined where it makes no sense. */
export function laneFrom(stored: unknown): Lane | undefined {
  const { name, result } = (stored ?? {}) as { name?: unknown; result?: unknown };
  if (typeof name !== "string" || name.length > LONGEST_NAME) return undefined;
  if (result === null) return { name, result };
  const { metres, seconds } = (result ?? {}) as { metres?: unknown; seconds?: unknown };
  if (!isCount(metres) || typeof seconds !== "number" || !(seconds > 0)) return undefined;
  return resultProblem({ metres, seconds }) ? undefined : { name, result: { metres, seconds } };
}

function isCount(value: unknown): value is number {
  return Number.isInteger(value) && (value as number) > 0;
}

/** As much of a name that was typed as there is room for; letters are kept whole. */
export function nameThatFits(typed: string): string {
  let name = "";
  for (const letter of typed.trim()) {
    if (name.length + letter.length > LONGEST_NAME) break;
    name += letter;
  }
  return name.trim();
}

/** "Wren", or "Lane 3" where nobody has given a name. */
export function laneName({ name }: Lane, index: number): string {
  return name || `Lane ${index + 1}`;
}

/**
 * The timeline for anybody, with its metre blocks as long as the slowest lane needs, so that nobody is called away
 * from one. What is asked stays what is asked of anybody.
 */
export function forRoom(timeline: Timeline, lanes: readonly Lane[]): Timeline {
  const slowest = slowestOf(lanes);
  if (!slowest) return timeline;
  const { athlete: _athlete, ...slow } = scaled(timeline, slowest);
  return { ...slow, segments: slow.segments.map((segment, index) => asking(segment, timeline.segments[index]!.target)) };
}

/** The lanes, from 0, of which a block asks a split that nobody could be asked for. */
export function lanesBeyondSplits(timeline: Timeline, lanes: readonly Lane[]): number[] {
  const beyond = ({ result }: Lane) => result !== null && scaled(timeline, twoKFrom(result)).findings.some(({ code }) => code === SPLIT_OUT_OF_RANGE);
  return lanes.flatMap((lane, index) => (beyond(lane) ? [index] : []));
}

function asking({ target: _target, ...segment }: Segment, target: Target | undefined): Segment {
  return target ? { ...segment, target } : segment;
}

function slowestOf(lanes: readonly Lane[]): TwoK | null {
  const known = lanes.flatMap(({ result }) => (result ? [twoKFrom(result)] : []));
  return known.reduce<TwoK | null>((slowest, one) => (slowest && compare(slowest.split, one.split) >= 0 ? slowest : one), null);
}

/** What each segment asks of each lane: by lane, then by segment. The timeline is for anybody, or for the room. */
export function targetsOf(timeline: Timeline, lanes: readonly Lane[]): (Target | undefined)[][] {
  return lanes.map(({ result }) => {
    const { segments } = result ? scaled(timeline, twoKFrom(result)) : timeline;
    return segments.map(({ target }) => target);
  });
}
