/**
 * The timeline of a plan for anybody, by the clock: exactly what planner/timeline.py compiles, for plans that reach
 * a phone without their timeline. What else there is to say about a plan, and its scaling to a result, is elsewhere.
 */
import { callsOf, placeCalls } from "./calls.js";
import { exact, inParts, toNumber, toPair, type Exact } from "./exact-time.js";
import { OPEN_SECONDS, expanded, isRest, type Placed } from "./expansion.js";
import { metresIn, secondsFor } from "./pace.js";
import { ASSUMED_TWO_K_SPLIT, splitAtFraction } from "./prediction.js";
import { lengthRemarks, targetRemarks, SPLIT_OUT_OF_RANGE } from "./remarks.js";
import { startingInTurn, waits } from "./starts.js";
import { durationOf, strokeFields, strokesIn, type Strokes } from "./strokes.js";
import { splitOfTarget, targetForAnybody, type Before } from "./targets.js";
import { tenth, totalsOf } from "./totals.js";
import { isRowed, type Call, type Finding, type Fit, type Segment, type Target, type Timeline } from "./types.js";
import type { Block, Drill, Plan, Turn } from "./wire.js";

/** A segment before its place in the session is known. */
type Stretch = Omit<Segment, "index" | "part" | "part_index" | "place" | "start" | "start_s" | "waits" | "estimated">;
type Laid = Stretch & Pick<Segment, "part" | "part_index" | "place">;
type Length = Pick<Segment, "ends" | "basis"> & { duration: Exact; strokes?: Strokes };

/** The timeline of a plan that has been checked. */
export function compiledForAnybody(plan: Plan): Timeline {
  const { laid, findings } = new Layout(plan).all();
  const segments = startingInTurn(placed(laid, plan.setting));
  return { plan, fit: "clock", segments, totals: totalsOf(segments), findings };
}

/** One pass over the expanded plan, in the order in which it is rowed. */
class Layout {
  private before: Before = { exists: false, split: undefined };
  private readonly findings = new Map<string, Finding>();

  constructor(private readonly plan: Plan) {}

  all(): { laid: Laid[]; findings: Finding[] } {
    const laid = this.plan.parts.flatMap((part, part_index): Laid[] => {
      const here = `/parts/${part_index}`;
      if (part.kind === "gap") return [{ part: "gap", part_index, place: here, ...still("gap", part.for.seconds) }];
      return expanded(part.blocks, `${here}/blocks`).flatMap((step) =>
        this.stretchesOf(step).map((stretch) => ({ part: part.kind, part_index, place: step.place, ...stretch })),
      );
    });
    return { laid, findings: [...this.findings.values()] };
  }

  private stretchesOf({ step, place, repetition }: Placed): Stretch[] {
    const turn = repetition ? { repetition } : {};
    if (isRest(step)) return [{ ...still("rest", step.for.seconds), ...turn }];
    const target = step.effort && targetForAnybody(step.effort, step.rate, this.before);
    if (target) this.remark(place, targetRemarks({ target }, this.before, false));
    const calls = callsOf(step.calls ?? [], repetition);
    const stretches = step.drill?.sides === undefined
      ? [this.stretch(step, place, lengthOf(step, target), target, calls)]
      : this.sides(step, place, step.drill, target, calls);
    if (target && !step.drill) this.before = { exists: true, split: splitOfTarget(target) };
    return stretches.map((stretch) => ({ ...stretch, ...turn }));
  }

  /** Calls counted from the start belong to the first side, those counted from the end to the last. */
  private sides(block: Block, place: string, drill: Drill, target: Target | undefined, calls: readonly Call[]): Stretch[] {
    const sides = drill.sides!;
    const length = inTime(exact(drill.side_seconds!), block.rate, "time", "clock");
    return Array.from({ length: sides }, (_, index) => index + 1).flatMap((side) => {
      const turn = { name: drill.name, side, sides };
      const swap = side > 1 && drill.swap_seconds ? [{ ...still("rest", drill.swap_seconds), drill: { ...turn, swap: true } }] : [];
      const here = calls.filter((call) => (call.strokes_left === undefined ? side === 1 : side === sides));
      return [...swap, this.stretch(block, place, length, target, here, turn)];
    });
  }

