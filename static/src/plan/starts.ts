/** Where segments start, and which of them wait for a tap at their end: planner/timeline.py again. */
import { ZERO, fromPair, plus, toNumber, toPair } from "./exact-time.js";
import type { Segment } from "./types.js";

type Ending = Pick<Segment, "kind" | "ends" | "basis" | "part_index">;

/** Metre blocks inside a run of them go on by estimate; the last one waits, and so does a guess, and a gap before something. */
export function waits(segment: Ending, next: Ending | undefined): boolean {
  if (segment.kind === "gap") return next !== undefined;
  if (segment.ends !== "metres" || segment.basis !== "split") return segment.basis === "assumed";
  return next?.part_index !== segment.part_index || next.ends !== "metres";
}

/** The segments one after the other, each from where the one before it ends. */
export function startingInTurn(segments: readonly Omit<Segment, "start" | "start_s">[]): Segment[] {
  let start = ZERO;
  return segments.map((segment) => {
    const here = start;
    start = plus(start, fromPair(segment.duration));
    return { ...segment, start: toPair(here), start_s: toNumber(here) };
  });
}
