/** The rate really rowed, from taps at the catches by somebody who stands beside. Pure. */

/** After a pause this long the strokes before it say nothing any more. */
export const PAUSE_MS = 6000;
/** Two taps nearer than this are one: nobody rows at 100 [C]. */
const SAME_TAP_MS = 600;
/** The middle of so many strokes: two of them may be wrong. */
const STROKES = 5;
/** Fewer say nothing: of three, one may be wrong. */
export const LEAST_STROKES = 3;

/** The taps that still count after one more, in milliseconds of one clock. */
export function withTap(taps: readonly number[], at_ms: number): number[] {
  const last = taps.at(-1);
  if (last !== undefined && at_ms - last < SAME_TAP_MS) return [...taps];
  if (last !== undefined && at_ms - last > PAUSE_MS) return [at_ms];
  return [...taps, at_ms].slice(-STROKES - 1);
}

/** Strokes a minute by the middle one of the last strokes; null until there are enough of them. */
export function rateOfTaps(taps: readonly number[]): number | null {
  const strokes = taps.slice(1).map((at_ms, index) => at_ms - taps[index]!).sort((a, b) => a - b);
  if (strokes.length < LEAST_STROKES) return null;
  const half = strokes.length / 2;
  const middle = strokes.length % 2 ? strokes[Math.floor(half)]! : (strokes[half - 1]! + strokes[half]!) / 2;
  return 60_000 / middle;
}
