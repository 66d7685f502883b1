/** A block made longer while it is under way: one more minute, in whole strokes at its own pace, and all after it later. */
import { placeCalls } from "./calls.js";
import { compare, exact, fromPair, inParts, over, plus, roundHalfUp, times, toNumber, toPair, type Exact } from "./exact-time.js";
import { blockAt, withMetres } from "./scale.js";
import { startingInTurn } from "./starts.js";
import type { Strokes } from "./strokes.js";
import { totalsOf } from "./totals.js";
import type { Call, PlacedCall, Segment, Timeline } from "./types.js";

const MINUTE = exact(60);
/** The most that is added to one block, in seconds. */
const MOST_ADDED_S = 600;

/**
 * Whether a segment can grow by a minute, `elapsed_s` seconds into it: what ends by a tap lasts until that, and nothing
 * grows by more than ten minutes. `planned` is the timeline before any growth.
 */
export function canGrow(planned: Timeline, timeline: Timeline, index: number, elapsed_s: number): boolean {
  const segment = timeline.segments[index]!;
  if (segment.ends === "metres" || segment.ends === "tap") return false;
  const from_s = segment.kind === "gap" ? elapsed_s : 0;
  const grown_s = Math.max(segment.duration_s, from_s) + toNumber(minuteOf(segment));
  return grown_s - Math.max(planned.segments[index]!.duration_s, from_s) <= MOST_ADDED_S + 1e-6;
}

/** The timeline with a minute more in a segment that can grow. A gap that is over already has it from now on. */
export function withOneMoreMinute(timeline: Timeline, index: number, elapsed_s: number): Timeline {
  const segment = timeline.segments[index]!;
  const from = segment.kind === "gap" ? [inParts(elapsed_s, 1000)] : [];
  const duration = plus(longest(fromPair(segment.duration), ...from), minuteOf(segment));
  const longer = lasting(timeline, segment, duration);
  const segments = startingInTurn(timeline.segments.map((each) => (each === segment ? longer : each)));
  return { ...timeline, segments, totals: totalsOf(segments) };
}

/** The whole strokes nearest to a minute, a tie up; a minute where nothing is rowed to a rate. */
function minuteOf({ stroke }: Segment): Exact {
  if (!stroke) return MINUTE;
  const one = fromPair(stroke);
  return times(one, longest(exact(1), exact(roundHalfUp(over(MINUTE, one)))));
}

function lasting(timeline: Timeline, segment: Segment, duration: Exact): Segment {
  const longer = withMetres({ ...segment, duration: toPair(duration), duration_s: toNumber(duration) });
  if (!segment.stroke) return longer;
  const stroke = fromPair(segment.stroke);
  const strokes: Strokes = { stroke, count: Number(roundHalfUp(over(duration, stroke))) };
  const calls = askedAgain(segment, blockAt(timeline, segment.place)?.calls ?? []);
  return { ...longer, strokes: strokes.count, calls: placeCalls(calls, strokes, duration, true, timeline.words_a_minute).placed };
}

/** The calls that were placed, as the plan counts them: those counted from the end stay so far from the end. */
function askedAgain(segment: Segment, written: readonly Call[]): Call[] {
  const leftAt = ({ text, stroke }: PlacedCall) =>
    written.find((call) => call.text === text && call.strokes_left !== undefined && segment.strokes! - call.strokes_left + 1 === stroke)?.strokes_left;
  return segment.calls.map((placed) => {
    const strokes_left = leftAt(placed);
    if (strokes_left !== undefined) return { text: placed.text, strokes_left };
    return { text: placed.text, stroke: placed.stroke ?? 1 };
  });
}

function longest(first: Exact, ...others: Exact[]): Exact {
  return others.reduce((most, other) => (compare(other, most) > 0 ? other : most), first);
}
