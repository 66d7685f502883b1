/** Reads the time of a 2000 m piece as people type it. */

/** A time outside this is a slip of the finger: 5:00 is beyond any record, 20:00 is walking pace. */
const QUICKEST_SECONDS = 300;
const SLOWEST_SECONDS = 1200;

/** "7:42.0", "7:42", "7.42,0" or "742": seconds to the tenth, or undefined where it is no 2000 m time. */
export function secondsOf(text: string): number | undefined {
  const match = /^(\d{1,2})[:.'’′ ]?(\d{2})(?:[.,](\d))?["”″]?$/.exec(text);
  if (!match) return undefined;
  const [, minutes, seconds, tenth] = match;
  const total = Number(minutes) * 60 + Number(seconds) + Number(tenth ?? 0) / 10;
  const inside = Number(seconds) < 60 && total >= QUICKEST_SECONDS && total <= SLOWEST_SECONDS;
  return inside ? Math.round(total * 10) / 10 : undefined;
}
