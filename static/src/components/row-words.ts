/** What the row screen says at one moment, as plain text: drawn again only where a text has changed. */
import type { Segment, Timeline } from "../plan/wire.js";
import { clock, splitClock } from "../plan/format.js";
import {
  drillWords, effortWords, lengthWords, nextWords, partName, settingWords, strokeWords, whatWords,
} from "./segment-words.js";

/** Where the session is, in whole seconds, as a snapshot has it. */
export interface Place {
  elapsed_s: number;
  /** Null where no end is known. */
  left_s: number | null;
  stroke: number | null;
  strokes_left: number | null;
}

export interface Face {
  big: string;
  /** What the big figure is, where it is not the time left. */
  bigNote: string;
  rate: string;
  rateNote: string;
  strokes: string;
  strokesNote: string;
}

export function faceOf(segment: Segment, place: Place): Face {
  return { ...bigWords(segment, place), ...rateWords(segment), ...strokesOf(place) };
}

/** Whether a tap ends it, so that the screen shows Done. */
export function asksDone(segment: Segment): boolean {
  return segment.ends === "tap" || segment.ends === "metres";
}

function bigWords(segment: Segment, { elapsed_s, left_s }: Place): { big: string; bigNote: string } {
  if (segment.ends === "tap") return { big: clock(elapsed_s), bigNote: "rowed; press Done when you stop" };
  if (segment.ends === "metres") return metresWords(segment, elapsed_s, left_s);
  return { big: clock(left_s ?? 0), bigNote: "" };
}

function metresWords(segment: Segment, elapsed_s: number, left_s: number | null): { big: string; bigNote: string } {
  const metres = `${segment.metres_asked}m`;
  if (left_s === null) return { big: metres, bigNote: `metres, ${clock(elapsed_s)} so far: press Done when your monitor shows them` };
  return { big: clock(left_s), bigNote: `left of ${metres}, about${segment.waits ? "; then press Done" : ""}` };
}

function rateWords(segment: Segment): { rate: string; rateNote: string } {
  if (segment.rate !== undefined) return { rate: String(segment.rate), rateNote: strokeWords(segment) };
  if (segment.drill?.swap) return { rate: "", rateNote: "swap sides, no beat" };
  return { rate: "", rateNote: segment.kind === "rest" ? "sit still, breathe" : "any rate you like" };
}

function strokesOf({ stroke, strokes_left }: Place): { strokes: string; strokesNote: string } {
  if (stroke === null) return { strokes: "", strokesNote: "" };
  if (strokes_left === null) return { strokes: String(stroke), strokesNote: stroke === 1 ? "stroke done" : "strokes done" };
  return { strokes: String(strokes_left), strokesNote: strokes_left === 1 ? "stroke left" : "strokes left" };
}

/** "block 5 of 12", counted in segments of the same part. */
export function whereWords(timeline: Timeline, segment: Segment): string {
  const part = timeline.segments.filter((other) => other.part_index === segment.part_index);
  return `${part.indexOf(segment) + 1} of ${part.length}`;
}

/** The one thing to keep in mind: the focus and the drill, or what to do in a rest. */
export function focusWords(segment: Segment): string {
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
  const split = target?.split_s === undefined ? "" : splitClock(target.split_s);
  const effort = effortWords(target);
  return { split, effort: effort === `at ${split}` ? "" : effort, talk: target?.talk ?? "" };
}

/** What comes next, with the change to make to the machine first. */
export function followingWords(timeline: Timeline, segment: Segment): string {
  const next = timeline.segments[segment.index + 1];
  const change = settingWords(next?.setting);
  return change ? `set ${change}, then ${nextWords(next)}` : nextWords(next);
}

/** What a count-in leads to: the first catch of a block, or the next one after a hold. */
export function countInWords({ kind }: Segment, elapsed_s: number): string {
  if (kind !== "row" && kind !== "drill") return "Starts in";
  return elapsed_s > 0 ? "Next catch in" : "First catch in";
}

/** Said once when a segment begins, for those who hear the screen. */
export function announcement(timeline: Timeline, segment: Segment): string {
  const opening = segment.calls.find((call) => call.at_s === 0)?.text ?? segment.focus ?? "";
  return [`${partName(segment.part)}: ${whatWords(segment)}, ${lengthWords(segment)}`, opening,
    `Next ${followingWords(timeline, segment)}`].filter(Boolean).join(". ") + ".";
}

/** What happened to the clock while nobody looked. */
export function noticeWords({ kind, seconds }: { kind: "was-away" | "clock-moved"; seconds: number }): string {
  if (kind === "was-away") return `You were away for ${clock(seconds)}: the clock ran on.`;
  return "This phone’s clock was moved. The session kept its own time.";
}
