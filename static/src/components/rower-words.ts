/** What is known about the rower, in a line. */
import { resultsOf, twoKOf, type AthleteRecord } from "../data/athlete.js";
import { toNumber } from "../plan/exact-time.js";
import { splitClock } from "../plan/format.js";

/** "Splits from your 2 km in about 7:42.0."; "" where no result is known. */
export function knownWords(rower: AthleteRecord): string {
  const two_k = twoKOf(rower);
  if (!two_k) return "";
  const rowed = resultsOf(rower)[0]?.metres === 2000;
  return `Splits from your 2 km in ${rowed ? "" : "about "}${splitClock(toNumber(two_k.split) * 4)}.`;
}
