/** Seconds and splits as people read them: 7:42, 1:05:00, 1:55.5. */

/** A length of time: 0:30, 7:42, 1:05:00. Whole seconds, the nearest, a tie up; below zero reads as zero. */
export function clock(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds + 0.5));
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor((whole % 3600) / 60)];
  const second = two(whole % 60);
  return hours ? `${hours}:${two(minutes)}:${second}` : `${minutes}:${second}`;
}

/** A countdown: the time left, rounded up, so that 0:00 is read only at the end. */
export function countdown(seconds_left: number): string {
  return clock(wholeSecondsLeft(seconds_left));
}

/** A moment of the session is a sum of others: nearer to a whole second than this, and it is that second, rounded. */
const ROUNDING_S = 1e-6;

/** The whole seconds of a countdown. */
export function wholeSecondsLeft(seconds_left: number): number {
  return Math.max(0, Math.ceil(seconds_left - ROUNDING_S));
}

/** The whole seconds of what counts up. */
export function wholeSecondsGone(seconds: number): number {
  return Math.floor(seconds + ROUNDING_S);
}

/** A split in seconds per 500 m as machines show it, always with its tenth: 1:55.5. */
export function splitClock(split_s: number): string {
  const tenths = Math.floor(split_s * 10 + 0.5);
  return `${Math.floor(tenths / 600)}:${two(Math.floor((tenths % 600) / 10))}.${tenths % 10}`;
}

function two(value: number): string {
  return String(value).padStart(2, "0");
}
