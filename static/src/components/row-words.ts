/** What the row screen says at one moment, as plain text: drawn again only where a text has changed. */
import type { Segment, Timeline } from "../plan/wire.js";
import { clock } from "../plan/format.js";
import { drillWords, effortWords, partName, settingWords, splitWords, strokeWords, whatWords, lengthWords, nextWords } from "./segment-words.js";

/** Where the session is, as the screens need it. Seconds within the segment; strokes counted from 0. */
export interface Place {
  index: number;
  elapsed_s: number;
  stroke: number | null;
}

export interface Face {
  big: string;
  bigNote: string;
  bigIsTimeLeft: boolean;
  rate: string;
  rateNote: string;
  strokesLeft: string;
  strokesNote: string;
  strokesDone: number;
  /** A tap ends it: the screen shows Done. */
  asksDone: boolean;
}

/** Whole seconds still to go, rounded up, so that 0:00 is shown only at the end. */
export function secondsLeft(left_s: number): number {
  return Math.max(0, Math.ceil(left_s - 1e-6));
}

export function faceOf(segment: Segment, place: Place): Face {
  return { ...numbers(segment, place), ...rateWords(segment), ...strokesOf(segment, place), asksDone: asksDone(segment) };
}

export function asksDone(segment: Segment): boolean {
  return segment.ends === "tap" || segment.ends === "metres";
}

function numbers(segment: Segment, place: Place) {
  if (segment.ends === "tap") {
    return { big: clock(Math.floor(place.elapsed_s)), bigNote: "rowed; press Done when you stop", bigIsTimeLeft: false };
  }
  if (segment.ends === "metres") return { big: `${segment.metres_asked}m`, bigNote: metresNote(segment, place), bigIsTimeLeft: false };
  return { big: clock(secondsLeft(segment.duration_s - place.elapsed_s)), bigNote: "left", bigIsTimeLeft: true };
}

function metresNote(segment: Segment, place: Place): string {
  if (segment.basis === "assumed") return "metres by your monitor, then Done";
  const left = secondsLeft(segment.duration_s - place.elapsed_s);
  if (left > 0) return segment.waits ? `metres, about ${clock(left)} left, then Done` : `metres, about ${clock(left)} left`;
  return "metres: press Done at the end";
}

function rateWords(segment: Segment) {
  if (segment.rate !== undefined) return { rate: String(segment.rate), rateNote: strokeWords(segment) };
  if (segment.drill?.swap) return { rate: "", rateNote: "swap sides, no beat" };
  return { rate: "", rateNote: segment.kind === "rest" ? "sit still, breathe" : "any rate you like" };
}

function strokesOf(segment: Segment, place: Place) {
  if (!segment.strokes || place.stroke === null) return { strokesLeft: "", strokesNote: "", strokesDone: 0 };
  const left = Math.max(0, segment.strokes - place.stroke);
  if (segment.ends === "tap" || segment.basis === "assumed") {
    return { strokesLeft: String(place.stroke), strokesNote: place.stroke === 1 ? "stroke done" : "strokes done", strokesDone: place.stroke };
  }
  return { strokesLeft: String(left), strokesNote: left === 1 ? "stroke left" : "strokes left", strokesDone: place.stroke };
}

/** "block 5 of 12", counted in segments of the same part. */
export function whereWords(timeline: Timeline, segment: Segment): string {
  const part = timeline.segments.filter((other) => other.part_index === segment.part_index);
  return `${part.indexOf(segment) + 1} of ${part.length}`;
}

/** The one thing to say now: a call while it is fresh, else the focus, else what this is. */
export function callWords(segment: Segment, elapsed_s: number): string {
  const fresh = segment.calls.filter((call) => elapsed_s >= call.at_s && elapsed_s < call.at_s + Math.max(call.seconds, 0) + 4);
  const latest = fresh[fresh.length - 1];
  if (latest) return latest.text;
  if (segment.kind === "rest") return whatWords(segment);
  return [drillWords(segment), segment.focus].filter(Boolean).join(": ");
}

export interface Wanted {
  split: string;
  effort: string;
  talk: string;
}

export function wantedOf(segment: Segment): Wanted {
  const target = segment.target;
  const split = target?.split_s === undefined ? "" : splitWords(target.split_s);
  const effort = effortWords(target);
  return { split, effort: effort === split ? "" : effort, talk: target?.talk ?? "" };
}

/** What comes next, with the change to make to the machine first. */
export function followingWords(timeline: Timeline, segment: Segment): string {
  const next = timeline.segments[segment.index + 1];
  const change = settingWords(next?.setting);
  return change ? `set ${change}, then ${nextWords(next)}` : nextWords(next);
}

/** Said once when a segment begins, for those who hear the screen. */
export function announcement(timeline: Timeline, segment: Segment): string {
  const opening = segment.calls.find((call) => call.at_s === 0)?.text ?? segment.focus ?? "";
  return [`${partName(segment.part)}: ${whatWords(segment)}, ${lengthWords(segment)}`, opening,
    `Next ${followingWords(timeline, segment)}`].filter(Boolean).join(". ") + ".";
}
