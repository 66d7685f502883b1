/**
 * A plan from outside, such as from a link, looked at before anything is done with it: every field, every bound.
 *
 * It takes what planner/schemas takes, in the one form in which the planner writes it. `tests/shared/plans` holds
 * plans with the planner's verdict.
 */
import { isClean } from "./clean-text.js";
import { fitsExpanded } from "./expansion.js";
import type { Plan } from "./wire.js";

type Check = (value: unknown) => boolean;
type Fields = Record<string, Check>;

/** The plan, if this is one; undefined for anything else. */
export function checkedPlan(value: unknown): Plan | undefined {
  return PLAN(value) && fitsExpanded(value as Plan) ? (value as Plan) : undefined;
}

/** As in planner/limits.py. */
const SECONDS = whole(1, 14_400);
const STROKES = whole(1, 2000);
const SETTING = oneOf({ lever: whole(1, 10), drag_factor: whole(50, 250) });
const FOR_SECONDS = record({ seconds: SECONDS });
const PERCENT = whole(20, 100);

const EFFORT = oneOf({
  pressure: word("light", "half", "three-quarter", "full", "race"),
  split: stepped(60, 360, 10),
  split_offset: stepped(-40, 120, 10),
  change: stepped(-40, 40, 10),
  two_k_power_fraction: stepped(0.1, 3, 100),
  cr10: stepped(0, 10, 2),
  heart_rate: oneOf({ bpm: whole(40, 230), percent_max: PERCENT, percent_reserve: PERCENT }),
});

const SIDES: Check = (value) => whole(2, 8)(value) && (value as number) % 2 === 0;
const DRILL = either(
  record({ name: line(60) }),
  record({ name: line(60), sides: SIDES, side_seconds: whole(5, 120) }, { swap_seconds: whole(1, 60) }),
);

const CALL = either(record({ text: line(120) }, { stroke: STROKES }), record({ text: line(120), strokes_left: STROKES }));
const ASKED: Fields = { effort: EFFORT, drill: DRILL, focus: line(120), calls: several(CALL, 20), setting: SETTING };
const RATE = whole(10, 50);
const BLOCK = either(
  both(record({ for: oneOf({ seconds: SECONDS, metres: whole(50, 100_000) }) }, { ...ASKED, rate: RATE }), sidesFillIt),
  both(record({ for: record({ strokes: STROKES }), rate: RATE }, ASKED), sidesFillIt),
  both(record({ open: exactly(true) }, { ...ASKED, rate: RATE, calls: several(record({ text: line(120) }, { stroke: STROKES }), 20) }), sidesFillIt),
);
const REST = record({ rest: exactly(true), for: FOR_SECONDS });
const STEPS: Check = (value) => several(either(BLOCK, REST, REPEAT), 100)(value);
const REPEAT = record({ times: whole(1, 100), blocks: STEPS }, { between: STEPS });

const PART = either(
  record({ kind: word("warm-up", "main", "cool-down"), blocks: STEPS }),
  record({ kind: exactly("gap"), for: FOR_SECONDS }),
);
const PLAN = record(
  { format: exactly(1), title: line(80), parts: several(PART, 12) },
  { summary: line(600), setup: line(600), setting: SETTING },
);

/** The sides and swaps of a drill are as long as its block. */
function sidesFillIt(value: unknown): boolean {
  const { drill, for: length } = value as { drill?: { sides?: number; side_seconds?: number; swap_seconds?: number }; for?: { seconds?: number } };
  if (drill?.sides === undefined) return true;
  return length?.seconds === drill.sides * drill.side_seconds! + (drill.sides - 1) * (drill.swap_seconds ?? 0);
}

function whole(low: number, high: number): Check {
  return (value) => Number.isInteger(value) && (value as number) >= low && (value as number) <= high;
}

/** A number in steps of one part of so many, such as tenths. */
function stepped(low: number, high: number, parts: number): Check {
  return (value) => typeof value === "number" && value >= low && value <= high && Math.round(value * parts) / parts === value;
}

function line(longest: number): Check {
  return (value) => typeof value === "string" && isClean(value, longest);
}

function word(...words: string[]): Check {
  return (value) => words.includes(value as string);
}

function exactly(wanted: string | number | boolean): Check {
  return (value) => value === wanted;
}

function several(check: Check, most: number): Check {
  return (value) => Array.isArray(value) && value.length > 0 && value.length <= most && value.every(check);
}

/** An object with all of the first fields, perhaps some of the second, and no others. */
function record(needed: Fields, possible: Fields = {}): Check {
  const fields = new Map(Object.entries({ ...possible, ...needed }));
  return (value) => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) return false;
    const given = Object.entries(value);
    return given.every(([name, inner]) => fields.get(name)?.(inner)) && Object.keys(needed).every((name) => Object.hasOwn(value, name));
  };
}

/** An object with exactly one of these fields. */
function oneOf(fields: Fields): Check {
  return either(...Object.entries(fields).map(([name, check]) => record({ [name]: check })));
}

function either(...checks: Check[]): Check {
  return (value) => checks.some((check) => check(value));
}

function both(...checks: Check[]): Check {
  return (value) => checks.every((check) => check(value));
}
