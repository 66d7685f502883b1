/** Results that are kept of a person: which of many, and in what order. */
import type { Result } from "../plan/wire.js";

/** As in the planner's limits. */
export const MOST_RESULTS = 20;

/** All results that are here, and of more those nearest to 2000 m while there is room; and how many had none. */
export function joined(here: readonly Result[], more: readonly Result[]): { results: Result[]; left: number } {
  const others = more.filter((result) => !here.some((known) => isSame(known, result))).sort(byNearness);
  const room = Math.max(0, MOST_RESULTS - here.length);
  return { results: [...here, ...others.slice(0, room)].sort(byNearness), left: Math.max(0, others.length - room) };
}

/** The quicker first where the distance is the same. */
export function byNearness(a: Result, b: Result): number {
  return fromTwoK(a) - fromTwoK(b) || a.seconds - b.seconds;
}

export function isSame(a: Result, b: Result): boolean {
  return a.metres === b.metres && a.seconds === b.seconds;
}

/** How far a distance is from 2000 m, in doublings. */
function fromTwoK({ metres }: Result): number {
  return Math.abs(Math.log2(metres / 2000));
}
