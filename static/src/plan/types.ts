/** The words of the wire under the names that the engine uses. */
import type { Athlete, Segment, SessionRequest } from "./wire.js";

export type {
  Call, Finding, Pace, PartTotals, PlacedCall, Plan, PlanSummary, Result, Segment, Target, Timeline, Totals,
} from "./wire.js";

/** Exact seconds as [numerator, denominator]. */
export type Pair = readonly [number, number];

export type Fit = "clock" | "rate";
export type Kind = Segment["kind"];
export type Ends = Segment["ends"];
/** How much rowing lies behind a person. */
export type Level = NonNullable<Athlete["level"]>;
/** How warm the room is. */
export type Room = NonNullable<SessionRequest["room"]>;

/** Whether somebody is at the handle in this segment. */
export function isRowed(segment: Pick<Segment, "kind">): boolean {
  return segment.kind === "row" || segment.kind === "drill";
}
