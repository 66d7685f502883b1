/** What people type as a result, for one of the tests or a distance of their own. */
import { TESTS, type Choice } from "../plan/piece-choices.js";
import { metresOf, resultProblem, timeOf } from "../plan/result-words.js";
import type { Result } from "../plan/wire.js";
import type { Option } from "./choice-look.js";

export const OTHER: Choice = { name: "Other metres", length: { metres: 0 } };
export const ROWED: readonly Option<Choice>[] = [...TESTS, OTHER].map((choice) => ({ value: choice, name: choice.name }));
export const TWO_K = TESTS.find(({ length }) => "metres" in length && length.metres === 2000)!;

/** Said where only the distance is missing. */
export const NO_DISTANCE = "Write the distance in metres, such as 3000.";

/** The result, or what is wrong with it: a time over metres, or metres over a time. */
export function readResult({ length }: Choice, text: string, distance = ""): Result | string {
  if ("seconds" in length) {
    const metres = metresOf(text);
    return metres === undefined ? `“${text}” is no number of metres, such as 7105.` : checked({ metres, seconds: length.seconds });
  }
  const seconds = timeOf(text);
  if (seconds === undefined) return `“${text}” is no time: write minutes and seconds, such as 7:42.0.`;
  const metres = length === OTHER.length ? metresOf(distance) : length.metres;
  return metres === undefined ? NO_DISTANCE : checked({ metres, seconds });
}

function checked(result: Result): Result | string {
  return resultProblem(result) || result;
}
