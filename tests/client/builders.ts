/** Short ways to write timelines in tests, and chance that can be repeated. */
import type { Segment, Timeline } from "../../static/src/plan/wire.js";

type Draft = Omit<Segment, "index" | "start" | "start_s" | "part_index" | "place" | "estimated" | "waits"> & { part_index?: number; waits?: boolean };

const EVERY: Pick<Draft, "part" | "calls" | "basis" | "ends"> = { part: "main", calls: [], basis: "clock", ends: "time" };

/** Rowing for whole seconds at a rate: whole strokes fill the length, as by the clock. */
export function row(duration: number, rate?: number, more: Partial<Draft> = {}): Draft {
  return { ...EVERY, kind: "row", duration: [duration, 1], duration_s: duration, ...(rate === undefined ? {} : beat(duration, rate)), ...more };
}

function beat(duration: number, rate: number) {
  const strokes = Math.max(1, Math.floor((duration * rate) / 60 + 0.5));
  const stroke_s = duration / strokes;
  return { rate, strokes, stroke: [duration, strokes] as [number, number], stroke_s, drive_s: stroke_s * 0.4, paced_rate: 60 / stroke_s };
}

export function rest(duration: number): Draft {
  return { ...EVERY, kind: "rest", duration: [duration, 1], duration_s: duration };
}

export function gap(duration: number): Draft {
  return { ...EVERY, kind: "gap", part: "gap", duration: [duration, 1], duration_s: duration };
}

/** Metres with a split: about so many seconds. */
export function metres(distance: number, about_s: number, rate?: number, more: Partial<Draft> = {}): Draft {
  return { ...row(about_s, rate), ends: "metres", basis: "split", metres_asked: distance, metres: distance, ...more };
}

/** Metres about whose time nothing is known. */
export function guess(distance: number, about_s: number, rate?: number): Draft {
  return { ...metres(distance, about_s, rate), basis: "assumed" };
}

export function open(rate?: number): Draft {
  return { ...row(300, rate), ends: "tap", basis: "assumed" };
}

/** A timeline of these segments; what waits follows the planner's rule. */
export function timeline(...drafts: Draft[]): Timeline {
  let start = 0;
  const segments = drafts.map((draft, index): Segment => {
    const here = start;
    start += draft.duration_s;
    const waits = draft.waits ?? waitsBefore(draft, drafts[index + 1]);
    return { part_index: 0, place: `/parts/0/blocks/${index}`, estimated: false, ...draft, waits, index, start: [here, 1], start_s: here };
  });
  const totals = { seconds: [start, 1] as [number, number], seconds_s: start, strokes: 0, estimated: false, parts: [] };
  return { plan: { format: 1, title: "A test", parts: [] }, fit: "clock", segments, totals, findings: [] };
}

function waitsBefore(draft: Draft, next: Draft | undefined): boolean {
  if (draft.kind === "gap") return next !== undefined;
  if (draft.basis === "split") return next?.ends !== "metres" || (next.part_index ?? 0) !== (draft.part_index ?? 0);
  return draft.basis === "assumed";
}

/** Chance from a seed (xorshift): numbers from 0 up to 1, the same ones every time. */
export function chance(seed: number): () => number {
  let state = seed * 2654435761 + 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}