  private stretch(block: Block, place: string, length: Length, target: Target | undefined, calls: readonly Call[], turn?: Turn): Stretch {
    const { duration, strokes, ends, basis } = length;
    const placing = placeCalls(calls, strokes, duration, basis !== "assumed");
    this.remark(place, lengthRemarks(block, strokes, placing));
    const drill = turn ?? (block.drill && { name: block.drill.name });
    return {
      kind: block.drill ? "drill" : "row",
      duration: toPair(duration),
      duration_s: toNumber(duration),
      ...(block.rate === undefined ? {} : { rate: block.rate }),
      ...(strokes ? strokeFields(strokes, target?.pressure) : {}),
      ...(target ? { target } : {}),
      ...metresOf(block, length, target),
      ...(block.focus === undefined ? {} : { focus: block.focus }),
      ...(drill ? { drill } : {}),
      calls: placing.placed,
      ends,
      basis,
      ...(block.setting ? { setting: block.setting } : {}),
    };
  }

  /** Each remark once for each place, however often it is rowed; of splits out of range one in all. */
  private remark(place: string, remarks: readonly Omit<Finding, "place">[]): void {
    for (const remark of remarks) {
      const key = JSON.stringify([remark.code, remark.code === SPLIT_OUT_OF_RANGE ? "" : place, remark.sentence]);
      if (!this.findings.has(key)) this.findings.set(key, { ...remark, place });
    }
  }
}

function still(kind: "gap" | "rest", seconds: number): Stretch {
  return { kind, duration: [seconds, 1], duration_s: seconds, calls: [], ends: "time", basis: "clock" };
}

function lengthOf({ for: length, rate }: Block, target: Target | undefined): Length {
  if (!length) return inTime(exact(OPEN_SECONDS), rate, "tap", "assumed");
  if ("seconds" in length) return inTime(exact(length.seconds), rate, "time", "clock");
  if ("strokes" in length) {
    const strokes = { count: length.strokes, stroke: exact(60, rate!) };
    return { duration: durationOf(strokes), ends: "strokes", basis: "clock", strokes };
  }
  const split = splitOfTarget(target);
  if (split) return inTime(secondsFor(length.metres, split), rate, "metres", "split");
  return inTime(secondsFor(length.metres, assumedSplit(target)), rate, "metres", "assumed");
}

/** By the clock where the length is known, else by the rate. */
function inTime(seconds: Exact, rate: number | undefined, ends: Segment["ends"], basis: Segment["basis"]): Length {
  if (rate === undefined) return { duration: seconds, ends, basis };
  const fit: Fit = basis === "assumed" ? "rate" : "clock";
  const strokes = strokesIn(seconds, rate, fit);
  return { duration: fit === "clock" ? seconds : durationOf(strokes), ends, basis, strokes };
}

function assumedSplit(target: Target | undefined): Exact {
  const fraction = target?.two_k_power_fraction;
  const { club } = ASSUMED_TWO_K_SPLIT;
  return fraction === undefined ? club : splitAtFraction(club, inParts(fraction, 1000));
}

function metresOf({ for: length }: Block, { duration, basis }: Length, target: Target | undefined): Pick<Segment, "metres" | "metres_asked"> {
  if (length && "metres" in length) return { metres: length.metres, metres_asked: length.metres };
  const split = splitOfTarget(target);
  return split && basis !== "assumed" ? { metres: tenth(metresIn(duration, split)) } : {};
}

/** Each with its number, whether it waits, and the change of setting before it; starts are still to come. */
function placed(laid: readonly Laid[], usual: Plan["setting"]): Omit<Segment, "start" | "start_s">[] {
  let estimated = false;
  let current = usual;
  return laid.map(({ setting, ...stretch }, index) => {
    estimated ||= stretch.basis !== "clock";
    const wanted = isRowed(stretch) ? (setting ?? usual ?? current) : current;
    const change = wanted && JSON.stringify(wanted) !== JSON.stringify(current) ? { setting: wanted } : {};
    current = wanted;
    return { index, ...stretch, waits: waits(stretch, laid[index + 1]), estimated, ...change };
  });
}
