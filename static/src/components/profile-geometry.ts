/** Where each segment of a timeline lies in the profile: rate above the waterline, pressure as depth below. */
import type { Segment, Timeline } from "../plan/wire.js";

/** Light is shallow, race is deep; 0 is calm water (rest, gap), a half is rowing without an effort. */
export type Depth = 0 | 0.5 | 1 | 2 | 3 | 4 | 5;

export interface Bar {
  left: number;
  width: number;
  depth: Depth;
  rate: number | null;
  /** Pixels between two strokes, or 0 where there is no beat. */
  stroke: number;
}

export const DEEPEST = 5;
const PRESSURES = ["light", "half", "three-quarter", "full", "race"];
const TALK = ["easy talk", "whole sentences", "short phrases", "single words", "no talk"];
/** Seconds over the 2 km split up to which a block counts as race, full, ... in the picture [C]. */
const OFFSETS: readonly [number, Depth][] = [[0, 5], [4, 4], [10, 3], [18, 2]];
/** Share of the plan's greatest power from which a block without any other measure is drawn so deep [C]. */
const POWERS: readonly [number, Depth][] = [[0.97, 5], [0.85, 4], [0.7, 3], [0.5, 2]];

export function barsOf(timeline: Timeline, width: number): Bar[] {
  const total = timeline.totals.seconds_s || 1;
  const quickest = quickestSplit(timeline);
  let before: Depth = 0.5;
  return timeline.segments.map((segment) => {
    const depth = depthOf(segment, quickest, before);
    if (depth > 0.5) before = depth;
    return {
      left: (segment.start_s / total) * width,
      width: (segment.duration_s / total) * width,
      depth,
      rate: segment.kind === "row" || segment.kind === "drill" ? (segment.rate ?? null) : null,
      stroke: segment.stroke_s ? (segment.stroke_s / total) * width : 0,
    };
  });
}

/** How deep one segment is drawn; `before` is the depth a change of split starts from. */
export function depthOf(segment: Segment, quickest: number, before: Depth): Depth {
  if (segment.kind === "rest" || segment.kind === "gap") return 0;
  const target = segment.target;
  if (!target) return 0.5;
  if (target.pressure) return step(PRESSURES.indexOf(target.pressure));
  if (target.talk) return step(TALK.indexOf(target.talk));
  if (target.split_offset_s !== undefined) return atMost(OFFSETS, target.split_offset_s);
  if (target.split_s !== undefined) return atLeast(POWERS, (quickest / target.split_s) ** 3);
  if (target.change_s !== undefined) return before;
  return 2;
}

export function quickestSplit(timeline: Timeline): number {
  const splits = timeline.segments.map((segment) => segment.target?.split_s ?? Infinity);
  return Math.min(...splits, 600);
}

function step(index: number): Depth {
  return index < 0 ? 0.5 : ((index + 1) as Depth);
}

function atMost(table: readonly [number, Depth][], value: number): Depth {
  return table.find(([most]) => value <= most)?.[1] ?? 1;
}

function atLeast(table: readonly [number, Depth][], value: number): Depth {
  return table.find(([least]) => value >= least)?.[1] ?? 1;
}
