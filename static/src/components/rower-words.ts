/** What is known about the rower, in a line. */
import { resultsOf, twoKOf, type AthleteRecord } from "../data/athlete.js";
import { alone } from "../plan/alone.js";
import { toNumber } from "../plan/exact-time.js";
import { splitClock } from "../plan/format.js";
import type { Athlete } from "../plan/wire.js";

/** "Splits from your 2 km in about 7:42.0."; "" where no result is known. `brought`: whose splits a one-file page was saved with. */
export function knownWords(rower: AthleteRecord, brought: Athlete | undefined = alone?.athlete): string {
  const two_k = twoKOf(rower);
  if (!two_k) return "";
  const first = resultsOf(rower)[0];
  const time = first?.metres === 2000 ? splitClock(first.seconds) : `about ${splitClock(toNumber(two_k.split) * 4)}`;
  return isBrought(rower, brought) ? `Splits from a 2 km in ${time}, as this page was saved.` : `Splits from your 2 km in ${time}.`;
}

function isBrought(rower: AthleteRecord, brought: Athlete | undefined): boolean {
  return JSON.stringify(brought?.results) === JSON.stringify(resultsOf(rower));
}
