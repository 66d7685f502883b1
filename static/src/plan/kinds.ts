/** The kinds of piece that a session is made for. */

export type Kind = "test" | "intervals" | "steady" | "capped" | "technique" | "warm-up";

export const KINDS: readonly { kind: Kind; name: string }[] = [
  { kind: "test", name: "Test piece" },
  { kind: "intervals", name: "Intervals" },
  { kind: "steady", name: "Steady" },
  { kind: "capped", name: "Capped rate" },
  { kind: "technique", name: "Technique" },
  { kind: "warm-up", name: "Warm-up alone" },
];
