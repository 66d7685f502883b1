/** When a coach's calls fall in a block whose length has changed, and which of them can be spoken: planner/calls.py. */
import { ZERO, compare, exact, plus, times, toNumber, type Exact } from "./exact-time.js";
import type { Strokes } from "./strokes.js";
import type { Call, PlacedCall } from "./types.js";

/** An unhurried speaking voice, unless another is asked for: common practice [C]. */
const WORDS_A_MINUTE = 150;
const SHORTEST_CALL = exact(1);
/** Calls of the plan yield to announcements of a change, which have rank 1. */
const COACH_RANK = 2;

/** What can be said, and for what cannot, the call and why. */
export interface Placing {
  placed: PlacedCall[];
  misfits: { call: Call; sentence: string }[];
}

/** The calls of one repetition: of those written at the same stroke each has its turn; all of them outside a repeat. */
export function callsOf(calls: readonly Call[], repetition: { number: number; times: number } | undefined): readonly Call[] {
  if (!repetition) return calls;
  const { number, times: rounds } = repetition;
  return byStroke(calls).flatMap((same) => [same[(number - 1) % same.length]!, ...(number === 1 ? same.slice(rounds) : [])]);
}

function byStroke(calls: readonly Call[]): Call[][] {
  const found = new Map<string, Call[]>();
  for (const call of calls) {
    const stroke = call.strokes_left === undefined ? `${call.stroke ?? 1}` : `last ${call.strokes_left}`;
    found.set(stroke, [...(found.get(stroke) ?? []), call]);
  }
  return [...found.values()];
}

interface Spoken {
  text: string;
  at: Exact;
  end: Exact;
}

/** Puts calls on their strokes, in order. With an unknown length nothing is too late, nor counted from the end. */
export function placeCalls(
  calls: readonly Call[],
  strokes: Strokes | undefined,
  duration: Exact,
  length_known: boolean,
  words_a_minute = WORDS_A_MINUTE,
): Placing {
  const placing: Placing = { placed: [], misfits: [] };
  let last: Spoken | undefined;
  const numbered = calls.map((call) => ({ call, stroke: strokeOf(call, strokes) }));
  for (const { call, stroke } of numbered.sort((a, b) => a.stroke - b.stroke)) {
    const at = strokes ? times(exact(stroke - 1), strokes.stroke) : ZERO;
    const seconds = spokenSeconds(call.text, words_a_minute);
    const spoken = { text: call.text, at, end: plus(at, seconds) };
    const known = length_known ? duration : undefined;
    const sentence = trouble(call, stroke, strokes, length_known) ?? clash(spoken, last, known);
    if (sentence) placing.misfits.push({ call, sentence });
    else {
      last = spoken;
      const counted = strokes ? { stroke } : {};
      placing.placed.push({ ...counted, at_s: toNumber(at), text: call.text, seconds: toNumber(seconds), rank: COACH_RANK });
    }
  }
  return placing;
}

/** How long a text takes to say. */
function spokenSeconds(text: string, words_a_minute: number): Exact {
  const words = text.split(/\s+/).filter(Boolean).length;
  const seconds = exact(words * 60, words_a_minute);
  return compare(seconds, SHORTEST_CALL) > 0 ? seconds : SHORTEST_CALL;
}

function strokeOf(call: Call, strokes: Strokes | undefined): number {
  if (call.strokes_left !== undefined) return (strokes?.count ?? 0) - call.strokes_left + 1;
  return call.stroke ?? 1;
}

function trouble(call: Call, stroke: number, strokes: Strokes | undefined, length_known: boolean): string | undefined {
  const counted = call.stroke !== undefined || call.strokes_left !== undefined;
  if (counted && !strokes) return "the block has no rate, so its strokes cannot be counted";
  if (call.strokes_left !== undefined && !length_known) {
    return "the block's length is not known, so its last strokes cannot be counted";
  }
  const outside = strokes && length_known && (stroke < 1 || stroke > strokes.count);
  return outside ? `the block has only ${strokes.count} strokes` : undefined;
}

function clash(spoken: Spoken, last: Spoken | undefined, duration: Exact | undefined): string | undefined {
  if (last && compare(spoken.at, last.end) < 0) return `it would begin while "${last.text}" is still being said`;
  if (duration && compare(spoken.end, duration) > 0) return "it would still be going on when the block ends";
  return undefined;
}
