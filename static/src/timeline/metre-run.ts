/** Metre blocks that follow one another without a rest: one piece for whoever rows it, and for the monitor. Pure. */
import type { Timeline } from "../plan/types.js";

/** The segments `first` to `last`, which are `metres` long together. */
export interface MetreRun {
  readonly first: number;
  readonly last: number;
  readonly metres: number;
}

/** The run that a segment belongs to, which may be that segment alone; null where it is not asked in metres. */
export function metreRunAt(timeline: Timeline, index: number): MetreRun | null {
  const { segments } = timeline;
  const part = segments[index]?.part_index;
  const belongs = (at: number) => segments[at]?.metres_asked !== undefined && segments[at]!.part_index === part;
  if (!belongs(index)) return null;
  let first = index;
  let last = index;
  while (belongs(first - 1)) first -= 1;
  while (belongs(last + 1)) last += 1;
  return { first, last, metres: metresFrom(timeline, first, last) };
}

/** The metres asked of the segments `first` to `last`, all of which are asked in metres. */
export function metresFrom(timeline: Timeline, first: number, last: number): number {
  return timeline.segments.slice(first, last + 1).reduce((sum, { metres_asked }) => sum + metres_asked!, 0);
}

/** Seconds from the start of a segment to the end of its run, by the plan; null where one of them is a guess. */
export function plannedToEnd(timeline: Timeline, { last }: MetreRun, index: number): number | null {
  const left = timeline.segments.slice(index, last + 1);
  return left.some(({ basis }) => basis === "assumed") ? null : left.reduce((sum, { duration_s }) => sum + duration_s, 0);
}
