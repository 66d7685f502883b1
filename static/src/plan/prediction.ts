/** The likely 2 km split from one result, by two customs and their spread: planner/curve.py again, for one result. */
import { compare, exact, inParts, toNumber, type Exact } from "./exact-time.js";
import { splitOf } from "./pace.js";
import type { Level, Result } from "./types.js";

const TWO_K_METRES = 2000;

/** Seconds per 500 m over 2 km, for a rough length of metre blocks without a result: judgement [C]. */
export const ASSUMED_TWO_K_SPLIT: Readonly<Record<Level, Exact>> = { novice: exact(135), club: exact(120), trained: exact(105) };

/** T2 = T1 (D2/D1)^1.06: Riegel 1981, American Scientist 69:285-290 [M]. */
const POWER_LAW_EXPONENT = 1.06;
/** How far the exponent goes with the rower: a hobby survey [C]; Kennelly 1906 [S], its exponent [M]. */
const PERSONAL_EXPONENTS = [1.03, 9 / 8] as const;
/** Each doubling of the distance adds 5 s per 500 m: club custom [C]. */
const SECONDS_PER_DOUBLING = 5;

/** A 2 km split in seconds per 500 m, to the tenth, between the quickest and the slowest it may be. */
export interface TwoK {
  split: Exact;
  low: Exact;
  high: Exact;
}

/** The nearest tenth of a computed number of seconds, a tie going up. */
export function tenthsOf(value: number): Exact {
  return exact(Math.floor(value * 10 + 0.5), 10);
}

/**
 * The 2 km split of a result: its own over 2000 m, else the mean of both customs. Both may agree and both be wrong,
 * so that the spread is that of the exponents that rowers have.
 */
export function twoKFrom(result: Result): TwoK {
  const said = [byPowerLaw(result, POWER_LAW_EXPONENT), byDoubling(result)];
  const likely = (said[0]! + said[1]!) / 2;
  const all = [...said, ...PERSONAL_EXPONENTS.map((exponent) => byPowerLaw(result, exponent))];
  const [split, low, high] = [likely, Math.min(...all), Math.max(...all)].map((seconds) => tenthsOf(seconds / 4));
  return { split: split!, low: low!, high: high! };
}

/** The split at a fraction of the power of a 2 km split, to the tenth. */
export function splitAtFraction(two_k_split: Exact, fraction: Exact): Exact {
  return tenthsOf(toNumber(two_k_split) * toNumber(fraction) ** (-1 / 3));
}

/** The split, or undefined when no rower could be asked for it: 1:00 to 6:00 per 500 m. */
export function withinRange(split: Exact | undefined): Exact | undefined {
  const inside = split && compare(split, exact(60)) >= 0 && compare(split, exact(360)) <= 0;
  return inside ? split : undefined;
}

function byPowerLaw({ metres, seconds }: Result, exponent: number): number {
  return seconds * Math.pow(TWO_K_METRES / metres, exponent);
}

function byDoubling({ metres, seconds }: Result): number {
  const split = toNumber(splitOf(exact(metres), inParts(seconds)));
  return ((split + SECONDS_PER_DOUBLING * Math.log2(TWO_K_METRES / metres)) * TWO_K_METRES) / 500;
}
