/** What is said of the difference between this device's clock and the server's. */
import type { Difference } from "../data/server-clock.js";

/** A piece that starts by so much too early or too late is noticed by nobody. */
const AGREES_S = 0.1;

export function clockWords(known: Difference | "measuring" | "unknown"): string {
  if (known === "measuring") return "Checking this device's clock.";
  if (known === "unknown") return "No signal to check this clock by.";
  const { ahead_s, within_s } = known;
  const off_s = Math.abs(ahead_s);
  if (off_s <= Math.max(AGREES_S, within_s)) return `Right by the server's clock, to ${tenths(Math.max(AGREES_S, within_s))} s.`;
  return `This clock is ${lengthOf(off_s)} ${ahead_s > 0 ? "ahead of" : "behind"} the server's.`;
}

function lengthOf(seconds: number): string {
  if (seconds < 10) return `${seconds.toFixed(1)} s`;
  if (seconds < 100) return `${Math.round(seconds)} s`;
  const minutes = Math.round(seconds / 60);
  return minutes < 120 ? `${minutes} min` : `${Math.round(minutes / 60)} h`;
}

/** Rounded up, so that no more is said than is known. */
function tenths(seconds: number): string {
  return (Math.ceil(seconds * 10 - 1e-9) / 10).toFixed(1);
}
