/** What there is to say about a plan once a result is known: findings worded as in planner/stretches.py. */
import { compare, exact, times, type Exact } from "./exact-time.js";
import type { Placing } from "./calls.js";
import { rateOf, straysFrom, type Strokes } from "./strokes.js";
import type { Before } from "./targets.js";
import type { Finding, Segment } from "./types.js";

type Remark = Omit<Finding, "place">;

/** Said once, of the first block that it holds of: a slow rower's easy rowing is all of it alike. */
export const SPLIT_OUT_OF_RANGE = "split-out-of-range";

const NO_RATE: Remark = {
  code: "no-rate",
  severity: "note",
  sentence: "This block has no rate, so it has no beat and its strokes are not counted.",
  reason: "Give it one, such as r20, if you want the rhythm; to sit still, write rest after its length.",
};

/** Of a target: a change with nothing to change, a split that nobody could row. `rower` says whether a 2 km split is known. */
export function targetRemarks({ target }: Pick<Segment, "target">, before: Before, rower: boolean): Remark[] {
  const remarks: Remark[] = [];
  if (!target) return remarks;
  const { split_s, change_s, split_offset_s, two_k_power_fraction } = target;
  if (change_s !== undefined && !before.exists) {
    remarks.push({
      code: "change-without-target",
      severity: "advice",
      sentence: "This block changes a split, but no block before it, other than a drill, has a target to change.",
      reason: "Give an earlier block an effort, or this one a split of its own.",
    });
  }
  const fromTwoK = rower && (split_offset_s ?? two_k_power_fraction) !== undefined;
  const asks = change_s === undefined ? fromTwoK : before.split !== undefined;
  if (split_s === undefined && asks) {
    remarks.push({
      code: SPLIT_OUT_OF_RANGE,
      severity: "note",
      sentence:
        "What is asked for here comes to a split that no rower could be asked for, so none is shown. Where " +
        "that comes again, no more is said.",
      reason: "A split has to stay between 1:00 and 6:00 per 500 m.",
    });
  }
  return remarks;
}

/** Of a missing rate, of strokes that do not fill a length at it, and of calls that cannot be said in the block. */
export function lengthRemarks({ rate }: Pick<Segment, "rate">, strokes: Strokes | undefined, { misfits }: Placing): Remark[] {
  const strays = rate !== undefined && strokes && straysFrom(strokes, rate) ? [strayRemark(strokes, rate)] : [];
  return [...(rate === undefined ? [NO_RATE] : []), ...strays, ...misfits.map(({ call, sentence }) => misfitRemark(call.text, sentence))];
}

function strayRemark(strokes: Strokes, rate: number): Remark {
  return {
    code: "paced-rate",
    severity: "note",
    sentence:
      `Whole strokes make this block ${strokes.count} strokes at r${toOneDecimal(rateOf(strokes))} ` +
      `instead of r${rate}.`,
    reason: "Its length does not hold whole strokes at the rate asked for.",
  };
}

function misfitRemark(text: string, sentence: string): Remark {
  return {
    code: "call-does-not-fit",
    severity: "advice",
    sentence: `The call "${text}" is left out: ${sentence}.`,
    reason: "A call has to begin and end inside its block, clear of the call before it.",
  };
}

/** As Python prints one decimal: a tie to the even one. `value` is positive. */
function toOneDecimal(value: Exact): string {
  const { num, den } = times(value, exact(10));
  const whole = num / den;
  const half = compare(exact(num % den, den), exact(1, 2));
  const tenths = Number(whole) + (half > 0 || (half === 0 && whole % 2n === 1n) ? 1 : 0);
  return `${Math.floor(tenths / 10)}.${tenths % 10}`;
}
