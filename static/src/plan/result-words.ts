/** Results as people type and read them. */
import { clock, splitClock } from "./format.js";
import type { Result } from "./wire.js";

/** The bounds of planner/limits.py and planner/athlete.py: what is kept here is not refused there. */
const SHORTEST_METRES = 100;
const LONGEST_METRES = 42_195;
const LONGEST_S = 28_800;
export const SLOWEST_SPLIT_S = 360;
export const QUICKEST_SPLIT_S = 60;
/** Nobody is quicker over 2000 m, and by so many seconds a doubling of the distance beside it [C]. */
const QUICKEST_TWO_K_SPLIT_S = 75;
const QUICKEST_STEP_S = 5;

/** Hours, minutes, seconds, tenth: each form leaves out what it does not have. */
const FORMS = [
  /^(\d{1,2})[:h](\d{2}):(\d{2})(?:[.,](\d))?$/,
  /^()(\d{1,3})[:.'’′ ](\d{2})(?:[.,](\d))?["”″]?$/,
  /^()(\d{1,2})(\d{2})()$/,
  /^()()(\d{1,2})(?:[.,](\d))?$/,
];

/** "7:42.0", "7:42", "7.42,0", "742", "1:25:10" or, for a short piece, "17.5": seconds to the tenth, or undefined. */
export function timeOf(text: string): number | undefined {
  const match = FORMS.map((form) => form.exec(text)).find((found) => found !== null);
  if (!match) return undefined;
  const [hours, minutes, seconds, tenth] = match.slice(1).map((digits) => Number(digits ?? 0)) as [number, number, number, number];
  if (seconds >= 60 || (hours && minutes >= 60)) return undefined;
  return Math.round(((hours * 60 + minutes) * 60 + seconds) * 10 + tenth) / 10;
}

/** Whole metres: "7105", "7 105 m", "7.105"; undefined for anything else, so that "7.42" is not taken for 742. */
export function metresOf(text: string): number | undefined {
  const [match] = text.trim().match(/^(\d{1,6}|\d{1,3}[\s,.’']\d{3})(?=\s*m?$)/) ?? [];
  return match === undefined ? undefined : Number(match.replace(/\D/g, ""));
}

/** What is wrong with a result, in a sentence that says what would do; "" when nothing is. */
export function resultProblem({ metres, seconds }: Result): string {
  if (metres < SHORTEST_METRES || metres > LONGEST_METRES) return `${metreWords(metres)} is no distance to go by: it has to be from ${metreWords(SHORTEST_METRES)} to ${metreWords(LONGEST_METRES)}.`;
  if (seconds > LONGEST_S) return `${metreWords(metres)} in ${timeWords(seconds)} is longer than ${clock(LONGEST_S)}: look at the digits again.`;
  const split = (seconds * 500) / metres;
  if (split < quickestSplit(metres)) return `${metreWords(metres)} in ${timeWords(seconds)} is quicker than anybody rows that far: look at the digits again.`;
  if (split > SLOWEST_SPLIT_S) return `${metreWords(metres)} in ${timeWords(seconds)} is slower than 6:00 per 500 m: look at the digits again.`;
  return "";
}

function quickestSplit(metres: number): number {
  return Math.max(QUICKEST_SPLIT_S, QUICKEST_TWO_K_SPLIT_S + QUICKEST_STEP_S * Math.log2(metres / 2000));
}

/** "2000 m", and long ones in groups of three digits: "42 195 m". */
export function metreWords(metres: number): string {
  return metres < 10_000 ? `${metres} m` : `${String(metres).replace(/\d{3}$/, " $&")} m`;
}

/** "7:42.0", and an hour or more without the tenth. */
export function timeWords(seconds: number): string {
  return seconds < 3600 ? splitClock(seconds) : clock(seconds);
}

/** "2000 m in 7:42.0"; a result over whole minutes is told the other way round: "7105 m in 30 min". */
export function resultWords({ metres, seconds }: Result): string {
  return seconds % 60 === 0 && metres % 100 !== 0 ? `${metreWords(metres)} in ${seconds / 60} min` : `${metreWords(metres)} in ${timeWords(seconds)}`;
}
