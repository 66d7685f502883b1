/** What a voice says of a block that comes next, and how long that takes. */
import { isRowed, type Segment, type Target } from "./types.js";

/** An unhurried voice, as in planner/calls.py: common practice [C]; a voice takes a breath before it begins. */
const WORDS_A_MINUTE = 150;
const SHORTEST_S = 1;

/** Seconds that a text takes to say. */
export function spokenSeconds(text: string): number {
  return Math.max(SHORTEST_S, (text.split(/\s+/).filter(Boolean).length * 60) / WORDS_A_MINUTE);
}

/** A block as it is announced, the fullest first; each says less than the one before it, and none is left out first. */
export function announcements(segment: Segment): string[] {
  if (segment.drill?.swap) return ["Swap sides."];
  if (segment.kind === "rest") return [`Rest, ${lengthWords(segment)}.`, "Rest."];
  if (segment.kind === "gap") return [`Next, off the machine, ${lengthWords(segment)}.`, "Off the machine."];
  const length = lengthWords(segment);
  const rate = segment.rate === undefined ? "" : `rate ${segment.rate}`;
  const effort = effortWords(segment.target);
  const full = [settingWords(segment), "Next", length, rate, effort, drillWords(segment)];
  return [sentence(full), sentence([settingWords(segment), length, rate, effort]), sentence([rate, effort]), sentence([rate || length])]
    .filter((text, index, all) => text !== "" && all.indexOf(text) === index);
}

/** What comes after the last block. */
export const END_ANNOUNCED = "Then it is done.";

/** "3 minutes", "1 minute 30", "20 seconds", "700 metres", "10 strokes". */
function lengthWords({ ends, duration_s, metres_asked, strokes, kind }: Segment): string {
  if (kind === "row" || kind === "drill") {
    if (ends === "tap") return "as long as you like";
    if (ends === "metres" && metres_asked) return `${metres_asked} metres`;
    if (ends === "strokes" && strokes) return counted(strokes, "stroke");
  }
  const whole = Math.round(duration_s);
  const [minutes, seconds] = [Math.floor(whole / 60), whole % 60];
  if (!minutes) return counted(seconds, "second");
  return seconds ? `${counted(minutes, "minute")} ${seconds}` : counted(minutes, "minute");
}

/** Pressure as coaches say it, else the split, else the share of 2 km power. */
function effortWords(target: Target | undefined): string {
  if (!target) return "";
  const pressure = target.pressure ? `${target.pressure} pressure` : "";
  const { split_s, change_s, cr10, two_k_power_fraction: share } = target;
  if (split_s !== undefined) return [pressure, `split ${splitWords(split_s)}`].filter(Boolean).join(", ");
  if (pressure) return pressure;
  if (change_s) return `${Math.abs(change_s)} seconds ${change_s < 0 ? "quicker" : "slower"}`;
  if (cr10 !== undefined) return `effort ${cr10} of 10`;
  return share === undefined ? "" : `${Math.round(share * 100)} percent of 2 k power`;
}

/** "2 oh 5", "1 55": the tenth is for the eye. */
function splitWords(split_s: number): string {
  const whole = Math.round(split_s);
  const [minutes, seconds] = [Math.floor(whole / 60), whole % 60];
  return `${minutes} ${seconds === 0 ? "flat" : seconds < 10 ? `oh ${seconds}` : seconds}`;
}

function drillWords({ drill }: Segment): string {
  if (!drill) return "";
  return drill.side && drill.sides ? `${drill.name}, side ${drill.side}` : drill.name;
}

function settingWords(segment: Segment): string {
  if (!isRowed(segment) || !segment.setting) return "";
  const { lever, drag_factor } = segment.setting as { lever?: number; drag_factor?: number };
  return lever === undefined ? `Set drag factor ${drag_factor}` : `Set the lever to ${lever}`;
}

function sentence(words: readonly string[]): string {
  const said = words.filter(Boolean).join(", ");
  return said && `${said.charAt(0).toUpperCase()}${said.slice(1)}.`;
}

function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? "" : "s"}`;
}
