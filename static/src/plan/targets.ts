/** What a segment asks of one rower, from its effort and a 2 km split: what in planner/intensity.py rests on a result. */
import { compare, cubed, exact, inParts, nearest, over, plus, times, toNumber, type Exact } from "./exact-time.js";
import { powerOfSplit } from "./pace.js";
import { splitAtFraction, withinRange, type TwoK } from "./prediction.js";
import { tenth } from "./totals.js";
import type { Level, Target } from "./types.js";
import type { Effort } from "./wire.js";

/** The last rowed target before a segment: whether there was one, and its split where known. */
export interface Before {
  exists: boolean;
  split: Exact | undefined;
}

/** What can still be said aloud, by share of 2 km power: common practice [C]. */
const TALK: readonly (readonly [Exact, string])[] = [
  [exact(55, 100), "easy talk"],
  [exact(70, 100), "whole sentences"],
  [exact(85, 100), "short phrases"],
  [exact(97, 100), "single words"],
];
/** The same by effort from 0 to 10 [C]. */
const TALK_BY_CR10: readonly (readonly [number, string])[] = [
  [3, "easy talk"],
  [5, "whole sentences"],
  [7, "short phrases"],
  [9, "single words"],
];
const NO_TALK = "no talk";

/** Pressure as work per stroke against the stroke of a 2 km race, and that race's rate: common practice [C]. */
const WORK_PER_STROKE: Record<string, Exact> = {
  light: exact(50, 100),
  half: exact(65, 100),
  "three-quarter": exact(80, 100),
  full: exact(1),
};
const RACE_RATE: Readonly<Record<Level, number>> = { novice: 28, club: 30, trained: 32 };

/** What an effort asks of anybody at a rate, without a result: planner/intensity.py again. */
export function targetForAnybody(effort: Effort, rate: number | undefined, before: Before): Target {
  if ("pressure" in effort) {
    const fraction = fractionOf(effort.pressure, rate, "club");
    return { pressure: effort.pressure, ...(fraction ? atFraction(fraction) : {}) };
  }
  if ("two_k_power_fraction" in effort) return atFraction(inParts(effort.two_k_power_fraction, 100));
  if ("split" in effort) return withKnown({}, inParts(effort.split));
  if ("split_offset" in effort) return { split_offset_s: effort.split_offset };
  if ("change" in effort) return withKnown({ change_s: effort.change }, withinRange(before.split && plus(before.split, inParts(effort.change))));
  if ("cr10" in effort) return { cr10: effort.cr10, talk: TALK_BY_CR10.find(([most]) => effort.cr10 <= most)?.[1] ?? NO_TALK };
  return { heart_rate: effort.heart_rate };
}

/** A target of pressure as it is for a level: the same pressure is another power where races have another rate. */
export function targetAtLevel(target: Target, rate: number | undefined, level: Level): Target {
  const fraction = target.pressure && fractionOf(target.pressure, rate, level);
  return fraction ? { ...target, ...atFraction(fraction) } : target;
}

function fractionOf(pressure: string, rate: number | undefined, level: Level): Exact | undefined {
  if (pressure === "race") return exact(1);
  return rate === undefined ? undefined : nearest(over(times(WORK_PER_STROKE[pressure]!, exact(rate)), exact(RACE_RATE[level])), 1000);
}

function atFraction(fraction: Exact): Target {
  return { two_k_power_fraction: toNumber(fraction), talk: talkAt(fraction) };
}

/** A target for this rower; what does not rest on a result stays. `explicit` is a split asked for outright. */
export function scaledTarget(target: Target, explicit: number | undefined, before: Before, rower: TwoK): Target {
  const two_k = rower.split;
  if (explicit !== undefined) return withSplit(target, inParts(explicit), two_k);
  if (target.split_offset_s !== undefined) return withSplit(target, plus(two_k, inParts(target.split_offset_s)), two_k);
  if (target.change_s !== undefined) {
    return withSplit(target, before.split && plus(before.split, inParts(target.change_s)), two_k);
  }
  if (target.two_k_power_fraction === undefined) return target;
  const fraction = inParts(target.two_k_power_fraction, 1000);
  return withKnown(target, withinRange(splitAtFraction(two_k, fraction)));
}

/** The exact split of a target, if it has one. */
export function splitOfTarget(target: Target | undefined): Exact | undefined {
  return target?.split_s === undefined ? undefined : inParts(target.split_s);
}

function withSplit(target: Target, split: Exact | undefined, two_k: Exact): Target {
  const { two_k_power_fraction: _fraction, talk: _talk, ...asked } = target;
  const known = withinRange(split);
  if (!known) return withKnown(asked, undefined);
  const fraction = nearest(cubed(over(two_k, known)), 1000);
  return { ...withKnown(asked, known), two_k_power_fraction: toNumber(fraction), talk: talkAt(fraction) };
}

function withKnown(target: Target, split: Exact | undefined): Target {
  const { split_s: _split, watts: _watts, ...rest } = target;
  return split ? { ...rest, split_s: toNumber(split), watts: tenth(powerOfSplit(split)) } : rest;
}

function talkAt(fraction: Exact): string {
  return TALK.find(([most]) => compare(fraction, most) <= 0)?.[1] ?? NO_TALK;
}
