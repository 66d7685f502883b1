/** The pieces that can be chosen on the first screen, by kind. What stands here as common practice is no rule [C]. */
import type { Piece } from "./wire.js";

/** A length to choose, and how it is called. */
export interface Choice {
  name: string;
  length: { metres: number } | { seconds: number };
}

export interface Repetitions {
  times: number;
  length: Choice["length"];
  rest_seconds: number;
}

const metres = (count: number, name: string): Choice => ({ name, length: { metres: count } });
const minutes = (count: number): Choice => ({ name: `${count} min`, length: { seconds: count * 60 } });

/** The test pieces, by distance and then by time. */
export const TESTS: readonly Choice[] = [
  metres(100, "100 m"), metres(500, "500 m"), metres(1000, "1 km"), metres(2000, "2 km"), metres(5000, "5 km"), metres(6000, "6 km"),
  metres(10_000, "10 km"), metres(21_097, "Half marathon"), minutes(1), minutes(4), minutes(30), minutes(60),
];
export const CAPPED: readonly Choice[] = [minutes(20), minutes(30), minutes(60), metres(2000, "2 km"), metres(5000, "5 km"), metres(10_000, "10 km")];
export const CAPS: readonly number[] = [18, 20, 22, 24, 26];
export const STEADY: readonly Choice[] = [20, 30, 40, 60].map(minutes);
export const TECHNIQUE: readonly Choice[] = [10, 20, 30].map(minutes);

export const SETS: readonly Repetitions[] = [
  { times: 8, length: { metres: 500 }, rest_seconds: 180 },
  { times: 5, length: { metres: 1000 }, rest_seconds: 240 },
  { times: 4, length: { metres: 2000 }, rest_seconds: 300 },
  { times: 10, length: { seconds: 60 }, rest_seconds: 60 },
  { times: 6, length: { seconds: 240 }, rest_seconds: 180 },
];

/** What is chosen of each kind before anybody has chosen. */
export const USUAL = { test: 3, capped: 1, cap: 20, steady: 1, technique: 1, set: 0 } as const;

/** "8 × 500 m, 3:00 rest" */
export function setName({ times, length, rest_seconds }: Repetitions): string {
  const each = "metres" in length ? `${length.metres} m` : minutesOf(length.seconds);
  return `${times} × ${each}, ${minutesOf(rest_seconds)} rest`;
}

/** The bounds of a set of one's own, as in planner/pieces.py. */
export const BOUNDS = {
  times: { low: 2, high: 40 },
  metres: { low: 100, high: 10_000 },
  minutes: { low: 0.25, high: 60 },
  rest: { low: 0.25, high: 20 },
} as const;
/** Seconds of a set are counted in fives. */
const SET_STEP_S = 5;

export function inFives(minutes: number): number {
  return Math.round((minutes * 60) / SET_STEP_S) * SET_STEP_S;
}

export function testPiece(choice: Choice, rate_cap?: number): Piece {
  return { test: { ...choice.length, ...(rate_cap === undefined ? {} : { rate_cap }) } };
}

export function intervalPiece({ times, length, rest_seconds }: Repetitions): Piece {
  return { intervals: { times, ...length, rest_seconds } };
}

function minutesOf(seconds: number): string {
  return seconds % 60 ? `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}` : `${seconds / 60} min`;
}
