/** The likely 2 km split from one result, by two customs and their spread: planner/prediction.py again. */
import { compare, exact, inParts, toNumber, type Exact } from "./exact-time.js";
import { splitOf } from "./pace.js";
import type { Result } from "./types.js";

const TWO_K_METRES = 2000;

/** T2 = T1 (D2/D1)^1.06: Riegel 1981, American Scientist 69:285-290 [M]. */
const POWER_LAW_EXPONENT = 1.06;
/** The power law is said to hold for about 3.5 to 230 minutes [M]. */
const POWER_LAW_SECONDS = [210, 13_800] as const;
/** Each doubling of the distance adds 5 s per 500 m: club custom [C]. */
const SECONDS_PER_DOUBLING = 5;

/** A 2 km split in seconds per 500 m, to the tenth, and the least and most the customs give. */
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
 * The 2 km split of a result: its own over 2000 m, else the mean of both customs. Outside the range of the power
 * law the doubling custom stands alone, but the spread still shows both.
 */
export function twoKFrom(result: Result): TwoK {
  const law = byPowerLaw(result) / 4;
  const custom = byDoubling(result) / 4;
  const inside = result.seconds >= POWER_LAW_SECONDS[0] && result.seconds <= POWER_LAW_SECONDS[1];
  const best = inside ? (law + custom) / 2 : custom;
  return { split: tenthsOf(best), low: tenthsOf(Math.min(law, custom)), high: tenthsOf(Math.max(law, custom)) };
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

function byPowerLaw({ metres, seconds }: Result): number {
  return seconds * Math.pow(TWO_K_METRES / metres, POWER_LAW_EXPONENT);
}

function byDoubling({ metres, seconds }: Result): number {
  const split = toNumber(splitOf(exact(metres), inParts(seconds)));
  return ((split + SECONDS_PER_DOUBLING * Math.log2(TWO_K_METRES / metres)) * TWO_K_METRES) / 500;
}
