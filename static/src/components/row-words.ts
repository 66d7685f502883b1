/** What the row screen says at one moment, as plain text: drawn again only where a text has changed. */
import type { Segment, Timeline } from "../plan/wire.js";
import { clock, splitClock } from "../plan/format.js";
import type { EffortUnit } from "../data/preferences.js";
import { metreRunAt } from "../timeline/metre-run.js";
import {
  drillWords, effortWords, lengthWords, nextWords, partName, powerWords, settingWords, talkWords, whatWords,
} from "./segment-words.js";

/** Whether a tap ends it, so that the screen shows Done. */
export function asksDone(segment: Segment): boolean {
  return segment.ends === "tap" || segment.ends === "metres";
}

/** The block, counted in segments of the same part, "5 of 12", and in a set the repetition, "2 of 6". */
export function whereWords(timeline: Timeline, segment: Segment): { block: string; repetition: string } {
  const part = timeline.segments.filter((other) => other.part_index === segment.part_index);
  const { number, times } = segment.repetition ?? { number: 1, times: 1 };
  return {
    block: `${part.indexOf(segment) + 1} of ${part.length}`,
    repetition: times > 1 ? `${number} of ${times}` : "",
  };
}

/** The one thing to keep in mind: the focus and the drill, or what to do in a rest. */
export function focusWords(segment: Segment): string {
  if (segment.kind === "rest") return whatWords(segment);
  return [drillWords(segment), segment.focus].filter(Boolean).join(": ");
}

/** What to hold: the figure with its unit, or the effort in words; then the rest that is said of it. */
export interface Wanted {
  figure: string;
  unit: string;
  effort: string;
  talk: string;
}

/** In the unit that was chosen; where it is not known, as the plan asks for it. */
export function wantedOf(segment: Segment, unit: EffortUnit = "split"): Wanted {
  const { target } = segment;
  const effort = effortWords(target);
  const known = figureIn(unit, target);
  const same = effort === `at ${known?.figure}` || (unit === "two-k-power" && effort === powerWords(target?.two_k_power_fraction ?? 0));
  return { figure: "", unit: "", ...known, effort: known && same ? "" : effort, talk: talkWords(target?.talk) };
}

function figureIn(unit: EffortUnit, target: Segment["target"]): { figure: string; unit: string } | undefined {
  const { split_s, watts, two_k_power_fraction } = target ?? {};
  if (unit === "split" && split_s !== undefined) return { figure: splitClock(split_s), unit: "/500\u00a0m" };
  if (unit === "watts" && watts !== undefined) return { figure: String(Math.round(watts)), unit: "W" };
  if (unit === "two-k-power" && two_k_power_fraction !== undefined) return { figure: `${Math.round(two_k_power_fraction * 100)} %`, unit: "of 2 km power" };
  return undefined;
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

/** What those who hear the screen are told, lost sound before all else. */
export function spokenWords(words: string, held: boolean, soundIsLost: boolean): string {
  const told = held ? "Held. The clock stands still." : words;
  return soundIsLost ? `Sound is lost. ${told}` : told;
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

/** That a block has been given a minute more. */
export function extendedWords({ kind, duration_s }: Segment): string {
  const what = kind === "rest" || kind === "gap" ? `the ${kind}` : "this block";
  return `One more minute: ${what} is ${clock(duration_s)} now.`;
}

/** A rate to the half stroke, which is as near as hands can tap: "24", "22½". */
export function inHalves(rate: number): string {
  const halves = Math.round(rate * 2);
  return `${halves === 1 ? "" : Math.floor(halves / 2)}${halves % 2 ? "½" : ""}`;
}

/** How the rate really rowed stands to the one that is paced; until it is known, how many taps it takes. */
export function checkWords(rate: number | null, paced: number | undefined, more: number): string {
  if (rate === null) return more === 1 ? "Once more" : `Tap at each catch: ${more} more`;
  if (paced === undefined) return "No rate is asked here.";
  const off = Math.abs(rate - paced);
  if (Math.round(off * 2) === 0) return "As asked";
  const strokes = Math.round(off * 2) === 1 ? "half a stroke" : Math.round(off * 2) === 2 ? "1 stroke" : `${inHalves(off)} strokes`;
  return `${strokes} a minute too ${rate > paced ? "quick" : "slow"}`.replace(/^h/, "H");
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
