/** How the machine is set: the lever or the drag factor, and its figure. */
import { html, nothing, type TemplateResult } from "lit";
import { numberIn, type Bounds } from "../plan/field-values.js";
import type { Setting } from "../plan/wire.js";
import { pick, type Option } from "./choice-look.js";
import "./typed-field.js";

type Kind = "none" | "lever" | "drag_factor";

const KINDS: readonly Option<Kind>[] = [
  { value: "none", name: "as it is" }, { value: "lever", name: "lever" }, { value: "drag_factor", name: "drag factor" },
];
const USUAL: Readonly<Record<Kind, Setting | undefined>> = { none: undefined, lever: { lever: 4 }, drag_factor: { drag_factor: 120 } };
/** As in planner/limits.py. */
const LEVERS: Bounds = { low: 1, high: 10 };
const DRAG_FACTORS: Bounds = { low: 50, high: 250 };

/** The fields of a setting; `set` is given the next one. */
export function machineFields(setting: Setting | undefined, set: (setting: Setting | undefined) => void): TemplateResult {
  const kind = setting === undefined ? "none" : "lever" in setting ? "lever" : "drag_factor";
  return html`${pick("machine", "Machine", KINDS, kind, (next) => set(USUAL[next]))}
    ${setting === undefined ? nothing : "lever" in setting ? number("Lever", setting.lever, LEVERS, (lever) => set({ lever }))
      : number("Drag factor", setting.drag_factor, DRAG_FACTORS, (drag_factor) => set({ drag_factor }))}`;
}

function number(label: string, value: number, bounds: Bounds, set: (value: number) => void): TemplateResult {
  return html`<typed-field .label=${label} .hint=${`Write a whole number from ${bounds.low} to ${bounds.high}.`} .value=${String(value)}
    .read=${(text: string) => numberIn(text, bounds)} @value=${({ detail }: CustomEvent<number>) => set(detail)}></typed-field>`;
}
