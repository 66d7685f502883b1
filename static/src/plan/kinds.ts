/** The kinds of piece that a session is made for. */
import type { Level } from "./types.js";

export type Kind = "test" | "intervals" | "steady" | "capped" | "technique" | "warm-up";

export const KINDS: readonly { kind: Kind; name: string }[] = [
  { kind: "test", name: "Test piece" },
  { kind: "intervals", name: "Intervals" },
  { kind: "steady", name: "Steady" },
  { kind: "capped", name: "Capped rate" },
  { kind: "technique", name: "Technique" },
  { kind: "warm-up", name: "Warm-up alone" },
];

/** The level taken until somebody has said otherwise: drills that are not for beginners are given to nobody unasked. */
export function usualLevel(kind: Kind): Level {
  return kind === "technique" ? "novice" : "club";
}
