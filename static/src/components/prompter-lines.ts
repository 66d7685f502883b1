/** The lines of a prompter: every block and every call of a session, each at its moment. Pure. */
import type { Segment, Timeline } from "../plan/wire.js";
import { nextLine } from "./wall-words.js";

export interface Line {
  kind: "block" | "call" | "end";
  /** Seconds of the timeline. */
  at_s: number;
  text: string;
  /** Of a block: the one thing to keep in mind. */
  focus: string;
  /** How long a call takes to say, and stays to be read; 0 for others. */
  stays_s: number;
  /** How many blocks before it wait for a tap: while there are any, nobody knows when it comes. */
  waits: number;
}

/** A line that is coming, or is said now. */
export interface Coming extends Line {
  /** Seconds to it, 0 or less once it has come; null where nobody knows. */
  in_s: number | null;
}

/** A call stays to be read for so long after it has been said, as on the row screen. */
const CALL_STAYS_S = 4;
/** A block that has begun stays among the lines for so long. */
const BLOCK_STAYS_S = 5;

/** All lines, in the order in which they come. */
export function linesOf({ segments, totals }: Timeline): Line[] {
  let waits = 0;
  const lines: Line[] = [];
  for (const segment of segments) {
    lines.push(...linesIn(segment, waits));
    if (segment.waits) waits += 1;
  }
  return [...lines, { kind: "end", at_s: totals.seconds_s, text: "The end", focus: "", stays_s: BLOCK_STAYS_S, waits }];
}

function linesIn(segment: Segment, waits: number): Line[] {
  const block: Line = { kind: "block", at_s: segment.start_s, text: nextLine(segment), focus: segment.focus ?? "", stays_s: BLOCK_STAYS_S, waits };
  const calls = segment.calls.map(({ at_s, text, seconds }): Line => {
    return { kind: "call", at_s: segment.start_s + at_s, text, focus: "", stays_s: seconds + CALL_STAYS_S, waits };
  });
  return [block, ...calls];
}

/** The lines from a moment on, at most so many; `waited` is how many blocks that wait are behind it. */
export function comingLines(lines: readonly Line[], now_s: number, waited: number, count: number): Coming[] {
  const first = lines.findIndex(({ at_s, stays_s, waits }) => waits > waited || at_s + stays_s > now_s);
  if (first < 0) return [];
  const coming = lines.slice(first, first + count).filter(({ at_s, stays_s, waits }) => waits > waited || at_s + stays_s > now_s);
  return coming.map((line) => ({ ...line, in_s: line.waits > waited ? null : line.at_s - now_s }));
}

/** Where in its timeline a session is, in seconds; before a first catch so many seconds less. */
export function positionOf(segment: Segment, { elapsed_s, left_s, count_in }: { elapsed_s: number; left_s: number | null; count_in: number | null }): number {
  if (count_in !== null) return segment.start_s + elapsed_s - count_in;
  const gone_s = segment.kind === "gap" && left_s !== null ? segment.duration_s - left_s : elapsed_s;
  return segment.start_s + Math.min(gone_s, segment.duration_s);
}

/** How many blocks before this one wait for a tap. */
export function waitedBefore({ segments }: Timeline, index: number): number {
  return segments.slice(0, index).filter(({ waits }) => waits).length;
}
