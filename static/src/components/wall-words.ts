/** What a wall says at one moment, as plain text: drawn again only where a text has changed. */
import { NoAnswer, Refused } from "../data/api.js";
import { LONGEST_COUNT_S } from "../data/preferences.js";
import { toNumber } from "../plan/exact-time.js";
import { clock } from "../plan/format.js";
import type { TwoK } from "../plan/prediction.js";
import { QUICKEST_SPLIT_S, SLOWEST_SPLIT_S } from "../plan/result-words.js";
import type { Segment, Target, Timeline } from "../plan/wire.js";
import type { Phase } from "../state/snapshot.js";
import { timeOfDay } from "../state/time-of-day.js";
import { countInWords, focusWords, whereWords } from "./row-words.js";
import { drillWords, effortWords, nextWords, partName, settingWords, talkWords, whatWords } from "./segment-words.js";

/** Where the session is, in whole seconds, as a snapshot has it. */
export interface WallMoment {
  phase: Phase;
  elapsed_s: number;
  left_s: number | null;
  strokes_left: number | null;
  count_in: number | null;
  /** The clock time set for the start, or "". */
  starts_at: string;
  call: string;
}

export interface WallFace {
  /** The one large figure, with what stands before it and below it where it is not the time left of a block. */
  before: string;
  figure: string;
  note: string;
  rate: string;
  /** What to row by: under the rate. */
  effort: string;
  strokes: string;
  strokes_note: string;
  call: string;
}

export function wallFace(segment: Segment, moment: WallMoment): WallFace {
  const { strokes_left, call, phase } = moment;
  return {
    ...figureOf(segment, moment),
    rate: segment.rate === undefined ? "" : String(segment.rate),
    effort: effortLine(segment),
    strokes: strokes_left === null ? "" : String(strokes_left),
    strokes_note: strokes_left === 1 ? "stroke left" : "strokes left",
    call: phase === "held" ? "Held. The clock stands still." : call || ownWords(segment),
  };
}

function figureOf(segment: Segment, { phase, left_s, count_in, starts_at, elapsed_s }: WallMoment): Pick<WallFace, "before" | "figure" | "note"> {
  if (count_in === null) return { before: "", figure: clock(left_s ?? 0), note: noteOf(segment, phase) };
  if (starts_at && count_in > LONGEST_COUNT_S) return { before: "", figure: clock(count_in), note: `to the start at ${starts_at}` };
  return { before: countInWords(segment, elapsed_s), figure: String(count_in), note: "" };
}

function noteOf(segment: Segment, phase: Phase): string {
  if (phase === "held") return "held";
  if (segment.kind === "gap") return "to the start";
  if (segment.drill?.swap) return "swap sides";
  if (segment.kind === "rest") return "rest";
  return segment.metres_asked === undefined ? "" : `for ${segment.metres_asked} m, by the slowest here`;
}

/** "three-quarter · single words": what everybody goes by, with or without a result. */
function effortLine({ kind, rate, target }: Segment): string {
  if (kind === "rest" || kind === "gap") return "";
  const said = [effortWords(target), talkWords(target?.talk, "talk in")].filter(Boolean).join(" · ");
  return said || (rate === undefined ? "any rate you like" : "");
}

/** Where the coach says nothing: the focus, the drill, or what to do when nobody rows. */
function ownWords(segment: Segment): string {
  if (segment.kind === "gap") return "Stand up, walk, drink.";
  if (segment.kind === "rest") return whatWords(segment);
  return focusWords(segment) || drillWords(segment);
}

/** "Main piece · block 5 of 12 · repetition 2 of 6" */
export function placeWords(timeline: Timeline, segment: Segment): string {
  if (segment.kind === "gap") return partName(segment.part);
  const { block, repetition } = whereWords(timeline, segment);
  return [partName(segment.part), `block ${block}`, repetition && `repetition ${repetition}`].filter(Boolean).join(" · ");
}

/** What comes, with the change to make to the machine first. */
export function nextLine(next: Segment | undefined): string {
  const change = settingWords(next?.setting);
  return change ? `set ${change}, then ${nextWords(next)}` : nextWords(next);
}

/** The time that is left of the whole session. */
export function wholeLeft(timeline: Timeline, segment: Segment, elapsed_s: number): string {
  return clock(Math.max(0, timeline.totals.seconds_s - segment.start_s - Math.min(elapsed_s, segment.duration_s)));
}

/** What one lane is asked in a block: its split and watts, or the words that it goes by, beside what is known of its split. */
export interface LaneAsked {
  split: string;
  watts: string;
  words: string;
}

const NOTHING: LaneAsked = { split: "", watts: "", words: "" };

/** `two_k` is the lane's, where it has a result. */
export function laneAsked(segment: Segment | undefined, target: Target | undefined, two_k: TwoK | null): LaneAsked {
  if (!segment || segment.kind === "rest" || segment.kind === "gap") return { ...NOTHING, words: segment ? "rest" : "end" };
  if (target?.split_s === undefined) return { ...NOTHING, split: bound(target, two_k), words: target?.pressure ?? "by feel" };
  return { split: clock(target.split_s), watts: target.watts === undefined ? "" : String(Math.round(target.watts)), words: "" };
}

/** Which end of what anybody can be asked for lies before the split that this comes to; "" where no split is known. */
function bound(target: Target | undefined, two_k: TwoK | null): string {
  const { split_offset_s: offset_s, two_k_power_fraction: fraction } = target ?? {};
  if (!two_k || (offset_s ?? fraction) === undefined) return "";
  const two_k_s = toNumber(two_k.split);
  const split_s = offset_s === undefined ? two_k_s * fraction! ** (-1 / 3) : two_k_s + offset_s;
  return split_s > SLOWEST_SPLIT_S ? `${clock(SLOWEST_SPLIT_S)}+` : `<${clock(QUICKEST_SPLIT_S)}`;
}

/** Why a wall led from afar does not follow: beside the clock of a session, and whole. */
export interface TroubleAfar {
  brief: string;
  words: string;
}

/** Undefined where nothing was answered, which is no more than a want of signal; `title`: what could not be shown. */
export function troubleAfar(error: unknown, title = "nothing"): TroubleAfar | undefined {
  if (error instanceof NoAnswer) return undefined;
  if (error instanceof Refused) return { brief: REFUSALS[error.status] ?? "refused by the server", words: `The server refuses: ${error.message}.` };
  const why = error instanceof Error ? error.message : String(error);
  return { brief: "cannot show what it is told to", words: `It is to show “${title}”, and this device could not do that (${why}). It is tried again every few seconds.` };
}

const REFUSALS: Readonly<Record<number, string>> = { 404: "no such wall on the server", 429: "the server was asked too often" };

/** When it last heard from its server (ms since 1970); `gone`: too long ago for the network to be there. */
export function heardWords(heard: { at_ms: number; gone: boolean } | undefined, trouble: TroubleAfar | undefined): { brief: string; long: string } {
  if (!heard) return { brief: "", long: "It has not heard from the server yet." };
  const time = new Date(heard.at_ms).toLocaleTimeString([], { hour12: false });
  if (trouble) return { brief: `${trouble.brief} · heard ${time}`, long: `It last heard from the server what to show at ${time}.` };
  return heard.gone ? { brief: `no signal since ${timeOfDay(heard.at_ms)}`, long: `No signal: last heard from the server at ${time}.` } : { brief: `heard ${time}`, long: `Heard from the server at ${time}.` };
}
