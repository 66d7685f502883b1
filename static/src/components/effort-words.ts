/** The words of the session form of the CR10 scale, and the load that follows from an effort. */
import type { Option } from "./choice-look.js";

/** The anchors as remembered from Foster 2001 (J Strength Cond Res 15:109-115) [M]; what has no word there has none here. */
const WORDS: Readonly<Record<number, string>> = {
  0: "rest", 1: "very, very easy", 2: "easy", 3: "moderate", 4: "somewhat hard", 5: "hard", 7: "very hard", 10: "maximal",
};

/** "7: very hard", or the number alone. */
export function effortWords(cr10: number): string {
  return WORDS[cr10] ? `${cr10}: ${WORDS[cr10]}` : String(cr10);
}

export const EFFORTS: readonly Option<number>[] = Array.from({ length: 11 }, (_, value) => ({ value, name: effortWords(value) }));

/** Load is effort times minutes: Foster 2001 [S], as planner/load.py has it. */
export function loadWords(cr10: number, seconds_s: number): string {
  const minutes = Math.round(seconds_s / 60);
  return `Load ${cr10 * minutes}: effort ${cr10} times ${minutes} min. Coaches use it (Foster 2001) to compare your own sessions and weeks with one another; between two people it says nothing.`;
}
