/** How hard a block is to be rowed: a way to say it, and its value. */
import { html, nothing, type TemplateResult } from "lit";
import { numberIn, splitIn, type Bounds } from "../plan/field-values.js";
import { splitClock } from "../plan/format.js";
import type { Effort } from "../plan/wire.js";
import { pick, type Option } from "./choice-look.js";
import "./typed-field.js";

interface Way {
  name: string;
  /** The value that it begins with. */
  usual: Effort;
  label: string;
  hint: string;
  /** The value as it is typed, and back. */
  shown: (effort: never) => string;
  read: (text: string) => Effort | undefined;
}

type Pressure = Extract<Effort, { pressure: unknown }>["pressure"];
type Said = "none" | "pressure" | keyof typeof WAYS;

const PRESSURES: readonly Option<Pressure>[] = (["light", "half", "three-quarter", "full", "race"] as const).map((value) => ({ value, name: value }));

/** A way whose value is one number between bounds, as in planner/limits.py. */
function numbered(name: string, label: string, bounds: Bounds, usual: number, make: (value: number) => Effort, shown: (effort: never) => number): Way {
  const steps = bounds.parts === 2 ? " in halves" : bounds.parts === 10 ? " in tenths" : "";
  return {
    name, label, usual: make(usual), hint: `Write a number from ${bounds.low} to ${bounds.high}${steps}.`,
    shown: (effort) => String(shown(effort)),
    read: (text) => {
      const value = numberIn(text, bounds);
      return value === undefined ? undefined : make(value);
    },
  };
}

const WAYS = {
  split: {
    name: "a split", label: "Split, per 500 m", usual: { split: 120 }, hint: "Write it as 1:55 or 1:55.5, from 1:00 to 6:00.",
    shown: ({ split }: { split: number }) => splitClock(split),
    read: (text: string) => {
      const split = splitIn(text);
      return split === undefined ? undefined : { split };
    },
  },
  split_offset: numbered("from the 2 km split", "Seconds to the 2 km split", { low: -40, high: 120, parts: 10 }, 0, (split_offset) => ({ split_offset }), (e: { split_offset: number }) => e.split_offset),
  change: numbered("from the block before", "Seconds to the split before", { low: -40, high: 40, parts: 10 }, -2, (change) => ({ change }), (e: { change: number }) => e.change),
  two_k_power_fraction: numbered("share of 2 km power", "Percent of 2 km power", { low: 10, high: 300 }, 65, (percent) => ({ two_k_power_fraction: percent / 100 }), (e: { two_k_power_fraction: number }) => Math.round(e.two_k_power_fraction * 100)),
  cr10: numbered("effort 0 to 10", "Effort from 0 to 10", { low: 0, high: 10, parts: 2 }, 5, (cr10) => ({ cr10 }), (e: { cr10: number }) => e.cr10),
  bpm: numbered("heart rate", "Beats a minute", { low: 40, high: 230 }, 140, (bpm) => ({ heart_rate: { bpm } }), (e: { heart_rate: { bpm: number } }) => e.heart_rate.bpm),
  percent_max: numbered("heart rate, of highest", "Percent of the highest", { low: 20, high: 100 }, 75, (percent_max) => ({ heart_rate: { percent_max } }), (e: { heart_rate: { percent_max: number } }) => e.heart_rate.percent_max),
  percent_reserve: numbered("heart rate, of reserve", "Percent of the reserve", { low: 20, high: 100 }, 70, (percent_reserve) => ({ heart_rate: { percent_reserve } }), (e: { heart_rate: { percent_reserve: number } }) => e.heart_rate.percent_reserve),
} satisfies Record<string, Way>;

const CHOICES: readonly Option<Said>[] = [
  { value: "none", name: "not said" },
  { value: "pressure", name: "pressure" },
  ...(Object.keys(WAYS) as (keyof typeof WAYS)[]).map((value) => ({ value, name: WAYS[value].name })),
];

/** The fields of an effort; `set` is given the next one. */
export function effortFields(effort: Effort | undefined, set: (effort: Effort | undefined) => void): TemplateResult {
  const said = saidBy(effort);
  const choose = (next: Said) => set(next === "none" ? undefined : next === "pressure" ? { pressure: "light" } : WAYS[next].usual);
  return html`${pick("effort", "Effort", CHOICES, said, choose)}
    ${said === "none" ? nothing : said === "pressure" ? pick("pressure", "Pressure", PRESSURES, (effort as { pressure: Pressure }).pressure, (pressure) => set({ pressure }))
      : wayField(WAYS[said], effort!, set)}`;
}

function wayField({ label, hint, shown, read }: Way, effort: Effort, set: (effort: Effort) => void): TemplateResult {
  return html`<typed-field .label=${label} .hint=${hint} .value=${shown(effort as never)} .read=${read} @value=${({ detail }: CustomEvent<Effort>) => set(detail)}></typed-field>`;
}

function saidBy(effort: Effort | undefined): Said {
  if (!effort) return "none";
  const [key] = Object.keys("heart_rate" in effort ? effort.heart_rate : effort);
  return key as Said;
}
