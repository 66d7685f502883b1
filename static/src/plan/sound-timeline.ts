/**
 * Whether a timeline read back from storage is whole: everything the player rests on is there, and its sums agree.
 * What storage hands back may be damaged, or come from another version of the app.
 */
import * as v from "valibot";
import { ZERO, compare, fromPair, plus, times, exact, type Exact } from "./exact-time.js";
import type { Pair, Segment } from "./types.js";

/** The newest format of a plan that this build can read. */
export const PLAN_FORMAT = 1;

const whole = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const measure = v.pipe(v.number(), v.finite(), v.minValue(0));
const pair = v.pipe(v.strictTuple([whole, whole]), v.check(([, denominator]) => denominator > 0));
const fields = v.record(v.string(), v.unknown());

const CALL = v.object({ at_s: measure, rank: v.number(), seconds: measure, text: v.string(), stroke: v.optional(whole) });

const TARGET = v.object({
  split_s: v.optional(measure),
  watts: v.optional(measure),
  two_k_power_fraction: v.optional(measure),
  change_s: v.optional(v.pipe(v.number(), v.finite())),
  split_offset_s: v.optional(v.pipe(v.number(), v.finite())),
  pressure: v.optional(v.picklist(["light", "half", "three-quarter", "full", "race"])),
  cr10: v.optional(measure),
  talk: v.optional(v.string()),
  heart_rate: v.optional(fields),
});

const SEGMENT = v.object({
  index: whole,
  kind: v.picklist(["row", "rest", "gap", "drill"]),
  part: v.picklist(["warm-up", "main", "cool-down", "gap"]),
  part_index: whole,
  place: v.string(),
  start: pair,
  start_s: measure,
  duration: pair,
  duration_s: measure,
  ends: v.picklist(["time", "metres", "strokes", "tap"]),
  basis: v.picklist(["clock", "split", "assumed"]),
  waits: v.boolean(),
  estimated: v.boolean(),
  calls: v.array(CALL),
  rate: v.optional(measure),
  paced_rate: v.optional(measure),
  stroke: v.optional(pair),
  stroke_s: v.optional(measure),
  strokes: v.optional(whole),
  drive_s: v.optional(measure),
  metres: v.optional(measure),
  metres_asked: v.optional(measure),
  target: v.optional(TARGET),
  focus: v.optional(v.string()),
  drill: v.optional(v.object({ name: v.string(), side: v.optional(whole), sides: v.optional(whole), swap: v.optional(v.boolean()) })),
  repetition: v.optional(v.object({ number: whole, times: whole })),
  setting: v.optional(fields),
  clock_mark: v.optional(v.object({ strokes: whole, seconds: whole })),
});

/** What is shown of a plan, and what its timeline is scaled by. */
export const PLAN = v.object({
  format: whole,
  title: v.string(),
  parts: v.array(fields),
  summary: v.optional(v.string()),
  setup: v.optional(v.string()),
  setting: v.optional(fields),
});

/** A timeline with its sums. What a newer planner adds to it is let through. */
export const TIMELINE = v.pipe(
  v.object({
    plan: PLAN,
    fit: v.picklist(["clock", "rate"]),
    segments: v.pipe(v.array(SEGMENT), v.minLength(1)),
    totals: v.object({ seconds: pair, seconds_s: measure, strokes: whole, estimated: v.boolean(), parts: v.array(fields), metres: v.optional(measure) }),
    findings: v.array(fields),
    words_a_minute: v.optional(measure),
  }),
  v.rawCheck(({ dataset, addIssue }) => {
    if (!dataset.typed) return;
    const { segments, totals } = dataset.value;
    const wrong = segments.findIndex((segment, index) => !isInItsPlace(segment, segments[index - 1], index));
    if (wrong >= 0) addIssue({ message: "out of place", path: [step("segments", segments), step(wrong, segments[wrong])] });
    else if (!agree(totals.seconds, endOf(segments.at(-1)!))) addIssue({ message: "another length", path: [step("totals", totals)] });
  }),
);

type Stretch = Pick<Segment, "index" | "start" | "duration" | "strokes" | "stroke" | "drive_s" | "start_s" | "duration_s">;

/** It begins where the one before ends, and whole strokes fill it where it has a beat. */
function isInItsPlace(segment: Stretch, before: Stretch | undefined, index: number): boolean {
  const begins = agree(segment.start, before ? endOf(before) : ZERO);
  return segment.index === index && begins && isNear(segment.start, segment.start_s) && isNear(segment.duration, segment.duration_s) && beatFits(segment);
}

function beatFits({ stroke, strokes, drive_s, duration }: Stretch): boolean {
  if (!stroke) return strokes === undefined;
  if (!strokes || !stroke[0] || drive_s === undefined || drive_s > stroke[0] / stroke[1]) return false;
  return agree(duration, times(fromPair(stroke), exact(strokes)));
}

function endOf({ start, duration }: Stretch): Exact {
  return plus(fromPair(start), fromPair(duration));
}

function agree(written: Pair, computed: Exact): boolean {
  return compare(fromPair(written), computed) === 0;
}

/** The plain number beside an exact one is a rounding of it. */
function isNear([numerator, denominator]: Pair, plain: number): boolean {
  return Math.abs(numerator / denominator - plain) < 0.001;
}

function step(key: string | number, value: unknown): v.UnknownPathItem {
  return { type: "unknown", origin: "value", input: undefined, key, value };
}
