/**
 * A timeline made anew for a result typed on the device: exactly what the planner compiles for that athlete.
 *
 * Targets follow from their fraction of 2 km power, their offset, their change. Metre blocks get another length,
 * other strokes and calls, and everything after them another start. The machine rhythm is taken; nobody has asked
 * the planner for another one.
 */
import { callsOf, placeCalls } from "./calls.js";
import { fromPair, inParts, toNumber, toPair, type Exact } from "./exact-time.js";
import { metresIn, powerOfSplit, secondsFor } from "./pace.js";
import { ASSUMED_TWO_K_SPLIT, splitAtFraction, type TwoK } from "./prediction.js";
import { lengthRemarks, SPLIT_OUT_OF_RANGE, targetRemarks } from "./remarks.js";
import { startingInTurn, waits } from "./starts.js";
import { durationOf, strokeFields, strokesIn, type Strokes } from "./strokes.js";
import { scaledTarget, splitOfTarget, targetAtLevel, type Before } from "./targets.js";
import { tenth, totalsOf } from "./totals.js";
import { isRowed, type Finding, type Fit, type Level, type Segment, type Target, type Timeline } from "./types.js";
import type { Block } from "./wire.js";

/**
 * The timeline for a 2 km split and a level, from the one for anybody, as kept in a plan record. Without a split only what pressure means and rough lengths follow, from
 * what is usual for the level; anybody is of club level.
 */
export function scaled(timeline: Timeline, two_k: TwoK | null, level: Level = "club"): Timeline {
  if (!two_k && level === "club") return timeline;
  const { segments, findings } = new Scaling(timeline, two_k, level).all();
  const waiting = segments.map((segment, index) => ({ ...segment, waits: waits(segment, segments[index + 1]) }));
  const started = startingInTurn(waiting);
  return { ...timeline, ...(two_k ? { athlete: paceOf(two_k) } : {}), segments: started, totals: totalsOf(started), findings };
}

interface Length {
  duration: Exact;
  strokes?: Strokes;
  basis: Segment["basis"];
}

/** One pass over the segments, in the order in which they are rowed. */
class Scaling {
  private before: Before = { exists: false, split: undefined };
  private readonly findings = new Map<string, Finding>();

  constructor(
    private readonly timeline: Timeline,
    private readonly two_k: TwoK | null,
    private readonly level: Level,
  ) {}

  all(): { segments: Segment[]; findings: Finding[] } {
    const segments = this.timeline.segments.map((segment) => (isRowed(segment) ? this.rowed(segment) : segment));
    return { segments, findings: [...this.findings.values()] };
  }

  private rowed(segment: Segment): Segment {
    const block = blockAt(this.timeline, segment.place)!;
    const aimed = withTarget(atLevel(segment, this.level), explicitSplit(block), this.before, this.two_k);
    this.remark(segment, targetRemarks(aimed, this.before, this.two_k !== null));
    const scaled = segment.metres_asked === undefined ? withMetres(aimed) : this.metreBlock(aimed, block);
    if (segment.metres_asked === undefined) this.keepRemarks(segment);
    if (segment.kind === "row" && scaled.target) this.before = { exists: true, split: splitOfTarget(scaled.target) };
    return scaled;
  }

  private metreBlock(segment: Segment, block: Block): Segment {
    const { duration, strokes, basis } = this.lengthOf(segment);
    const placing = placeCalls(callsOf(block.calls ?? [], segment.repetition), strokes, duration, basis !== "assumed", this.timeline.words_a_minute);
    this.remark(segment, lengthRemarks(segment, strokes, placing));
    return {
      ...withoutStrokes(segment),
      duration: toPair(duration),
      duration_s: toNumber(duration),
      basis,
      ...(strokes ? strokeFields(strokes, segment.target?.pressure) : {}),
      calls: placing.placed,
    };
  }

  private lengthOf({ target, metres_asked, rate }: Segment): Length {
    const split = splitOfTarget(target);
    const basis = split ? "split" : "assumed";
    const seconds = secondsFor(metres_asked!, split ?? assumedSplit(target, this.two_k?.split ?? ASSUMED_TWO_K_SPLIT[this.level]));
    const fit: Fit = split ? this.timeline.fit : "rate";
    if (rate === undefined) return { duration: seconds, basis };
    const strokes = strokesIn(seconds, rate, fit);
    return { duration: durationOf(strokes), strokes, basis };
  }

  private remark({ place }: Segment, remarks: readonly Omit<Finding, "place">[]): void {
    for (const remark of remarks) this.keep({ ...remark, place });
  }

  /** What was said about a length that has not changed still holds. */
  private keepRemarks({ place }: Segment): void {
    const still = this.timeline.findings.filter((finding) => finding.place === place && OF_LENGTH.has(finding.code));
    for (const finding of still) this.keep(finding);
  }

  private keep(finding: Finding): void {
    const place = finding.code === SPLIT_OUT_OF_RANGE ? "" : finding.place;
    const key = JSON.stringify([finding.code, place, finding.sentence]);
    if (!this.findings.has(key)) this.findings.set(key, finding);
  }
}

const OF_LENGTH = new Set(["no-rate", "paced-rate", "call-does-not-fit"]);

/** The block of the plan that a JSON pointer leads to. */
export function blockAt(timeline: Timeline, place: string): Block | undefined {
  const steps = place.split("/").slice(1);
  return steps.reduce<unknown>((value, step) => (value as Record<string, unknown> | undefined)?.[step], timeline.plan) as Block | undefined;
}

function explicitSplit({ effort }: Block): number | undefined {
  return effort && "split" in effort ? effort.split : undefined;
}

function atLevel(segment: Segment, level: Level): Segment {
  return segment.target ? { ...segment, target: targetAtLevel(segment.target, segment.rate, level) } : segment;
}

function withTarget(segment: Segment, explicit: number | undefined, before: Before, two_k: TwoK | null): Segment {
  return segment.target && two_k ? { ...segment, target: scaledTarget(segment.target, explicit, before, two_k) } : segment;
}

/** Of a block whose length is known: the metres at its split. */
export function withMetres(segment: Segment): Segment {
  const { metres: _metres, ...rest } = segment;
  const split = splitOfTarget(segment.target);
  if (!split || segment.basis === "assumed") return rest;
  return { ...rest, metres: tenth(metresIn(fromPair(segment.duration), split)) };
}

function withoutStrokes(segment: Segment): Segment {
  const rest = { ...segment };
  for (const field of ["paced_rate", "strokes", "stroke", "stroke_s", "drive_s", "clock_mark"] as const) delete rest[field];
  return rest;
}

/** Only for a rough length, where an effort says nothing about a split. */
function assumedSplit(target: Target | undefined, two_k_split: Exact): Exact {
  const fraction = target?.two_k_power_fraction;
  return fraction === undefined ? two_k_split : splitAtFraction(two_k_split, inParts(fraction, 1000));
}

function paceOf({ split, low, high }: TwoK): NonNullable<Timeline["athlete"]> {
  return {
    two_k_split_s: toNumber(split),
    two_k_split_low_s: toNumber(low),
    two_k_split_high_s: toNumber(high),
    two_k_watts: tenth(powerOfSplit(split)),
  };
}
