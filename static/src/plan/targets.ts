/** What a segment asks of one rower, from its effort and a 2 km split: what in planner/intensity.py rests on a result. */
import { compare, cubed, exact, inParts, nearest, over, plus, toNumber, type Exact } from "./exact-time.js";
import { powerOfSplit } from "./pace.js";
import { splitAtFraction, withinRange, type TwoK } from "./prediction.js";
import { tenth } from "./totals.js";
import type { Target } from "./types.js";

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
const NO_TALK = "no talk";

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
