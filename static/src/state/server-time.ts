/** How far the server's clock is ahead of this one, made out of answers that are dated to the second. */

interface Span {
  low: number;
  high: number;
}

/** What several answers have in common; where they contradict each other, a clock was set, and the last one counts. */
export function narrowed(before: Span | undefined, heard: Span): Span {
  const both = before && { low: Math.max(before.low, heard.low), high: Math.min(before.high, heard.high) };
  return both && both.low <= both.high ? both : heard;
}

/** A moment of the server, in ms since 1970 by this device. */
export function hereAt(server_ms: number, ahead: Span | undefined): number {
  return ahead ? server_ms - (ahead.low + ahead.high) / 2 : server_ms;
}
