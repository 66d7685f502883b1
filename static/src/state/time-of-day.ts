/** Times of day as people set them: "17:30" on this device's clock. */

/** The next moment at which the clock shows this time, in ms since 1970. Throws RangeError for anything but "hh:mm". */
export function nextAt(time: string, now_ms: number): number {
  const match = /^([01]\d|2[0-3]):([0-5]\d)/.exec(time);
  if (!match) throw new RangeError(`"${time}" is not a time of day: write it as 17:30`);
  const moment = new Date(now_ms);
  moment.setHours(Number(match[1]), Number(match[2]), 0, 0);
  if (moment.getTime() <= now_ms) moment.setDate(moment.getDate() + 1);
  return moment.getTime();
}

/** A moment as the clock shows it: "17:30". */
export function timeOfDay(at_ms: number): string {
  const moment = new Date(at_ms);
  return [moment.getHours(), moment.getMinutes()].map((part) => String(part).padStart(2, "0")).join(":");
}

/** A start by the clock lies near. */
const FARTHEST_MS = 2 * 3600 * 1000;
/** Of two readings of a time of day that is not near, the last one is meant when it lies less than this back. */
const PAST_MS = 12 * 3600 * 1000;
const DAY_MS = 24 * 3600 * 1000;

/** What is wrong with a start at `at_ms`, the next moment at which the clock shows `time`; "" when nothing is. */
export function startProblem(time: string, at_ms: number, now_ms: number): string {
  if (at_ms - now_ms <= FARTHEST_MS) return "";
  const now = timeOfDay(now_ms);
  if (at_ms - DAY_MS > now_ms - PAST_MS) return `${time} is past: it is ${now} now. Choose a time within the next two hours.`;
  return `${time} is more than two hours ahead: it is ${now} now. Choose a time before ${timeOfDay(now_ms + FARTHEST_MS)}.`;
}
