/** Plans found by plain words, and by how long they last, whom they suit and what they need. */
import { isMeant, setWords, soughtIn, wordsOf } from "./sought-words.js";
import type { Level } from "./types.js";
import type { Block, Plan, Step } from "./wire.js";

/** What a plan cannot be rowed without, as it is written. */
export type Need = "pulse" | "splits" | "straps" | "drag";

export const NEEDS: Readonly<Record<Need, string>> = {
  pulse: "a pulse belt",
  splits: "a display of splits or power",
  straps: "straps that open",
  drag: "a display of the drag factor",
};

export type Range = "any" | "short" | "half-hour" | "hour" | "long";

/** Over how many whole minutes, and up to how many. */
const RANGES: Readonly<Record<Range, readonly [number, number]>> = { any: [0, Infinity], short: [0, 15], "half-hour": [15, 30], hour: [30, 60], long: [60, Infinity] };

export interface Sought {
  words: string;
  range: Range;
  /** Who is to row it; "" for anybody. */
  level: Level | "";
  /** What there is none of here; "" for nothing. */
  lacking: Need | "";
  tag: string;
}

export const EVERYTHING: Sought = { words: "", range: "any", level: "", lacking: "", tag: "" };

export interface Findable {
  plan: Plan;
  seconds_s: number;
  kind?: string;
  /** The least that it is meant for; unknown for plans of one's own. */
  level?: Level;
  tags?: readonly string[];
}

const LEVELS: readonly Level[] = ["novice", "club", "trained"];
const LEVEL_WORDS: Readonly<Record<Level, string>> = { novice: "novice beginner new to it", club: "regular", trained: "trained" };
const NEED_WORDS: Readonly<Record<Need, string>> = { pulse: "pulse belt heart rate", splits: "split power watts display", straps: "straps open feet", drag: "drag factor" };
const STRAPS = /\b(strap|straps|one foot|feet out|one leg|single leg)\b/i;

/** Those that everything sought for fits: first whose title says it all, then whose main piece does, else in the order given. */
export function found<Plan_ extends Findable>(plans: readonly Plan_[], sought: Sought): Plan_[] {
  const words = soughtIn(sought.words);
  const [over, most] = RANGES[sought.range];
  const fitting = plans.filter((plan) => {
    const minutes = Math.round(plan.seconds_s / 60);
    return minutes > (over || -1) && minutes <= most
      && (!sought.level || (plan.level !== undefined && LEVELS.indexOf(plan.level) <= LEVELS.indexOf(sought.level)))
      && (!sought.lacking || !needsOf(plan.plan).includes(sought.lacking))
      && (!sought.tag || (plan.tags ?? []).includes(sought.tag))
      && words.every((word) => saidBy(plan).some((said) => isMeant(word, said)));
  });
  const says = (said: readonly string[]) => words.every((word) => said.some((one) => isMeant(word, one)));
  const rank = ({ plan }: Plan_) => (says(wordsOf(plan.title)) ? 0 : says(inMain(plan)) ? 1 : 2);
  const ranks = new Map(fitting.map((plan) => [plan, rank(plan)]));
  return fitting.sort((a, b) => ranks.get(a)! - ranks.get(b)!);
}

export function isEverything(sought: Sought): boolean {
  return Object.entries(EVERYTHING).every(([name, any]) => sought[name as keyof Sought].trim() === any);
}

/** What has to be there to row it as it is written. */
export function needsOf(plan: Plan): Need[] {
  const blocks = blocksOf(plan);
  const efforts = blocks.flatMap(({ effort }) => (effort ? [Object.keys(effort)[0]!] : []));
  const settings = [plan.setting, ...blocks.map(({ setting }) => setting)];
  return [
    ...(efforts.includes("heart_rate") ? ["pulse" as const] : []),
    ...(efforts.some((effort) => ["split", "split_offset", "change", "two_k_power_fraction"].includes(effort)) ? ["splits" as const] : []),
    ...(blocks.some(({ drill }) => drill && STRAPS.test(drill.name)) ? ["straps" as const] : []),
    ...(settings.some((setting) => setting && "drag_factor" in setting) ? ["drag" as const] : []),
  ];
}

/** Plans are never changed in place, so what each says is worked out once. */
const SAID = new WeakMap<Plan, readonly string[]>();

function saidBy({ plan, seconds_s, kind = "", level, tags = [] }: Findable): readonly string[] {
  const known = SAID.get(plan) ?? wordsIn(plan);
  SAID.set(plan, known);
  return [...known, ...wordsOf([kind, ...tags, level ? LEVEL_WORDS[level] : "", `${Math.round(seconds_s / 60)} min`].join(" "))];
}

function inMain({ parts }: Plan): string[] {
  const mains = parts.filter(({ kind }) => kind === "main");
  return [...mains.flatMap((part) => (part.kind === "gap" ? [] : setWords(part.blocks))), ...wordsOf(linesOf(blocksOf({ parts: mains })).join(" \n "))];
}

function linesOf(blocks: readonly Block[]): string[] {
  return blocks.flatMap(({ focus = "", drill, rate, for: length }) => [
    focus, drill?.name ?? "", rate === undefined ? "" : `r${rate}`, length && "metres" in length ? `${length.metres} m` : "",
  ]);
}

function wordsIn(plan: Plan): string[] {
  const lines = linesOf(blocksOf(plan));
  const mains = plan.parts.map((part) => (part.kind === "main" ? `${Math.round(secondsOf(part.blocks) / 60)} min` : ""));
  const needs = needsOf(plan).map((need) => NEED_WORDS[need]);
  const parts = plan.parts.map(({ kind }) => kind);
  const sets = plan.parts.flatMap((part) => (part.kind === "gap" ? [] : setWords(part.blocks)));
  return [...new Set([...sets, ...wordsOf([plan.title, plan.summary ?? "", plan.setup ?? "", ...parts, ...lines, ...mains, ...needs].join(" \n "))])];
}

function blocksOf({ parts }: Pick<Plan, "parts">): Block[] {
  const inside = (steps: readonly Step[]): Block[] =>
    steps.flatMap((step) => ("times" in step ? [...inside(step.blocks), ...inside(step.between ?? [])] : "rest" in step ? [] : [step]));
  return parts.flatMap((part) => (part.kind === "gap" ? [] : inside(part.blocks)));
}

/** Of what is written in time, repeats included. */
function secondsOf(steps: readonly Step[]): number {
  return steps.reduce((sum, step) => {
    if ("times" in step) return sum + step.times * secondsOf(step.blocks) + (step.times - 1) * secondsOf(step.between ?? []);
    return sum + (step.for && "seconds" in step.for ? step.for.seconds : 0);
  }, 0);
}
