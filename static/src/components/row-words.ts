/** What the row screen says at one moment, as plain text: drawn again only where a text has changed. */
import type { Segment, Timeline } from "../plan/wire.js";
import { clock, splitClock } from "../plan/format.js";
import { metreRunAt, metresFrom, plannedToEnd } from "../timeline/metre-run.js";
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

export function faceOf(timeline: Timeline, segment: Segment, place: Place): Face {
  return { ...bigWords(timeline, segment, place), ...rateWords(segment), ...strokesOf(place) };
}

/** Whether a tap ends it, so that the screen shows Done. */
export function asksDone(segment: Segment): boolean {
  return segment.ends === "tap" || segment.ends === "metres";
}

function bigWords(timeline: Timeline, segment: Segment, place: Place): { big: string; bigNote: string } {
  if (segment.ends === "tap") return { big: clock(place.elapsed_s), bigNote: "rowed; press Done when you stop" };
  if (segment.ends === "metres") return metresWords(timeline, segment, place);
  return { big: clock(place.left_s ?? 0), bigNote: "" };
}

/** Metre blocks without a rest between them are one piece on the monitor: its whole length is named, and what is left of it. */
function metresWords(timeline: Timeline, segment: Segment, { elapsed_s, left_s }: Place): { big: string; bigNote: string } {
  const run = metreRunAt(timeline, segment.index)!;
  const all = `${run.metres} m`;
  if (left_s === null) return reachedWords(timeline, segment, all, elapsed_s);
  if (segment.waits) return { big: clock(left_s), bigNote: `left of ${all}, about; then press Done` };
  const after_s = plannedToEnd(timeline, run, segment.index + 1);
  const more = after_s === null ? `of ${all}` : `${clock(left_s + after_s)} left of ${all}`;
  return { big: clock(left_s), bigNote: `left of this ${segment.metres_asked} m, about; ${more}` };
}

/** Where no time is known: the metres to be reached, and how long it has been. */
function reachedWords(timeline: Timeline, segment: Segment, all: string, elapsed_s: number): { big: string; bigNote: string } {
  const { first } = metreRunAt(timeline, segment.index)!;
  const reached = metresFrom(timeline, first, segment.index);
  const here = `${segment.metres_asked} m`;
  const big = `${reached}m`;
  if (here === all) return { big, bigNote: `metres, ${clock(elapsed_s)} so far: press Done when your monitor shows them` };
  const of = `${reached} m` === all ? "in all" : `of ${all}`;
  return { big, bigNote: `${of}, ${clock(elapsed_s)} in this ${here}: press Done when that many are rowed` };
}

function rateWords(segment: Segment): { rate: string; rateNote: string } {
  if (segment.rate !== undefined) return { rate: String(segment.rate), rateNote: strokeWords(segment) };
  if (segment.drill?.swap) return { rate: "", rateNote: "swap sides, no beat" };
  return { rate: "", rateNote: segment.kind === "rest" ? "get your breath back" : "any rate you like" };
}

function strokesOf({ stroke, strokes_left }: Place): { strokes: string; strokesNote: string } {
  if (stroke === null) return { strokes: "", strokesNote: "" };
  if (strokes_left === null) return { strokes: String(stroke), strokesNote: stroke === 1 ? "stroke done" : "strokes done" };
  return { strokes: String(strokes_left), strokesNote: strokes_left === 1 ? "stroke left" : "strokes left" };
}

/** "block 5 of 12", counted in segments of the same part, and in a set "repetition 2 of 6". */
export function whereWords(timeline: Timeline, segment: Segment): { block: string; repetition: string } {
  const part = timeline.segments.filter((other) => other.part_index === segment.part_index);
  const { number, times } = segment.repetition ?? { number: 1, times: 1 };
  return {
    block: `block ${part.indexOf(segment) + 1} of ${part.length}`,
    repetition: times > 1 ? `repetition ${number} of ${times}` : "",
  };
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

/** What a gap leads to: a run of metre blocks by its whole length, anything else by its first block. */
export function comingWords(timeline: Timeline, next: Segment): { what: string; starts: string } {
  const run = metreRunAt(timeline, next.index);
  const split = next.target?.split_s;
  const asked = whatWords(next);
  const blocks = run ? run.last - run.first + 1 : 1;
  const said = split === undefined || effortWords(next.target) === `at ${splitClock(split)}`;
  if (blocks === 1) return { what: nextWords(next), starts: said ? "" : `starts at ${splitClock(split)} /500 m` };
  const first = `first ${lengthWords(next)} ${asked}`;
  return { what: `${run!.metres} m in ${blocks} blocks, without a stop`, starts: said ? first : `${first} (${splitClock(split)} /500 m)` };
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

/** That a tap was taken for the end of the metre block before. */
export function lateWords({ segments }: Timeline, index: number): string {
  return `Taken as the end of the ${segments[index - 1]!.metres_asked} m before. Done again at the end of this one.`;
}

/** What Done says where it stands: inside a run of metre blocks only that the block is over. */
export function doneWords(timeline: Timeline, segment: Segment): string {
  const run = metreRunAt(timeline, segment.index);
  return run && segment.index < run.last ? `Done with ${segment.metres_asked} m` : "Done";
}

/** What happened to the clock while nobody looked. */
export function noticeWords({ kind, seconds }: { kind: "was-away" | "clock-moved"; seconds: number }): string {
  if (kind === "was-away") return `You were away for ${clock(seconds)}: the clock ran on.`;
  return "This phone’s clock was moved. The session kept its own time.";
}

/** What the clock does while a question stands in front of it. */
export function clockWords(held: boolean): string {
  return held ? "The session is held: the clock stands still." : "The clock is running on behind this page.";
}
