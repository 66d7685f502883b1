/** A segment in the words of the trade: "r26 three-quarter · 0:30". */
import type { Segment, Target } from "../plan/wire.js";
import { clock, splitClock } from "../plan/format.js";

export const PART_NAMES: Record<string, string> = {
  "warm-up": "Warm-up",
  main: "Main piece",
  "cool-down": "Cool-down",
  gap: "Gap",
};

export function partName(part: string): string {
  return PART_NAMES[part] ?? part;
}

/** How long it is, as it was asked: "0:30", "700 m", "20 strokes", "as long as you like". */
export function lengthWords(segment: Segment): string {
  if (segment.ends === "tap") return "open";
  if (segment.ends === "metres" && segment.metres_asked) return `${segment.metres_asked} m`;
  if (segment.ends === "strokes" && segment.strokes) return strokesWords(segment.strokes);
  return clock(segment.duration_s);
}

/** Seconds of rest in which one can stand up and sit down again, as in the planner's check of long sitting [C]. */
const STANDING_S = 45;

/** "Rest", and whether it is long enough to stand up. */
export function restWords(seconds: number): string {
  return seconds >= STANDING_S ? "Rest, time to stand up" : "Rest";
}

/** What it is: "r26 three-quarter", "r18 light, one foot", "Rest", "Swap sides". */
export function whatWords(segment: Segment): string {
  if (segment.drill?.swap) return "Swap sides";
  if (segment.kind === "rest") return restWords(segment.duration_s);
  if (segment.kind === "gap") return "Gap, off the machine";
  const rate = segment.rate === undefined ? "" : `r${segment.rate}`;
  const asked = [rate, effortWords(segment.target)].filter(Boolean).join(" ");
  return [asked, drillWords(segment)].filter(Boolean).join(", ") || "Row";
}

/** What comes, with its length: "r26 three-quarter · 0:30". */
export function nextWords(segment: Segment | undefined): string {
  if (!segment) return "the end";
  return `${whatWords(segment)} · ${lengthWords(segment)}`;
}

export function drillWords(segment: Segment): string {
  const drill = segment.drill;
  if (!drill || drill.swap) return "";
  return drill.side && drill.sides ? `${drill.name}, side ${drill.side} of ${drill.sides}` : drill.name;
}

/** The effort as the plan asks for it, shortest form. */
export function effortWords(target: Target | undefined): string {
  if (!target) return "";
  if (target.pressure) return target.pressure;
  if (target.split_offset_s !== undefined) return offsetWords(target.split_offset_s);
  if (target.change_s !== undefined) return changeWords(target.change_s);
  if (target.cr10 !== undefined) return `effort ${target.cr10} of 10`;
  if (target.heart_rate) return heartRateWords(target.heart_rate);
  if (target.split_s !== undefined) return `at ${splitClock(target.split_s)}`;
  return target.two_k_power_fraction === undefined ? "" : powerWords(target.two_k_power_fraction);
}

/** "2.5 s a stroke, every 2 strokes = 5 s" */
export function strokeWords(segment: Segment): string {
  if (!segment.stroke_s) return "";
  const each = `${trimmed(segment.stroke_s)} s a stroke`;
  const mark = segment.clock_mark;
  if (!mark) return each;
  return mark.strokes === 1 ? each : `${each}, every ${mark.strokes} strokes = ${mark.seconds} s`;
}

export function settingWords(setting: { lever?: number; drag_factor?: number } | undefined): string {
  if (setting?.lever !== undefined) return `lever ${setting.lever}`;
  if (setting?.drag_factor !== undefined) return `drag factor ${setting.drag_factor}`;
  return "";
}

/** What the talk test says of an effort (Foster 2008, J Cardiopulm Rehabil Prev 28:24-30): "you can say whole sentences", "no talk". */
export function talkWords(talk = "", said = "you can say"): string {
  return /^(whole|short|single) /.test(talk) ? `${said} ${talk}` : talk;
}

export function strokesWords(count: number): string {
  return count === 1 ? "1 stroke" : `${count} strokes`;
}

export function powerWords(fraction: number): string {
  return `${Math.round(fraction * 100)} % of 2 km power`;
}

function offsetWords(seconds: number): string {
  if (seconds === 0) return "at 2 km split";
  return `at 2 km split ${seconds > 0 ? "+" : "−"} ${trimmed(Math.abs(seconds))} s`;
}

function changeWords(seconds: number): string {
  if (seconds === 0) return "same split as before";
  return `${trimmed(Math.abs(seconds))} s ${seconds < 0 ? "quicker" : "slower"}`;
}

function heartRateWords(rate: { bpm?: number; percent_max?: number; percent_reserve?: number }): string {
  if (rate.percent_max !== undefined) return `heart rate ${rate.percent_max} % of highest`;
  if (rate.percent_reserve !== undefined) return `heart rate ${rate.percent_reserve} % of reserve`;
  return `heart rate ${rate.bpm}`;
}

function trimmed(value: number): string {
  return String(Math.round(value * 100) / 100);
}
