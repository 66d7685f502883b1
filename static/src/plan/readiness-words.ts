/** What is left at the start line, in words, percent and minutes. */
import { clock } from "./format.js";
import type { Range, Readiness, State } from "./wire.js";

export type Quantity = keyof State;

/** In the order in which they matter at the start, in the words and by the steps of planner/readiness.py [C]. */
export const QUANTITIES: readonly { quantity: Quantity; name: string; steps: readonly [number, string][] }[] = [
  { quantity: "reserve", name: "Reserve for hard rowing", steps: [[95, "nearly all"], [85, "most"], [50, "part spent"], [0, "mostly spent"]] },
  { quantity: "phosphocreatine", name: "Power for the first strokes", steps: [[95, "nearly all"], [85, "most"], [50, "part spent"], [0, "mostly spent"]] },
  { quantity: "oxygen", name: "Breathing still raised", steps: [[50, "much"], [25, "somewhat"], [10, "a little"], [0, "hardly"]] },
  { quantity: "warmth", name: "Muscles", steps: [[70, "warm"], [45, "fairly warm"], [0, "cool"]] },
];

/** What the middle of a range comes to, by the highest step that it reaches: "nearly all", "fairly warm". */
export function senseOf(steps: readonly [number, string][], { middle }: Range): string {
  return steps.find(([least]) => middle >= least)?.[1] ?? steps.at(-1)![1];
}

/** "92 to 98 %", or "95 %" where nothing is in doubt. */
export function rangeWords({ low, high }: Range): string {
  return low === high ? `${low} %` : `${low} to ${high} %`;
}

/** What a gap should be, and what it is. */
export function gapWords({ advised_gap, gap_s }: Readiness): string {
  const { low_s, best_s, high_s } = advised_gap;
  const advice = low_s === high_s ? `Best gap before the start: ${clock(best_s)}.` : `Best gap before the start: ${clock(best_s)}; from ${clock(low_s)} to ${clock(high_s)} will do.`;
  return gap_s === null ? advice : `${advice} This plan leaves ${clock(gap_s)}.`;
}
