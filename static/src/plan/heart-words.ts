/** How the heart rates of the bands were reckoned, in a line: planner/bands.py goes by reserve where it can. */
import type { HeartRates } from "./wire.js";

export function heartWords({ max, max_from, rest, error }: HeartRates): string {
  const highest = max_from === "given" ? `your highest, ${max}.` : `your highest, taken from your age: ${max}, give or take ${error}. A measured one is better.`;
  const shares = rest === undefined ? "of" : `of the heart-rate reserve, from your ${rest} at rest to`;
  return `Heart rates are shares ${shares} ${highest}`;
}
