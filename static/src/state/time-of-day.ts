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
