/** What was really rowed: stretches of segments, and their sums. */
import { multiple } from "../plan/exact-time.js";
import { QUICKEST_SPLIT_S } from "../plan/result-words.js";
import { isRowed, type Segment, type Timeline } from "../plan/types.js";
import { metreRunAt, metresFrom, type MetreRun } from "./metre-run.js";

/** A stretch of one segment that was gone through without a break, in seconds from the segment's start. */
export interface Stint {
  readonly index: number;
  readonly from_s: number;
  readonly to_s: number;
  /** How the segment ended with this stint: by a tap, or by itself; not at all where it was held, skipped or left. */
  readonly ended?: "tap" | "itself";
  /** It goes on with the stint that a hold broke off. */
  readonly resumed?: boolean;
}

/** Sums of a session or of a part of it; `metres` only where every split was known. Rests count in the seconds. */
export interface Sums {
  seconds_s: number;
  strokes: number;
  metres?: number;
}

/** The sums over what was gone through. */
export function sumsOf(timeline: Timeline, stints: readonly Stint[]): Sums {
  const sums: Sums = { seconds_s: 0, strokes: 0 };
  let metres: number | undefined = 0;
  for (const attempt of attemptsOf(stints)) {
    const segment = timeline.segments[attempt[0]!.index]!;
    sums.seconds_s += secondsIn(attempt);
    for (const stint of attempt) sums.strokes += strokesIn(segment, stint);
    const covered = metresIn(segment, attempt);
    metres = metres === undefined || covered === undefined ? undefined : metres + covered;
  }
  return metres ? { ...sums, metres } : sums;
}

/** Metres whose end was tapped, and how long they took. */
export interface Piece {
  metres: number;
  seconds_s: number;
  /** They were not rowed in one go. */
  held: boolean;
  /** They are all the metres that were planned without a rest. */
  whole: boolean;
}

/**
 * Each run of metre blocks as it was rowed last, to the last end that somebody tapped; less of it does not count
 * where more of it was rowed before. Blocks inside a run go on by an estimate, so that only the whole way to a tap is
 * known.
 */
export function piecesOf(timeline: Timeline, stints: readonly Stint[]): Piece[] {
  const rowed = new Map<number, Piece>();
  for (const chain of chainsOf(timeline, attemptsOf(stints))) {
    const known = chain.slice(0, chain.map((attempt) => attempt.at(-1)!.ended === "tap").lastIndexOf(true) + 1);
    if (!known.length) continue;
    const run = runOf(timeline, known[0]!)!;
    const piece = pieceOf(timeline, run, known);
    if (isRowable(piece) && piece.metres >= (rowed.get(run.first)?.metres ?? 0)) rowed.set(run.first, piece);
  }
  return [...rowed].sort(([a], [b]) => a - b).map(([, piece]) => piece);
}

/** Nobody rows quicker than that split: a tap that says so was a slip. */
function isRowable({ metres, seconds_s }: Piece): boolean {
  return seconds_s * 500 >= metres * QUICKEST_SPLIT_S;
}

function pieceOf(timeline: Timeline, run: MetreRun, attempts: readonly Stint[][]): Piece {
  const metres = metresFrom(timeline, indexOf(attempts[0]!), indexOf(attempts.at(-1)!));
  return {
    metres,
    whole: metres === run.metres,
    seconds_s: attempts.reduce((sum, attempt) => sum + secondsIn(attempt), 0),
    held: attempts.some((attempt) => attempt.length > 1),
  };
}

/** What was gone through of each run without leaving anything out: block after block, each to its end. */
function chainsOf(timeline: Timeline, attempts: readonly Stint[][]): Stint[][][] {
  const chains: Stint[][][] = [];
  for (const attempt of attempts) {
    const run = runOf(timeline, attempt);
    if (!run) continue;
    const before = chains.at(-1)?.at(-1);
    const goesOn = before?.at(-1)!.ended && indexOf(before) + 1 === indexOf(attempt) && indexOf(attempt) > run.first;
    if (goesOn) chains.at(-1)!.push(attempt);
    else chains.push([attempt]);
  }
  return chains;
}

function runOf(timeline: Timeline, attempt: readonly Stint[]): MetreRun | null {
  return metreRunAt(timeline, indexOf(attempt));
}

function indexOf(attempt: readonly Stint[]): number {
  return attempt[0]!.index;
}

/** Whether every segment that is rowed was rowed to its end. */
export function rowedWhole(timeline: Timeline, stints: readonly Stint[]): boolean {
  const ended = new Set(stints.filter((stint) => stint.ended).map((stint) => stint.index));
  return timeline.segments.every((segment) => !isRowed(segment) || ended.has(segment.index));
}

/** The stints of each going through a segment: a hold breaks one off, and what goes on after it belongs to it. */
function attemptsOf(stints: readonly Stint[]): Stint[][] {
  const attempts: Stint[][] = [];
  for (const stint of stints) {
    const current = attempts.at(-1);
    const before = current?.at(-1);
    if (before && !before.ended && before.index === stint.index && stint.resumed) current!.push(stint);
    else attempts.push([stint]);
  }
  return attempts;
}

function secondsIn(attempt: readonly Stint[]): number {
  return attempt.reduce((sum, { from_s, to_s }) => sum + to_s - from_s, 0);
}

/** Strokes finished in a stint. A billionth of a second is forgiven, so that a whole block has all its strokes. */
function strokesIn(segment: Segment, stint: Stint): number {
  if (!segment.stroke) return 0;
  const finished = (at_s: number) => Math.floor((at_s + 1e-9) / multiple(segment.stroke!, 1));
  return finished(stint.to_s) - finished(stint.from_s);
}

function metresIn(segment: Segment, attempt: readonly Stint[]): number | undefined {
  if (!isRowed(segment)) return 0;
  if (segment.metres_asked !== undefined && attempt.at(-1)!.ended) return segment.metres_asked;
  const split_s = segment.target?.split_s;
  return split_s === undefined ? undefined : (secondsIn(attempt) * 500) / split_s;
}
